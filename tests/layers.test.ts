import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, normalize, relative } from 'node:path'
import { describe, expect, it } from 'vitest'

const root = join(import.meta.dirname, '..')
// Each entry may import from itself and from those before it.
const ranks = [
  'src/standards',
  'src/fits',
  'src/spec',
  'src/dimensions',
  'src/mechanics',
  'src/plan',
  'src/checks',
  'src/sizes.ts',
  'src/design.ts',
  'src/solid',
  'src/drawing',
  'src/figures',
  'src/card',
  'generators',
  'src/writers',
  'src/make.ts',
  'src/index.ts',
  'src/cli',
  'src/node.ts',
  'src/page',
] // prettier-ignore
const innocent = ['src/solid', 'src/drawing'] // know nothing of the trade but fits
const rankOf = (file: string): number => ranks.findIndex((entry) => file === entry || file.startsWith(`${entry}/`))
const files = ['src', 'generators'].flatMap((top) =>
  readdirSync(join(root, top), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => join(top, name)),
)
const importsOf = (file: string): string[] =>
  [...readFileSync(join(root, file), 'utf8').matchAll(/(?:from|import)\s*\(?\s*'([^']+)'/g)].map(
    (found) => found[1] ?? '',
  )

describe('the layers', () => {
  it('every file has a rank', () => {
    expect(files.filter((file) => rankOf(file) < 0)).toEqual([])
  })

  it('files import only from their own layer and those before it', () => {
    const wrong: string[] = []
    for (const file of files) {
      for (const name of importsOf(file)) {
        if (!name.startsWith('.')) continue
        const target = relative(root, normalize(join(root, dirname(file), name)))
        if (target.includes('data/') || target.endsWith('.json')) continue
        if (rankOf(target) > rankOf(file)) wrong.push(`${file} imports ${target}`)
        const home = innocent.find((layer) => file.startsWith(`${layer}/`))
        if (home && !['src/fits', ...innocent].some((layer) => target.startsWith(`${layer}/`)))
          wrong.push(`${file} imports ${target}`)
      }
    }
    expect(wrong).toEqual([])
  })

  it('node, the clock and chance are used by the command line and the page alone', () => {
    const wrong = files.filter((file) => {
      if (/^src\/(cli|page)\//.test(file)) return false
      const text = readFileSync(join(root, file), 'utf8')
      return (
        importsOf(file).some((name) => name.startsWith('node:')) ||
        /Date\.now|new Date\(\)|Math\.random|process\./.test(text)
      )
    })
    expect(wrong).toEqual([])
  })
})
