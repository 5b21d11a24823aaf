/** What printed gauges and aids have in common: words on their sheets, letters on their faces, edges that stay clear of the bed. */
import type { Design } from '../src/design.ts'
import type { Drawing, Notes, Wording } from '../src/drawing/view.ts'
import type { Point } from '../src/solid/outline.ts'
import { hull, letters, place, type Point3, type Solid } from '../src/solid/solid.ts'
import { byCaliper, fine, jobLine } from './wording.ts'

/** How far letters stand up, mm. */
export const proud = 0.6

const figureOf = (design: Design, mm: number): string =>
  design.spec.units === 'mm' ? `${mm}` : (mm / 25.4).toFixed(3).replace(/^0/, '')

/** Heading of what a print is not good for: `GO-CHECK ±0.1, NOT FOR ACCEPTANCE`. */
export const goCheck = (design: Design, tolerance: number): string =>
  `GO-CHECK ±${figureOf(design, tolerance)}, NOT FOR ACCEPTANCE`

/** How the model differs from what is drawn, for this printer. */
export const offsetWords = ({ spec }: Design, offset: number, what = 'The model is'): Wording =>
  Math.abs(offset) < 1e-9
    ? [
        spec.shop.printer.measured
          ? 'This printer prints it to size: the model is the size drawn.'
          : 'No printer was measured: the model is the size drawn. Put the offset of the first print in the shop file.',
      ]
    : [
        `${what} `,
        fine(Math.abs(offset)),
        offset > 0 ? ' smaller' : ' larger',
        ' all round than drawn, for this printer.',
      ]

/** Title block of a print. */
export const printedBlock = (design: Design, tolerance: number): Drawing['block'] => ({
  material: 'printed plastic',
  stock: ['from the model file, 1:1 in mm'],
  heat: 'none',
  finish: 'as printed, filed to size',
  limits: `±${figureOf(design, tolerance)}`,
  surface: 'as printed',
  edges: 'as drawn',
  job: jobLine(design),
})

/** Limits of a printed size for the table. */
export const asPrinted = (design: Design, size: number, tolerance: number): Wording =>
  byCaliper(design, size - tolerance, size + tolerance)

/** How it is printed, measured and tried; `stands` says which way up, `wrong` what to do about a size that is out. */
export const printingOrder = (
  stands: string,
  after: readonly Wording[] = [],
  wrong = 'Over size: file. Under: correct the offset, print again.',
): Notes => ({
  heading: 'ORDER OF WORK',
  numbered: true,
  lines: [[stands], ['Let it cool. Measure.'], [wrong], ...after],
})

/** A line of raised capitals, no wider than `room`, no higher than `most`, its middle at `at`, on a face at z = `top`. */
export const raised = (text: string, at: Point, room: number, most: number, top: number): Solid => {
  const height = Math.min(most, room / (0.95 * Math.max(1, text.length)))
  return letters(text, { height, stroke: Math.max(0.16 * height, 0.4), at, from: top - 0.2, to: top + proud })
}

/** Raised capitals one by one round the z axis, upright seen from outside, middle of the line at `towards` degrees. */
export const raisedRound = (text: string, radius: number, most: number, towards: number, top: number): Solid[] => {
  const signs = [...text]
  const height = Math.min(most, (2 * Math.PI * radius * 0.8) / (1.05 * signs.length))
  const step = (1.05 * height * 180) / (Math.PI * radius)
  return signs.flatMap((sign, index) =>
    sign === ' '
      ? []
      : [
          place(
            letters(sign, {
              height,
              stroke: Math.max(0.16 * height, 0.4),
              at: [0, radius],
              from: top - 0.2,
              to: top + proud,
            }),
            { turn: [0, 0, towards - 90 + ((signs.length - 1) / 2 - index) * step] },
          ),
        ],
  )
}

/** A convex contour, counter-clockwise, with every edge moved inwards. */
const inset = (points: readonly Point[], by: number): readonly Point[] => {
  if (by <= 0) return points
  const lines = points.map((from, index) => {
    const to = points[(index + 1) % points.length] ?? from
    const long = Math.hypot(to[0] - from[0], to[1] - from[1])
    const along: Point = [(to[0] - from[0]) / long, (to[1] - from[1]) / long]
    return { from: [from[0] - by * along[1], from[1] + by * along[0]] as Point, along }
  })
  return lines.map(({ from, along }, index): Point => {
    const before = lines.at(index - 1) ?? { from, along }
    const turn = before.along[0] * along[1] - before.along[1] * along[0]
    const far = ((from[0] - before.from[0]) * along[1] - (from[1] - before.from[1]) * along[0]) / turn
    return [before.from[0] + far * before.along[0], before.from[1] + far * before.along[1]]
  })
}

/** A convex contour stood up from z = 0 to `height`, its edges broken by `low` at the bed and by `high` on top, × 45°. */
export const standing = (points: readonly Point[], height: number, low: number, high = 0): Solid =>
  hull(
    [
      { z: 0, less: low },
      ...(low > 0 ? [{ z: low, less: 0 }] : []),
      ...(high > 0 ? [{ z: height - high, less: 0 }] : []),
      { z: height, less: high },
    ].flatMap(({ z, less }) => inset(points, less).map(([x, y]): Point3 => [x, y, z])),
  )
