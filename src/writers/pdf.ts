import type { Sheet } from '../drawing/sheet.ts'
import type { Fonts } from './fonts.ts'
import { oneLine } from './marks.ts'
import { type Outline, type Page, PdfDocument, point } from './pdf-document.ts'
import { draw, type Pen } from './pdf-strokes.ts'

/** Sheets as one PDF, a sheet a page, true to scale. One outline entry a part, its further sheets under it. */
export async function pdf(sheets: readonly Sheet[], fonts: Fonts): Promise<Uint8Array> {
  const [first] = sheets
  if (!first) throw new RangeError('a document without a sheet')
  const faces = { upright: fonts.regular, bold: fonts.bold }
  const document = new PdfDocument(`${first.number} ${first.title}`, faces)
  drawSheets(document, document.outline, sheets)
  return document.end()
}

/**
 * Draws sheets on pages of their own size, the faces `upright` and `bold` registered.
 * @param under Where their outline entries hang.
 * @param then Called when a sheet is drawn and its page still open, with its index.
 */
export function drawSheets(
  document: PdfDocument,
  under: Outline,
  sheets: readonly Sheet[],
  then?: (page: Page, sheet: Sheet, at: number) => void,
): void {
  let part: { readonly name: string; readonly entry: Outline } | undefined
  let sheetOfPart = 0
  sheets.forEach((sheet, at) => {
    const page = document.page(sheet.paper.width * point, sheet.paper.height * point)
    const title = oneLine(`${sheet.number} ${sheet.title}`)
    if (part?.name === sheet.part) part.entry.add(`${title}, sheet ${++sheetOfPart}`)
    else {
      part = { name: sheet.part, entry: under.add(title) }
      sheetOfPart = 1
    }
    const pen: Pen = { width: 0, cap: undefined }
    for (const stroke of sheet.strokes) draw(document, page, stroke, { left: 0, bottom: sheet.paper.height }, pen)
    then?.(page, sheet, at)
  })
}
