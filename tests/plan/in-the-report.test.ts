import { describe, expect, it } from 'vitest'
import { report } from '../../src/writers/report.ts'
import { designed } from '../dimensions/designed.ts'

const said = report(
  designed({
    units: 'mm',
    bore: { diameter: 23, length: 30 },
    hub: { outside: 60 },
    feature: { spline: { standard: 'iso-14', size: '6x23x26' } },
    tooling: { bar: {}, index: { gear: 48 } },
  }),
)

describe('the plan in the report', () => {
  it('keeps the names of its format', () => {
    const names = 'infeedPerPass passes springPasses minutes lanes checks dial index target cuts bores centring time'
    expect(Object.keys(said.plan ?? {})).toEqual(expect.arrayContaining(names.split(' ')))
    expect(Object.keys(said.measuring)).toEqual(expect.arrayContaining('across toBore ways width'.split(' ')))
    expect(Object.keys(said.indexing ?? {})).toEqual(expect.arrayContaining('by circle slots error'.split(' ')))
  })

  it('has a row for every slot and one for back at the first', () => {
    expect(said.plan?.['index']).toHaveLength(7)
    expect(said.plan?.['index']).toMatchObject([
      { slot: 1, turns: 0 },
      { slot: 2, turns: 6, holes: 12, tooth: 8 },
      {},
      {},
      {},
      {},
      { slot: 7, turns: 40 },
    ])
  })

  it('gives a reason for each of its parts', () => {
    for (const part of ['plan', 'measuring', 'indexing'] as const)
      for (const name of Object.keys(said[part] ?? {})) {
        if (part === 'plan' && (name === 'index' || name === 'springPasses')) continue
        expect(said.basis[`${part}.${name}`], `${part}.${name}`).toMatch(/\w/)
      }
  })
})
