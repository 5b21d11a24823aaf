import { capHeight } from '../drawing/letters.ts'
import type { Sheet, Stroke } from '../drawing/sheet.ts'
import { byClass } from './by-class.ts'
import { decimal, oneLine, onCircle, sweep } from './marks.ts'

const mm = (value: number): string => decimal(value, 3)
/** SVG's y runs down: `y` measured from the paper's lower edge becomes measured from its upper one. */
type Down = (y: number) => number

/**
 * A sheet as SVG: width and height in mm, user units of 1 mm, one group a class, in it one group a callout (`data-of`), presentation
 * attributes only, so that it keeps its looks under a policy that forbids style. Black is `currentColor`: a page may set it. Texts carry
 * their measured length, so that a viewer without our font fills the same box.
 */
export function svg(sheet: Sheet): string {
  const { width, height, name } = sheet.paper
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${mm(width)}mm" height="${mm(height)}mm" viewBox="0 0 ${mm(width)} ${mm(height)}" role="img" color="#000" font-family="DejaVu Sans Condensed, DejaVu Sans, Arial Narrow, sans-serif" xml:space="preserve">`,
    `<title>${escaped(`${sheet.number} ${sheet.title}`)}</title>`,
    `<desc>${escaped(`Drawing sheet ${sheet.number} of ${sheet.part}, ${name}, ${mm(width)} x ${mm(height)} mm at 100 %.`)}</desc>`,
    `<rect class="paper" x="0" y="0" width="${mm(width)}" height="${mm(height)}" fill="#fff"/>`,
    ...groupsOf(sheet.strokes, height),
    '</svg>\n',
  ].join('\n')
}

/** Strokes in groups, one a class, in it one a callout, on paper `height` mm high. Black is `currentColor`. */
export function groupsOf(strokes: readonly Stroke[], height: number): readonly string[] {
  const down: Down = (y) => height - y
  return byClass(strokes).map(
    (group) =>
      `<g class="${group.class}" stroke="currentColor" fill="none" stroke-width="${mm(group.width)}" stroke-linecap="round">\n${callouts(
        group.strokes,
      )
        .map(([of, own]) => {
          const drawn = own.map((stroke) => element(stroke, down, group.width)).join('\n')
          return of === undefined ? drawn : `<g data-of="${escaped(of)}">\n${drawn}\n</g>`
        })
        .join('\n')}\n</g>`,
  )
}

/** Strokes of no callout first, then each callout's together, by first appearance. */
function callouts(strokes: readonly Stroke[]): readonly (readonly [string | undefined, readonly Stroke[]])[] {
  const plain = strokes.filter((stroke) => stroke.of === undefined)
  const found = new Map<string, Stroke[]>()
  for (const stroke of strokes) {
    if (stroke.of === undefined) continue
    const known = found.get(stroke.of)
    if (known) known.push(stroke)
    else found.set(stroke.of, [stroke])
  }
  return plain.length > 0 ? [[undefined, plain], ...found] : [...found]
}

function element(stroke: Stroke, down: Down, usual: number): string {
  switch (stroke.stroke) {
    case 'line':
      return `<line x1="${mm(stroke.from[0])}" y1="${mm(down(stroke.from[1]))}" x2="${mm(stroke.to[0])}" y2="${mm(down(stroke.to[1]))}"${pen(stroke, usual)}/>`
    case 'arc': {
      const turn = sweep(stroke.from, stroke.to)
      const [x, y] = stroke.centre
      const r = mm(stroke.radius)
      if (turn === 360) return `<circle cx="${mm(x)}" cy="${mm(down(y))}" r="${r}"${pen(stroke, usual)}/>`
      const [x1, y1] = onCircle(stroke.centre, stroke.radius, stroke.from)
      const [x2, y2] = onCircle(stroke.centre, stroke.radius, stroke.to)
      return `<path d="M${mm(x1)} ${mm(down(y1))}A${r} ${r} 0 ${turn > 180 ? 1 : 0} 0 ${mm(x2)} ${mm(down(y2))}"${pen(stroke, usual)}/>`
    }
    case 'text': {
      const x = mm(stroke.at[0])
      const y = mm(down(stroke.at[1]))
      const turn = stroke.turn === 90 ? ` transform="rotate(-90 ${x} ${y})"` : ''
      const weight = stroke.bold ? ' font-weight="bold"' : ''
      return `<text x="${x}" y="${y}"${turn}${weight} font-size="${mm(stroke.height / capHeight)}" textLength="${mm(stroke.length)}" lengthAdjust="spacingAndGlyphs" fill="currentColor" stroke="none">${escaped(stroke.text)}</text>`
    }
    case 'fill':
      return `<polygon points="${stroke.points.map(([x, y]) => `${mm(x)},${mm(down(y))}`).join(' ')}" fill="currentColor" stroke="none"/>`
  }
}

/** What a line has of its own: a width other than the group's, and its dashes, cut square so that they keep their length. */
function pen(stroke: Extract<Stroke, { dashes?: readonly number[] }>, usual: number): string {
  const width = stroke.width === usual ? '' : ` stroke-width="${mm(stroke.width)}"`
  const dashes = stroke.dashes?.length
    ? ` stroke-dasharray="${stroke.dashes.map(mm).join(' ')}" stroke-linecap="butt"`
    : ''
  return width + dashes
}

/** Text as XML holds it: no markup, no character that XML forbids. */
export const escaped = (text: string): string =>
  oneLine(text).replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')
