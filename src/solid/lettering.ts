import jscad from '@jscad/modeling'
import type { Outline, Point } from './outline.ts'
import type { Solid } from './solid.ts'

type Stroke = readonly Point[]

/** Height of the capitals of JSCAD's stroke font when it is asked for `height: 10`. */
const capitals = 15
/** The font has the printable ASCII signs alone; these of the trade are one of them and a stroke over it (in the font's own measure). */
const made: Readonly<Record<string, { readonly from: string; readonly over?: Stroke }>> = {
  '×': { from: 'x' },
  '–': { from: '-' },
  Ø: {
    from: 'O',
    over: [
      [2.857, 0],
      [12.857, 15],
    ],
  },
  '±': {
    from: '+',
    over: [
      [2.857, 0],
      [15.714, 0],
    ],
  },
} // prettier-ignore

/** One line of text in strokes of the font's measure, from x = 0. */
const strokesOf = (text: string): Stroke[] => {
  let x = 0
  return [...text].flatMap((sign) => {
    const { from, over } = made[sign] ?? { from: sign }
    if (from < ' ' || from > '~') throw new Error(`the lettering has no sign "${sign}" (in "${text}")`)
    const { segments, width } = jscad.text.vectorChar({ height: 10 }, from)
    const left = x
    x += width
    const drawn: Stroke[] = [
      ...segments.map((stroke) => stroke.map(([sx, sy]): Point => [sx, sy])),
      ...(over ? [over] : []),
    ]
    return drawn.map((stroke) => stroke.map(([sx, sy]): Point => [sx + left, sy]))
  })
}

/** What a round point of this width leaves between two points: straight sides, round ends, counter-clockwise. */
const swept = (from: Point, to: Point, width: number): Outline => {
  const reach = Math.hypot(to[0] - from[0], to[1] - from[1])
  const [x, y] = [((to[0] - from[0]) / reach) * (width / 2), ((to[1] - from[1]) / reach) * (width / 2)]
  return [
    { at: [from[0] + y, from[1] - x] },
    { at: [to[0] + y, to[1] - x], bulge: 1 },
    { at: [to[0] - y, to[1] + x] },
    { at: [from[0] - y, from[1] + x], bulge: 1 },
  ]
}

/** Lettering as outlines that overlap one another, one for every straight stroke: capitals `height` high over all. */
export const lettering = ({ text, height, stroke, at }: Extract<Solid, { make: 'letters' }>): Outline[] => {
  const strokes = strokesOf(text)
  const xs = strokes.flat().map(([x]) => x)
  const middle = (Math.min(...xs) + Math.max(...xs)) / 2
  const scale = (height - stroke) / capitals
  const placed = ([x, y]: Point): Point => [at[0] + (x - middle) * scale, at[1] + (y - capitals / 2) * scale]
  return strokes.flatMap((points) =>
    points.slice(1).map((point, index) => swept(placed(points[index] ?? point), placed(point), stroke)),
  )
}
