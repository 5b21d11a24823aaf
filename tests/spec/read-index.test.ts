import { describe, expect, it } from 'vitest'
import { readSpec } from '../../src/spec/read.ts'

const read = (index: object, dial: object = {}, units = 'mm') =>
  readSpec({
    name: 'trial',
    units,
    bore: { diameter: '1 in', length: '1 in' },
    feature: { keyway: { width: '1/4 in', across: '1.1 in', at: [0, 90] } },
    tooling: { bar: { dial }, index },
  })
const indexOf = (index: object, units = 'mm') => {
  const found = read(index, {}, units)
  if (!('spec' in found)) throw new Error(JSON.stringify(found.complaints))
  return found.spec.tooling.index
}
const refused = (index: object, dial: object = {}) => {
  const found = read(index, dial)
  return 'complaints' in found ? found.complaints.map(({ path }) => path) : []
}

describe('how the work is turned on', () => {
  it('a head with its circles, ascending and each once', () => {
    expect(indexOf({ ratio: 60, circles: [20, 18, 20] })).toEqual({ ratio: 60, circles: [18, 20] })
  })

  it('a gear; a plate in the job’s units, its holes 0.05 mm off unless told', () => {
    expect(indexOf({ by: 'gear', gear: 48 })).toEqual({ by: 'gear', gear: 48 })
    expect(indexOf({ plate: { radius: 2 } }, 'in')).toEqual({ plate: { radius: 50.8, hole: 0.05 } })
    expect(indexOf({ plate: { radius: 60, hole: 0 }, eccentric: 0.02, play: '0.001 in' })).toEqual({
      plate: { radius: 60, hole: 0 },
      eccentric: 0.02,
      play: 0.0254,
    })
  })

  it('asks for what it was told to turn by', () => {
    expect(refused({ by: 'gear' })).toEqual(['tooling.index.gear'])
    expect(refused({ by: 'plate' })).toEqual(['tooling.index.plate'])
  })

  it('refuses what is no count, no list, no such way', () => {
    expect(refused({ ratio: 0 })).toEqual(['tooling.index.ratio'])
    expect(refused({ circles: [] })).toEqual(['tooling.index.circles'])
    expect(refused({ circles: [17.5] })).toHaveLength(1)
    expect(refused({ by: 'eye' })).toEqual(['tooling.index.by'])
  })
})

describe('a slide set over', () => {
  it('is an angle above nought, up to 90', () => {
    const found = read({}, { slide: 30 })
    expect('spec' in found && found.spec.tooling.bar?.dial.slide).toBe(30)
    expect(refused({}, { slide: 0 })).toEqual(['tooling.bar.dial.slide'])
    expect(refused({}, { slide: 91 })).toEqual(['tooling.bar.dial.slide'])
  })
})
