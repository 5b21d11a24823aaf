// The yardstick is pdfkit: the same pages by it are the same bytes.
import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import PDFDocument from 'pdfkit'
import { describe, expect, it } from 'vitest'
import { md5 } from '../../src/writers/md5.ts'
import { PdfDocument } from '../../src/writers/pdf-document.ts'
import { openFace } from '../../src/writers/true-type.ts'

const bytes = (path: string): Uint8Array => new Uint8Array(readFileSync(new URL(import.meta.resolve(path))))
const faces = {
  card: bytes('../../src/writers/faces/AtkinsonHyperlegibleNext-Regular.ttf'),
  'card-bold': bytes('../../src/writers/faces/AtkinsonHyperlegibleNext-Bold.ttf'),
  upright: bytes('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf'),
  bold: bytes('dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf'),
}
// Letters of one outline and of several (Å is an A and a ring), the two sorts of blank that share a glyph, signs that the card's face lacks, one
// beyond 16 bits, and Thai, which none of them has.
const words = ['Ø23.987 H7', 'Ångström à l’œuvre', 'a\u00a0b − ½ µm', 'α ≤ 45° → ∅', '𝔸 \u{1D538}', 'ขนาด (fi) \\']
const title = 'Keyway − 8 × 7 (rev. \\ 2)'

interface Text {
  readonly face: keyof typeof faces
  readonly size: number
  readonly at: readonly [number, number]
  readonly stretch?: number
  readonly turn?: true
}
const texts: readonly (Text & { readonly text: string })[] = words.flatMap((text, row) =>
  Object.keys(faces).map((face, column) => ({
    text,
    face: face as keyof typeof faces,
    size: 8 + 0.25 * row,
    at: [20.5 + 130 * column, 40 + 17.1234 * row] as const,
    ...(row % 3 === 1 && { stretch: 97.1234 }),
    ...(row % 2 === 1 && { turn: true as const }),
  })),
)

const ours = (): Uint8Array => {
  const document = new PdfDocument(title, faces)
  const page = document.page(841.8897637795276, 595.2755905511812)
  const leaf = document.outline.add('Leaf')
  leaf.add('side 1')
  page.lineCap('round')
  page.lineWidth(0.7087)
  page.moveTo([10.5, 20])
  page.lineTo([30.1234, 20])
  page.curveTo([31, 20], [32.5, 22], [32.5, 23])
  page.stroke()
  page.moveTo([50, 50])
  page.lineTo([53, 50.5])
  page.lineTo([53, 49.5])
  page.close()
  page.fill()
  page.lineCap('butt')
  page.rectangle([60, 60], 12.5, 7)
  page.stroke()
  const other = document.page(612, 792)
  leaf.add('side 2 (µ)')
  document.outline.add('Drawings')
  for (const { text, face, size, at, stretch, turn } of texts) {
    other.save()
    if (turn) other.turn(at)
    other.text(document.set(face, text), size, at, stretch)
    other.restore()
  }
  return document.end()
}

const theirs = (): Promise<Uint8Array> => {
  const made = { Producer: 'borewright', Creator: 'borewright', CreationDate: new Date(Date.UTC(2000, 0, 1)) }
  const document = new PDFDocument({
    pdfVersion: '1.7',
    autoFirstPage: false,
    compress: false,
    font: '',
    lang: 'en',
    info: { Title: title, ...made },
  })
  const gathered = new Promise<Uint8Array>((resolve) => {
    const chunks: Uint8Array[] = []
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk))
    document.on('end', () => resolve(Buffer.concat(chunks)))
  })
  const root = document as unknown as { readonly _root: { readonly data: Record<string, unknown> } }
  root._root.data['ViewerPreferences'] = document.ref({ PrintScaling: 'None' })
  for (const [name, face] of Object.entries(faces)) {
    document.registerFont(name, face.slice().buffer as ArrayBuffer)
    document.font(name)
    // Pairs are not moved and letters not joined: the shaper is left out.
    const { _font: font } = document as unknown as { readonly _font: Font }
    font.layoutRun = (text) => {
      const glyphs = font.font.glyphsForString(text)
      const positions = glyphs.map(({ advanceWidth }) => {
        const advance = advanceWidth * font.scale
        return { xAdvance: advance, yAdvance: 0, xOffset: 0, yOffset: 0, advanceWidth: advance }
      })
      return { glyphs, positions, advanceWidth: positions.reduce((sum, { xAdvance }) => sum + xAdvance, 0) }
    }
  }
  document.addPage({ size: [841.8897637795276, 595.2755905511812], margin: 0 })
  const leaf = document.outline.addItem('Leaf')
  leaf.addItem('side 1')
  document.lineCap('round').lineWidth(0.7087).moveTo(10.5, 20).lineTo(30.1234, 20)
  document.bezierCurveTo(31, 20, 32.5, 22, 32.5, 23).stroke()
  document.moveTo(50, 50).lineTo(53, 50.5).lineTo(53, 49.5).closePath().fill()
  document.lineCap('butt').rect(60, 60, 12.5, 7).stroke()
  document.addPage({ size: [612, 792], margin: 0 })
  leaf.addItem('side 2 (µ)')
  document.outline.addItem('Drawings')
  for (const { text, face, size, at, stretch, turn } of texts) {
    document.font(face).fontSize(size).save()
    if (turn) document.rotate(-90, { origin: [...at] })
    const how = { lineBreak: false, baseline: 'alphabetic' as const, ...(stretch && { horizontalScaling: stretch }) }
    document.text(text, ...at, how).restore()
  }
  document.end()
  return gathered
}
interface Font {
  readonly scale: number
  readonly font: { glyphsForString(text: string): readonly { readonly advanceWidth: number }[] }
  layoutRun: (text: string) => unknown
}

describe('a PDF', () => {
  it('is the one that pdfkit writes', async () => {
    const latin = new TextDecoder('latin1')
    expect(latin.decode(ours())).toBe(latin.decode(await theirs()))
  })

  it('knows no face but those it was given, and no page before the first', () => {
    const document = new PdfDocument(title, { card: faces.card })
    expect(() => document.set('bold', 'a')).toThrow(RangeError)
    expect(() => document.outline.add('Leaf')).toThrow(RangeError)
  })

  it('takes TrueType faces alone', () => {
    expect(() => openFace(new TextEncoder().encode('OTTO, and nothing behind it'))).toThrow(RangeError)
  })
})

it('takes the MD5 of every length as Node does', () => {
  // Over one block and two, and each way of filling the last.
  for (let length = 0; length <= 130; length++) {
    const some = Uint8Array.from({ length }, (_, at) => (at * 37) & 0xff)
    expect(md5(some)).toBe(createHash('md5').update(some).digest('hex'))
  }
})
