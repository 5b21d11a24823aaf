import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cardHtml } from '../../src/writers/card-html.ts'
import { card } from '../card/hand-made-card.ts'
import { bare, missing, saidBy } from '../card/said.ts'
import { someCard } from '../card/some-cards.ts'

const face = (name: string): Uint8Array =>
  new Uint8Array(
    readFileSync(join(import.meta.dirname, `../../src/writers/faces/AtkinsonHyperlegibleNext-${name}.woff2`)),
  )
const faces = { regular: face('Regular'), bold: face('Bold') }
const html = cardHtml(card, faces)
const styleOf = (page: string): string => /<style>([\s\S]*?)<\/style>/.exec(page)?.[1] ?? ''
const bodyOf = (page: string): string => page.slice(page.indexOf('<body>'))

interface Tag {
  readonly name: string
  readonly attributes: ReadonlyMap<string, string>
  readonly inside: readonly string[]
}
const anyTag = /<(\/?)([a-zA-Z0-9]+)((?:\s+[a-zA-Z0-9:-]+="[^"<>]*")*)\s*(\/?)>/g
const alone = new Set(['meta', 'br', 'hr', 'img', 'input'])

/** Every element of a page with the names of those around it. @throws Error where a tag is not closed, or closed out of turn. */
function tagsOf(page: string): readonly Tag[] {
  const open: string[] = []
  const found: Tag[] = []
  const whole = page.replace(/<style>[\s\S]*?<\/style>/, '<style></style>').replace('<!doctype html>', '')
  for (const [tag, closing, name = '', rest = '', selfClosed] of whole.matchAll(anyTag)) {
    if (closing) {
      const last = open.pop()
      if (last !== name) throw new Error(`${tag} closes ${last}`)
      continue
    }
    const attributes = new Map(
      [...rest.matchAll(/([a-zA-Z0-9:-]+)="([^"]*)"/g)].map(([, key = '', value = '']) => [key, value]),
    )
    found.push({ name, attributes, inside: [...open] })
    if (!selfClosed && !alone.has(name)) open.push(name)
  }
  if (open.length > 0) throw new Error(`left open: ${open.join(' ')}`)
  // What is left after the tags are taken out holds no sign of another.
  if (/[<>]/.test(whole.replace(anyTag, ''))) throw new Error('a loose bracket')
  return found
}

const read = (page: string): string =>
  page
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&')

describe('a job card as HTML', () => {
  it('is well formed, whatever it says', () => {
    expect(tagsOf(html).length).toBeGreaterThan(100)
    fc.assert(
      fc.property(someCard, (some) => {
        const page = cardHtml(some, faces)
        expect(tagsOf(page).length).toBeGreaterThan(10)
        const sections = bodyOf(page).split('<section').slice(1)
        const said = saidBy(some)
        expect(sections.length).toBe(said.length)
        expect(said.map((pieces, at) => missing(pieces, read(`<section${sections[at]}`)))).toEqual(
          said.map(() => undefined),
        )
      }),
      { numRuns: 60, seed: 390 },
    )
  }, 60_000)

  it('says what the model says, in order', () => {
    const sections = bodyOf(html).split('<section').slice(1)
    expect(saidBy(card).map((pieces, at) => missing(pieces, read(`<section${sections[at]}`)))).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ])
  })

  it('stands alone: one style, no script, nothing fetched, no style attribute', () => {
    const tags = tagsOf(html)
    expect(
      tags.filter(({ name }) => ['script', 'link', 'iframe', 'object', 'img', 'base', 'form'].includes(name)),
    ).toEqual([])
    expect(tags.filter(({ name }) => name === 'style').length).toBe(1)
    for (const { name, attributes } of tags) {
      for (const [key, value] of attributes) {
        expect([name, key, /^(on|style$|src|href|xlink)/.test(key)]).toEqual([name, key, false])
        if (key !== 'xmlns') expect(value).not.toMatch(/https?:|javascript:/)
      }
    }
    expect([...styleOf(html).matchAll(/url\(["']?([a-z/0-9:;]+),/g)].map(([, kind]) => kind)).toEqual([
      'data:font/woff2;base64',
      'data:font/woff2;base64',
    ])
    expect(styleOf(html)).not.toMatch(/@import|https?:|expression|</)
  })

  it('carries its two faces whole', () => {
    const found = [...styleOf(html).matchAll(/base64,([A-Za-z0-9+/=]+)\)/g)].map(([, text = '']) =>
      Buffer.from(text, 'base64'),
    )
    expect(found.map((bytes) => Buffer.compare(bytes, Buffer.from(faces.regular)))).toContain(0)
    expect(found.map((bytes) => Buffer.compare(bytes, Buffer.from(faces.bold)))).toContain(0)
  })

  it('escapes whatever it is told', () => {
    expect(html).toContain('&lt;b&gt;&amp;amp;&lt;/b&gt; &quot;quoted&quot; &#39;too&#39;')
    expect(html).toContain(']]&gt; &lt;/style&gt;&lt;script&gt;no()&lt;/script&gt;')
    const hostile = '"><script>no()</script>'
    const page = cardHtml({ ...card, name: hostile, about: hostile, deferral: hostile, notSound: [hostile] }, faces)
    expect(tagsOf(page).some(({ name }) => name === 'script')).toBe(false)
  })

  it('is in black: no colour but black and the white it is lifted from', () => {
    const style = styleOf(html).replace(/base64,[^)]*/g, '')
    expect([...new Set(style.match(/#[0-9a-f]{3,8}\b|\b(?:rgb|hsl|gr[ae]y|red|blue|opacity)\b/g))].toSorted()).toEqual([
      '#000',
      '#fff',
    ])
  })

  it('starts each leaf and each side on a fresh sheet', () => {
    const sides = tagsOf(html).filter(({ name }) => name === 'section')
    expect(sides.map(({ attributes }) => attributes.get('class')?.split(' ').slice(0, 2))).toEqual([
      ['side', 'machine'],
      ['side', 'machine'],
      ['side', 'tooling'],
      ['side', 'reasons'],
    ])
    expect(styleOf(html)).toMatch(/\.side \+ \.side \{[^}]*break-before: page/)
  })

  it('names its parts for those who cannot see it: headings in steps, heads of columns and rows, pictures', () => {
    const tags = tagsOf(html)
    const levels = tags.flatMap(({ name }) => (/^h[1-6]$/.test(name) ? [Number(name.slice(1))] : []))
    expect(levels[0]).toBe(1)
    levels.forEach((level, at) => expect(level - (levels[at - 1] ?? 0)).toBeLessThanOrEqual(1))
    const heads = tags.filter(({ name }) => name === 'th')
    expect(heads.length).toBeGreaterThan(20)
    for (const { attributes } of heads) expect(['col', 'row', 'rowgroup']).toContain(attributes.get('scope'))
    const tables = tags.filter(({ name }) => name === 'table')
    expect(tags.filter(({ name }) => name === 'caption').length).toBe(tables.length)
    for (const { name, attributes } of tags)
      if (attributes.get('class')?.startsWith('picture')) {
        expect([name, attributes.get('role')]).toEqual(['div', 'img'])
        expect(attributes.get('aria-label')).toMatch(/^Section\. A bore and /)
      }
    const ids = tags.flatMap(({ attributes }) => attributes.get('id') ?? [])
    expect(new Set(ids).size).toBe(ids.length)
  })

  it('names in its style every length that it uses, and no other', () => {
    for (const kind of ['long', 'least', 'columns', 'picture']) {
      const used = [...bodyOf(html).matchAll(new RegExp(`\\b${kind}-(\\d+)`, 'g'))].map(([, name]) => name)
      const named = [...styleOf(html).matchAll(new RegExp(`\\.${kind}-(\\d+)`, 'g'))].map(([, name]) => name)
      expect([...new Set(used)].toSorted()).toEqual([...new Set(named)].toSorted())
    }
    expect(styleOf(html)).toContain('.picture-1 { width: 108mm; }')
    expect(styleOf(html)).toContain('grid-template-columns: 108mm minmax(0, 1fr)')
  })

  it('marks every side of a job that is not sound', () => {
    const page = cardHtml({ ...card, notSound: ['bar-passes-bore'] }, faces)
    expect(page.match(/NOT SOUND<\/b> Made although this is broken: <b>bar-passes-bore/g)?.length).toBe(4)
    expect(html).not.toContain('NOT SOUND')
  })

  it('is the same text each time', () => {
    expect(cardHtml(structuredClone(card), faces)).toBe(html)
  })

  it('ties a box within a line to the word after it, and says that word once', () => {
    expect(html).toContain(
      'Nose points to the <span class="tied"><span class="tick"></span> back:</span> dial goes in <span',
    )
    expect(bare(read(bodyOf(html)))).toContain(bare('Nose points to the back: dial goes in front: dial goes out.'))
  })
})
