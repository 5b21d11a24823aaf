/** A PDF that is written page by page: no clock, nothing compressed, no scaling when it is printed. */
import PDFDocument from 'pdfkit'
import { oneLine } from './marks.ts'

/** PDF points for one millimetre. */
export const point = 72 / 25.4
export const round = (value: number): number => Math.round(value * 1e4) / 1e4
/**
 * Letters stand at their bare advances, as they were measured: no pair is moved, none is joined. The library's types list features by name; the
 * shaper behind it also takes them switched off one by one.
 */
export const unjoined = {
  kern: false,
  liga: false,
  clig: false,
  calt: false,
  ccmp: false,
  mark: false,
  mkmk: false,
} as unknown as PDFKit.Mixins.OpenTypeFeatures[]
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
  for (const [name, face] of Object.entries(faces)) document.registerFont(name, sourceOf(face))
  return { document, bytes }
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
