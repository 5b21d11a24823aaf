/** The files that the job card is written in. */
import { cardOf } from '../card/card-of.ts'
import type { Card } from '../card/document.ts'
import type { Design } from '../design.ts'
import type { Sheet } from '../drawing/sheet.ts'
import type { CardFaces } from './card-style.ts'
import type { Fonts } from './fonts.ts'

/** The card's own face, in two weights of either kind of file: src/writers/faces. */
export interface Faces {
  /** TrueType. */
  readonly print: { readonly regular: Uint8Array; readonly bold: Uint8Array }
  /** woff2. */
  readonly web: CardFaces
}

interface CardTools {
  readonly fonts: () => Promise<Fonts>
  readonly faces: () => Promise<Faces>
}

/** Undefined for a broken job whose sizes make no sense together: what cannot be drawn has no card either. */
const cardFor = (design: Design): Card | undefined => {
  try {
    return cardOf(design)
  } catch (error) {
    if (design.verdict === 'fail') return undefined
    throw error
  }
}

/** `card.html`; `card.pdf`, and `packet.pdf` with every sheet behind the card. `sheets` are those of the whole set. */
export const cardFiles = async (
  design: Design,
  sheets: readonly Sheet[],
  asked: { readonly html: boolean; readonly pdf: boolean },
  tools: CardTools,
): Promise<readonly { readonly name: string; readonly bytes: Uint8Array }[]> => {
  const card = asked.html || asked.pdf ? cardFor(design) : undefined
  if (!card) return []
  const files: { readonly name: string; readonly bytes: Uint8Array }[] = []
  const faces = await tools.faces()
  if (asked.html) {
    const { cardHtml } = await import('./card-html.ts')
    files.push({ name: 'card.html', bytes: new TextEncoder().encode(cardHtml(card, faces.web)) })
  }
  if (asked.pdf) {
    const { cardPdf, packet } = await import('./card-pdf.ts')
    const { paper } = design.spec.drafting
    const fonts = { ...faces.print, sheet: await tools.fonts() }
    files.push(
      { name: 'card.pdf', bytes: await cardPdf(card, paper, fonts) },
      { name: 'packet.pdf', bytes: await packet(card, sheets, paper, fonts) },
    )
  }
  return files
}
