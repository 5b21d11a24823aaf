import { describe, expect, it } from 'vitest'
import { keySteel, keySteelNames, keySteels } from '../../src/standards/key-steels.ts'
import { barMaterial, workMaterial } from '../../src/standards/materials.ts'

describe('steels of keys and shafts', () => {
  it('yield as printed: table of EN materials, and Shigley Table A-20 (from memory), N/mm²', () => {
    // 54 and 77 kpsi: 1018 and 1045 cold drawn.
    expect(keySteel('E335')?.yield).toBe(335)
    expect((keySteel('1018 cold drawn')?.yield ?? 0) / 6.894757).toBeCloseTo(54, 0)
    expect((keySteel('1045 CD')?.yield ?? 0) / 6.894757).toBeCloseTo(77, 0)
    expect(keySteel('C45+C')?.name).toBe('key steel')
    expect(keySteel('cheese')).toBeUndefined()
  })

  it('have names of their own, each known to no other table as something else', () => {
    expect(new Set(keySteelNames.map((name) => name.toLowerCase())).size).toBe(keySteelNames.length)
    for (const name of keySteelNames) {
      expect(workMaterial(name), name).toBeUndefined()
      expect(barMaterial(name), name).toBeUndefined()
    }
  })

  it('are stronger drawn than rolled: 1018 and 1045 as worked metals yield less', () => {
    expect(keySteel('1018 cold drawn')?.yield).toBeGreaterThan(workMaterial('1018')?.strength?.yield ?? Infinity)
    expect(keySteel('1045 cold drawn')?.yield).toBeGreaterThan(workMaterial('1045')?.strength?.yield ?? Infinity)
    for (const { yield: strength } of keySteels.rows) expect(strength).toBeGreaterThan(200)
  })
})
