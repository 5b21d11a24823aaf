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
  for (const [name, face] of Object.entries(faces)) {
    document.registerFont(name, sourceOf(face))
    document.font(name)
    const { _font } = document as unknown as { readonly _font: Face }
    _font.layoutRun = (text) => bareRun(_font, text)
  }
  return { document, bytes }
}

/** A face as the library holds it, as far as we look into it. */
interface Face {
  readonly scale: number
  readonly font: { glyphsForString(text: string): readonly { readonly advanceWidth: number }[] }
  layoutRun: (text: string) => unknown
}

/**
 * Letters at their bare advances, as they were measured: no pair is moved, none is joined. In place of the library's shaper, which takes
 * nine tenths of the time of writing even where it has been asked for nothing.
 */
const bareRun = ({ font, scale }: Face, text: string) => {
  const glyphs = font.glyphsForString(text)
  const positions = glyphs.map((glyph) => {
    const advance = glyph.advanceWidth * scale
    return { xAdvance: advance, yAdvance: 0, xOffset: 0, yOffset: 0, advanceWidth: advance }
  })
  return { glyphs, positions, advanceWidth: positions.reduce((sum, { xAdvance }) => sum + xAdvance, 0) }
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
