/**
 * The tapped end of the cutter bar, cut through its axis and the axis of the cross hole. View x is z, view y is -y.
 *
 *     torn     hole          end
 *      (──────┐    ┌─────────┐.
 *      )//////│    │/////////┌┘     minor diameter thick, major thin,
 *      ( ─ ─ ─│─ ─ (═════════│─     hatch runs to the thick line
 *      )//////│    │/////////└┐
 *      (──────┘    └─────────┘'
 */
import type { Design } from '../src/design.ts'
import { either } from '../src/dimensions/makeable.ts'
import type { CutterBar } from '../src/dimensions/types.ts'
import type { Mark, View } from '../src/drawing/view.ts'
import { mirrored, type Outline, type Point, polygon } from '../src/solid/outline.ts'
import { revolve, type Solid } from '../src/solid/solid.ts'
import { central, degrees, drill, plusMinus, round, sized, small } from './wording.ts'

/** How far the hole's centre may lie from where it should, mm. Source: judgement. */
export const endTolerance = (design: Design): number => either(design.spec.units, 0.1, 0.004)

/** A cone of 90° about z that leaves a mouth `mouth` wide at z = 0 and narrows to `least`, to be cut away. */
export const countersunk = (mouth: number, least: number): Solid =>
  revolve(
    polygon([
      [0, least / 2 - mouth / 2],
      [least / 2, least / 2 - mouth / 2],
      [mouth / 2 + 1, 1],
      [0, 1],
    ]),
  )

/** Where the section's torn edge stands. */
export const tornAt = (bar: CutterBar): number =>
  -Math.min(bar.holeToEnd + bar.crossHole.nominal / 2 + bar.diameter.nominal / 2, bar.bodyLength)

/** Metal left of the hole, and right of it above the thread, both counter-clockwise. */
export const cutMetal = (
  bar: CutterBar,
): { readonly left: Outline; readonly above: Outline; readonly below: Outline } => {
  const body = bar.diameter.nominal / 2
  const minor = bar.screw.tapDrill.diameter / 2
  const sink = bar.countersink / 2
  const { mouthChamfer: mouth, endChamfer } = bar
  const [near, far] = [-bar.holeToEnd + bar.crossHole.nominal / 2, -bar.holeToEnd - bar.crossHole.nominal / 2]
  const above = polygon([
    [near, minor],
    [minor - sink, minor],
    [0, sink],
    [0, body - endChamfer],
    [-endChamfer, body],
    [near + mouth, body],
    [near, body - mouth],
  ])
  const left = polygon([
    [tornAt(bar), -body],
    [far - mouth, -body],
    [far, mouth - body],
    [far, body - mouth],
    [far - mouth, body],
    [tornAt(bar), body],
  ])
  return { left, above, below: mirrored(above, 'y = 0') }
}

const visible = (from: Point, to: Point): Mark => ({ mark: 'line', kind: 'visible', from, to })

/** Open line through points, visible: curves in which cylinders meet. */
export const curve = (points: readonly Point[]): Mark => ({
  mark: 'outline',
  kind: 'visible',
  outline: polygon(points),
  closed: false,
})

export const spread = (from: number, to: number, count = 24): readonly number[] =>
  Array.from({ length: count + 1 }, (_, index) => from + ((to - from) * index) / count)

/**
 * What is to come out 25 mm on paper: the body, or less of it where the two lines of its thread would run together (0.75 mm apart at least).
 */
export const sizeToShow = ({ diameter, screw }: CutterBar): number =>
  Math.min(diameter.nominal, ((screw.major - screw.tapDrill.diameter) / 2) * (25 / 0.75))

/** Edges behind the cut: where the cross hole leaves the bar, and where the tap drill breaks into the cross hole. */
const edgesBehind = (bar: CutterBar): readonly Mark[] => {
  const body = bar.diameter.nominal / 2
  const hole = bar.crossHole.nominal / 2
  const minor = bar.screw.tapDrill.diameter / 2
  const centre = -bar.holeToEnd
  const mouth = (side: number) =>
    curve(
      spread(-hole, hole).map(
        (x): Point => [
          centre + x,
          // y² = body² - hole² + x²: both cylinders hold; the mouths' chamfer takes the rim off.
          side * Math.min(Math.sqrt(body ** 2 - hole ** 2 + x ** 2), body - bar.mouthChamfer),
        ],
      ),
    )
  const drilled = curve(
    spread(-minor, minor).map((y): Point => [centre + Math.sqrt(hole ** 2 - minor ** 2 + y ** 2), y]),
  )
  return [mouth(1), mouth(-1), drilled]
}

