import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { edits, nearest } from '../../src/spec/near.ts'

describe('near misses', () => {
  it('counts edits', () => {
    // The usual textbook example.
    expect(edits('kitten', 'sitting')).toBe(3)
    expect(edits('', 'abc')).toBe(3)
    fc.assert(
      fc.property(fc.string({ maxLength: 12 }), fc.string({ maxLength: 12 }), (one, other) => {
        expect(edits(one, other)).toBe(edits(other, one))
        expect(edits(one, one)).toBe(0)
        expect(edits(one, other)).toBeGreaterThanOrEqual(Math.abs(one.length - other.length))
      }),
    )
  })

  it('finds the nearest word and leaves strangers alone', () => {
    expect(nearest('diametr', ['length', 'diameter'])).toBe('diameter')
    expect(nearest('corner_radius', ['cornerRadius'])).toBe('cornerRadius')
    expect(nearest('lenght', ['length', 'mouth'])).toBe('length')
    expect(nearest('M7', ['M2', 'M6'])).toBeUndefined()
    expect(nearest('hull', ['use', 'bore'])).toBeUndefined()
    expect(nearest(7, ['7'])).toBeUndefined()
  })
})
