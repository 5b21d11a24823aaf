import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { openTools } from '../../src/cli/tools.ts'
import { design } from '../../src/design.ts'
import { make } from '../../src/make.ts'
import { parse } from '../../src/spec/parse.ts'
import { readSpec } from '../../src/spec/read.ts'
import { readDxf } from '../writers/read-dxf.ts'
import { open } from '../writers/read-pdf.ts'
import { tagsOf, tree } from '../writers/xml.ts'

const text = readFileSync(join(import.meta.dirname, 'corpus/answered-markup.yaml'), 'utf8')

const madeOf = async (written: string): Promise<ReadonlyMap<string, Uint8Array>> => {
  const read = parse(written)
  const spec = 'document' in read ? readSpec(read.document) : read
  if (!('spec' in spec)) throw new Error(JSON.stringify(spec.complaints))
  const files = await make(design(spec.spec), { formats: ['svg', 'dxf', 'html', 'pdf'] }, openTools())
  return new Map(files.map(({ name, bytes }) => [name, bytes]))
}
const textIn = (bytes: Uint8Array | undefined): string => new TextDecoder().decode(bytes)

it('markup, group codes and operators in a spec stay words in every file', async () => {
  const hostile = await madeOf(text)
  const tame = await madeOf(
    text.replace(/^use: .*/m, 'use: mill').replaceAll('</title><img src=x onerror=alert(2)>', 'bench lathe'),
  )
  expect([...hostile.keys()]).toEqual([...tame.keys()])
  for (const [name, bytes] of hostile) {
    const [here, there] = [textIn(bytes), textIn(tame.get(name))]
    if (name.endsWith('.svg'))
      expect(tagsOf(tree(here)).map((tag) => tag.name)).toEqual(tagsOf(tree(there)).map((tag) => tag.name))
    if (name.endsWith('.dxf')) {
      const kinds = (source: string) => readDxf(source).entities.map((entity) => entity.type)
      expect([name, kinds(here)]).toEqual([name, kinds(there)])
    }
    if (name.endsWith('.html')) {
      expect(here).not.toMatch(/<script|<img|onerror=[^&]*>(?!.*&gt;)/i)
      expect(here).toContain('alert(1)&lt;/script&gt;')
    }
    if (name === 'packet.pdf') {
      const document = await open(bytes)
      let words = ''
      for (let page = 1; page <= document.numPages; page++)
        words += (await (await document.getPage(page)).getTextContent()).items
          .map((item) => ('str' in item ? item.str : ''))
          .join(' ')
      expect(words).toContain('alert(1)')
      expect(words).toContain('Tj')
    }
  }
})
