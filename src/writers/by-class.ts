import type { Sheet, Stroke, StrokeClass } from '../drawing/sheet.ts'

/** The order of painting: what lies under first, the furniture last. */
const order: Readonly<Record<StrokeClass, number>> = {
  hatch: 0,
  ghost: 1,
  hidden: 2,
  axis: 3,
  edge: 4,
  torn: 5,
  size: 6,
  note: 7,
  sheet: 8,
  stop: 9,
}

interface Classed {
  readonly class: StrokeClass
  /** The width that most of its lines have, mm; the writers state it once and only deviations from it again. */
  readonly width: number
  readonly strokes: readonly Stroke[]
}

/** A sheet's strokes by class, in the order of painting, each class that occurs once; within a class in the sheet's order. */
export function byClass(strokes: Sheet['strokes']): readonly Classed[] {
  const found = new Map<StrokeClass, Stroke[]>()
  for (const stroke of strokes) {
    const known = found.get(stroke.class)
    if (known) known.push(stroke)
    else found.set(stroke.class, [stroke])
  }
  return [...found]
    .toSorted(([a], [b]) => order[a] - order[b])
    .map(([name, members]) => ({ class: name, width: usualWidth(members), strokes: members }))
}

/** Lines and arcs decide; where a class has none, its texts and fills. Of equally frequent widths the first drawn wins. */
function usualWidth(strokes: readonly Stroke[]): number {
  const drawn = strokes.filter((stroke) => stroke.stroke === 'line' || stroke.stroke === 'arc')
  const counts = new Map<number, number>()
  for (const { width } of drawn.length > 0 ? drawn : strokes) counts.set(width, (counts.get(width) ?? 0) + 1)
  let usual = 0.25
  let most = 0
  for (const [width, count] of counts)
    if (count > most) {
      usual = width
      most = count
    }
  return usual
}
