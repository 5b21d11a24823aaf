import type { Sheet } from '../drawing/sheet.ts'
import type { Fonts } from './fonts.ts'
import { oneLine } from './marks.ts'
import { opened, point } from './pdf-document.ts'
import { draw, type Pen } from './pdf-strokes.ts'

/** Sheets as one PDF, a sheet a page, true to scale. One outline entry a part, its further sheets under it. */
export async function pdf(sheets: readonly Sheet[], fonts: Fonts): Promise<Uint8Array> {
  const [first] = sheets
  if (!first) throw new RangeError('a document without a sheet')
  const { document, bytes } = opened(`${first.number} ${first.title}`, { upright: fonts.regular, bold: fonts.bold })
  drawSheets(document, document.outline, sheets)
  document.end()
  return bytes
}

/**
 * Draws sheets on pages of their own size, the faces `upright` and `bold` registered.
 * @param under Where their outline entries hang.
 * @param then Called when a sheet is drawn and its page still open, with its index.
 */
export function drawSheets(
  document: PDFKit.PDFDocument,
  under: PDFKit.PDFOutline,
  sheets: readonly Sheet[],
  then?: (sheet: Sheet, at: number) => void,
): void {
  let part: { readonly name: string; readonly entry: PDFKit.PDFOutline } | undefined
  let sheetOfPart = 0
  sheets.forEach((sheet, at) => {
    document.addPage({ size: [sheet.paper.width * point, sheet.paper.height * point], margin: 0 })
    const title = oneLine(`${sheet.number} ${sheet.title}`)
    if (part?.name === sheet.part) part.entry.addItem(`${title}, sheet ${++sheetOfPart}`)
    else {
      part = { name: sheet.part, entry: under.addItem(title) }
      sheetOfPart = 1
    }
    const pen: Pen = { width: 0, cap: undefined }
    for (const stroke of sheet.strokes) draw(document, stroke, { left: 0, bottom: sheet.paper.height }, pen)
    then?.(sheet, at)
  })
}
