import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { examples, gallery, pictureOf } from './gallery.ts'

const folder = join(import.meta.dirname, '../output/examples')
const writing = process.env['GALLERY'] === 'write'

/** Compares a file with what it should hold; `npm run examples` writes it instead. */
const stands = (name: string, text: string): void => {
  const file = join(folder, name)
  if (writing) {
    mkdirSync(dirname(file), { recursive: true })
    writeFileSync(file, text)
  }
  expect(readFileSync(file, 'utf8'), 'stale: npm run examples').toBe(text)
}

describe('output/examples', () => {
  it.each(examples)('has a picture of $name', (example) => {
    stands(`pictures/${example.name}.svg`, pictureOf(example))
  })

  it('has a page that shows every example, and whose every link leads to a file', () => {
    stands('index.html', gallery())
    const linked = [...gallery().matchAll(/(?:href|src)="([^#"]+)"/g)].map(([, to]) => to ?? '')
    expect(linked.filter((to) => !existsSync(join(folder, to)))).toEqual([])
    expect(linked.filter((to) => /^\w+:|^\//.test(to))).toEqual([])
    const made = readdirSync(folder).filter((name) => !['index.html', 'pictures'].includes(name))
    expect(made.toSorted()).toEqual(examples.map(({ name }) => name).toSorted())
  })
})