export const barSection = (design: Design, bar: CutterBar): View => {
  const body = bar.diameter.nominal / 2
  const hole = bar.crossHole.nominal / 2
  const { screw, holeToEnd, mouthChamfer: mouth } = bar
  const [minor, major, sink] = [screw.tapDrill.diameter / 2, screw.major / 2, bar.countersink / 2]
  const { left, above, below } = cutMetal(bar)
  const torn = tornAt(bar)
  const through = design.spec.drafting.convention === 'asme' ? 'thru' : 'through'
  const wall = hole - holeToEnd
  const marks: Mark[] = [
    { mark: 'outline', kind: 'visible', outline: left, closed: false },
    { mark: 'line', kind: 'break', from: [torn, -body], to: [torn, body] },
    { mark: 'outline', kind: 'visible', outline: above },
    { mark: 'outline', kind: 'visible', outline: below },
    { mark: 'hatch', outlines: [left, above, below] },
    ...edgesBehind(bar),
    visible([minor - sink, -minor], [minor - sink, minor]),
    visible([0, -sink], [0, sink]),
    ...[1, -1].map(
      (side): Mark => ({
        mark: 'line',
        kind: 'thin',
        from: [wall, side * major],
        to: [Math.min(0, major - sink), side * major],
      }),
    ),
    { mark: 'line', kind: 'centre', from: [torn, 0], to: [0, 0] },
    { mark: 'line', kind: 'centre', from: [-holeToEnd, -body], to: [-holeToEnd, body] },
  ]
  const threadAt = (wall + minor - sink) / 2
  return {
    name: 'A-A',
    title: 'A – A',
    place: { is: 'section', from: 'above', least: sizeToShow(bar), aligned: false },
    marks,
    metal: [{ x1: torn, y1: -body, x2: 0, y2: body }],
    callouts: [
      {
        callout: 'linear',
        of: 'crossHole',
        worth: sized(bar.crossHole, { prefix: 'Ø' }),
        axis: 'x',
        a: -holeToEnd - hole,
        b: -holeToEnd + hole,
        fromA: mouth - body,
        fromB: mouth - body,
        side: 'bottom',
        hangs: [central(design, 'crossHoleCentral', either(design.spec.units, 0.1, 0.004))],
      },
      {
        callout: 'linear',
        of: 'holeToEnd',
        worth: plusMinus(holeToEnd, endTolerance(design)),
        axis: 'x',
        a: -holeToEnd,
        b: 0,
        fromA: body,
        fromB: body - bar.endChamfer,
        side: 'top',
      },
      {
        callout: 'leader',
        of: 'screw',
        also: ['screw.tapDrill'],
        tips: [1, -1].map((side) => ({ at: [threadAt, side * minor], out: [1, 0.5 * side] })),
        lines: [
          [`${screw.callout} ${through} into `, round(bar.crossHole.nominal)],
          ['drill ', ...drill(screw.tapDrill.name, screw.tapDrill.diameter)],
        ],
      },
      {
        callout: 'leader',
        of: 'countersink',
        tips: [1, -1].map((side) => ({ at: [0, side * sink], out: [1, side] })),
        lines: [[small(bar.countersink, { prefix: 'Ø' }), ' × ', degrees(90)]],
      },
      {
        callout: 'leader',
        of: 'mouthChamfer',
        tips: [1, -1].flatMap((side) =>
          [1, -1].map((end) => ({
            at: [-holeToEnd + end * (hole + mouth / 2), side * (body - mouth / 2)] as const,
            out: [end, side] as const,
          })),
        ),
        lines: [[small(mouth), ' × ', degrees(45), ' both mouths']],
        small: true,
      },
    ],
  }
}
