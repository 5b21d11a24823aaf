import { readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, inject, it } from 'vitest'
import { withoutArrows } from '../../vite.light.ts'

const folder = dirname(inject('program'))
const codeOf = (file: string): string => readFileSync(join(folder, file), 'utf8')

/** A file and all that is loaded with it, before any of it runs. */
const loadedWith = (file: string, met: readonly string[] = []): readonly string[] =>
  met.includes(file)
    ? met
    : [...codeOf(file).matchAll(/(?:from|import)\s*"\.\/([^"]+)"/g)].reduce<readonly string[]>(
        (so, [, other = '']) => loadedWith(other, so),
        [...met, file],
      )

describe('what is loaded', () => {
  it('by the program is what reads a line; by a check the core besides, and no writer, nor the help', () => {
    expect(loadedWith('borewright.js').toSorted()).toEqual(['borewright.js', 'line.js'])
    expect(loadedWith('core.js').toSorted()).toEqual(['core.js', 'line.js', 'sizes.js'])
    for (const file of ['borewright.js', 'line.js', 'sizes.js', 'core.js'])
      expect(codeOf(file), file).not.toMatch(/scriptName|toJSONSchema|PDFDocument/)
  })

  it('is in ASCII, and its functions can be passed over until they are called', () => {
    for (const file of ['borewright.js', 'line.js', 'sizes.js', 'core.js', 'make.js', 'card-of.js']) {
      const code = codeOf(file)
      expect(code, file).toMatch(/^[\0-\x7f]*$/)
      expect(withoutArrows(code) === code, file).toBe(true)
    }
  })
})
