/** A PDF that is written page by page: no clock, nothing compressed, no scaling when it is printed. */
import PDFDocument from 'pdfkit'
import { oneLine } from './marks.ts'

/** PDF points for one millimetre. */
export const point = 72 / 25.4
export const round = (value: number): number => Math.round(value * 1e4) / 1e4
/** No clock: every file of ours says the same day. */
const day = new Date(Date.UTC(2000, 0, 1))

/**
 * A document without a page yet, true to scale: viewers are asked not to fit it to the paper. Nothing is compressed, since every release of a
 * compressor packs differently and the same pages shall give the same bytes everywhere.
 * @param faces TrueType files by the name they are used by; the letters used are embedded.
 * @returns The document, and its bytes once it has been ended.
 */
export function opened(
  title: string,
  faces: Readonly<Record<string, Uint8Array>>,
): { readonly document: PDFKit.PDFDocument; readonly bytes: Promise<Uint8Array> } {
  const document = new PDFDocument({
    pdfVersion: '1.7',
    autoFirstPage: false,
    compress: false,
    // An empty name keeps the library from opening a font of its own (a data file that a bundle does not have).
    font: '',
    lang: 'en',
    info: {
      Title: oneLine(title),
      Producer: 'borewright',
      Creator: 'borewright',
      CreationDate: day,
    },
  })
  const bytes = gathered(document)
  // Not ended by us: the root ends what it holds.
  const root = document as unknown as { readonly _root: { readonly data: Record<string, unknown> } }
  root._root.data.ViewerPreferences = document.ref({ PrintScaling: 'None' })
  for (const [name, file] of Object.entries(faces)) {
    document.registerFont(name, (read.get(file) ?? sourceOf(file)) as ArrayBuffer)
    document.font(name)
    const { _font: face } = document as unknown as { readonly _font: Face }
    read.set(file, face.font)
    face.layout = bareRuns(face)
  }
  writeByPage(document)
  return { document, bytes }
}

/** Operators are made into bytes a page at a time: the library makes bytes of each. */
function writeByPage(document: PDFKit.PDFDocument): void {
  const held: string[] = []
  document.addContent = (operator: string) => {
    held.push(operator)
    return document
  }
  const flush = document.flushPages.bind(document)
  document.flushPages = () => {
    if (held.length > 0) document.page.write(held.splice(0).join('\n'))
    flush()
  }
}

/** A face as the library has read it. */
interface Read {
  glyphForCodePoint(codePoint: number): { readonly id: number; readonly advanceWidth: number }
}

/** What the library has read of each file, for as long as the file is kept: the documents of a run share their faces. */
const read = new WeakMap<Uint8Array, Read>()

/** A face in a document, as far as we look into it. */
interface Face {
  readonly scale: number
  readonly font: Read
  layout: (text: string) => unknown
}

/**
 * Letters at their bare advances, as they were measured: no pair is moved, none is joined. In place of the library's shaper, which takes
 * nine tenths of the time of writing even where it has been asked for nothing. What a glyph stands for is this document's own: it may stand for
 * another letter in the next.
 */
const bareRuns = ({ font, scale }: Face): Face['layout'] => {
  const letterOf = (codePoint: number) => {
    const { id, advanceWidth } = font.glyphForCodePoint(codePoint)
    const advance = advanceWidth * scale
    return {
      glyph: { id, advanceWidth, codePoints: [codePoint] },
      position: { xAdvance: advance, yAdvance: 0, xOffset: 0, yOffset: 0, advanceWidth: advance },
    }
  }
  const known = new Map<string, ReturnType<typeof letterOf>>()
  const runOf = (text: string) => {
    const letters = Array.from(text, (letter) => {
      const found = known.get(letter) ?? letterOf(letter.codePointAt(0) ?? 0)
      known.set(letter, found)
      return found
    })
    return {
      glyphs: letters.map(({ glyph }) => glyph),
      positions: letters.map(({ position }) => position),
      advanceWidth: letters.reduce((sum, { position }) => sum + position.xAdvance, 0),
    }
  }
  // A text is measured, and then written.
  let last: { readonly text: string; readonly run: ReturnType<typeof runOf> } | undefined
  return (text) => {
    if (last?.text !== text) last = { text, run: runOf(text) }
    return last.run
  }
}

/**
 * Writes a text from the left end of its baseline, `stretch` percent of its width. The library's front door measures it three times on the way, for
 * the paragraphs that it may be part of.
 */
export function writeText(document: PDFKit.PDFDocument, text: string, x: number, y: number, stretch = 100): void {
  const own = document as unknown as { _fragment(text: string, x: number, y: number, how: object): void }
  own._fragment(text, x, y, { baseline: 'alphabetic', horizontalScaling: stretch, textWidth: 0, wordCount: 0 })
}

/** The library takes any view of bytes; its types know only Node's. */
const sourceOf = (bytes: Uint8Array): ArrayBuffer => bytes.slice().buffer as ArrayBuffer

function gathered(document: PDFKit.PDFDocument): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = []
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk))
    document.on('error', reject)
    document.on('end', () => {
      const whole = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0))
      let at = 0
      for (const chunk of chunks) {
        whole.set(chunk, at)
        at += chunk.length
      }
      resolve(whole)
    })
  })
}
