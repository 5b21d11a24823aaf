import { describe, expect, it } from 'vitest'
import { design } from '../../src/design.ts'
import { readSpec } from '../../src/spec/read.ts'
import { specSchema } from '../../src/spec/schema.ts'
import { allRows, byRow } from '../../src/page/rows/complaining.ts'
import { asked } from '../../src/page/rows/row.ts'

type Definition = {
  readonly innerType?: unknown
  readonly options?: readonly unknown[]
  readonly type?: string
}
const shapeOf = (schema: unknown): Readonly<Record<string, unknown>> | undefined => {
  const { shape, def } = (schema ?? {}) as { shape?: Readonly<Record<string, unknown>>; def?: Definition }
  if (shape) return shape
  if (def?.innerType) return shapeOf(def.innerType)
  return def?.options?.map(shapeOf).find((found) => found !== undefined)
}

/** Every path of the schema at which a value stands, and those at which a mapping does. */
const paths = (schema: unknown, above = ''): readonly { readonly path: string; readonly leaf: boolean }[] =>
  Object.entries(shapeOf(schema) ?? {})
    .filter(([key]) => key !== '$schema')
    .flatMap(([key, child]) => {
      const path = above === '' ? key : `${above}.${key}`
      const within = paths(child, path)
      return [{ path, leaf: within.length === 0 }, ...within]
    })

describe('the lines of the form', () => {
  const schema = paths(specSchema)

  it('each stands at a path that the spec knows, and no two at one', () => {
    const known = new Set(schema.map(({ path }) => path))
    expect(allRows.filter((row) => !known.has(row.path)).map((row) => row.path)).toEqual([])
    expect(new Set(allRows.map((row) => row.path)).size).toBe(allRows.length)
  })

  it('whatever can be told in a spec can be told on the page', () => {
    // At the head of the page, and a list of machines that is told in a shop file alone.
    const elsewhere = new Set(['name', 'units', 'shop.machines'])
    const rows = new Set(allRows.map((row) => row.path))
    const missing = schema.filter(({ path, leaf }) => leaf && !rows.has(path) && !elsewhere.has(path))
    expect(missing.map(({ path }) => path)).toEqual([])
  })

  it('a complaint is told at its own line, or at the nearest', () => {
    const at = (path: string) => [...byRow([{ path, read: '1', accepted: '2' }]).keys()]
    expect(at('bore.diameter')).toEqual(['bore.diameter'])
    expect(at('bore.tolerance[1]')).toEqual(['bore.tolerance'])
    expect(at('feature.keyway.depth')).toEqual(['feature.keyway.depth.crown'])
    expect(at('feature.keyway')).toEqual(['feature.keyway.standard'])
    expect(at('shop.bars[3]')).toEqual(['shop.bars'])
    expect(at('tooling.bar.infead')).toEqual([''])
    expect(at('')).toEqual([''])
  })

  it('lines are there for the feature that is told, and no other', () => {
    const there = (document: unknown) =>
      allRows
        .filter((row) => row.path.startsWith('feature.') && (row.when?.(asked(document)) ?? true))
        .map((row) => row.path)
    const groove = there({ feature: { groove: {} } })
    expect(groove).toContain('feature.groove.radius')
    expect(groove.every((path) => path.startsWith('feature.groove.'))).toBe(true)
  })

  it('what form a key of ASME B17.1 has where nobody told: square up to a bore of 6-1/2 in', () => {
    const form = allRows.find(({ path }) => path === 'feature.keyway.form')
    const taken = (diameter: string, more: object = {}) => {
      const read = readSpec({
        name: 'k',
        units: 'in',
        bore: { diameter, length: 7 },
        feature: { keyway: { standard: 'asme-b17.1', ...more } },
      })
      if (!('spec' in read)) throw new Error(JSON.stringify(read.complaints))
      return form?.worked?.(design(read.spec))
    }
    expect([taken('6-1/2'), taken('6-5/8')]).toEqual(['square', 'rectangular'])
    // A taper key has neither.
    expect(taken('1', { taper: '1:96', fit: 'class 2' })).toBeUndefined()
  })
})
