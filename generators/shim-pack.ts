/**
 * Shims that lift the push broach from pass to pass: flat T's, alike but for their thickness.
 *
 *        head                 y
 *      ┌──────┐               |
 *      │      └───────────────────────────┐
 *      │  ( ) :          bar              │ -- x
 *      │      ┌───────────────────────────┘
 *      └──────┘
 *             | shoulder x = 0: rests on the collar's face, the bar lies on the slot's floor
 *
 * Thickness along z. The contour that is cut from sheet is the one that is drawn and extruded.
 */
import type { Design } from '../src/design.ts'
import { either, roundDown, roundTo, stepsOf } from '../src/dimensions/makeable.ts'
import type { GuideBushing } from '../src/dimensions/types.ts'
import type { Profile } from '../src/drawing/profile.ts'
import type { Callout, Drawing, Notes, View, Wording } from '../src/drawing/view.ts'
import { circle, type Corner, moved, type Outline, reversed } from '../src/solid/outline.ts'
import { extrude, join, type Solid } from '../src/solid/solid.ts'
import { pressing } from './cautions.ts'
import type { Part } from './part.ts'
import { bought, degrees, fine, jobLine, most, plain, plusMinus, round, small, sized, withDecimals } from './wording.ts'

const bushingOf = (design: Design): GuideBushing => {
  if (!design.bushing) throw new Error('this design has no guide bushing')
  return design.bushing
}

/** Broken corners at the bar's end, mm, in round figures. Source: judgement. */
export const endChamfer = (design: Design): number => {
  const step = either(design.spec.units, 0.1, 0.01)
  const fits = Math.max(step, roundDown(bushingOf(design).shim.width / 4, step))
  return Math.min(either(design.spec.units, 1, 0.04), fits)
}

/** Thickness is ground to this, mm either way. Source: judgement. */
const thicknessTolerance = (design: Design): number => either(design.spec.units, 0.01, 0.0005)

/** The flat T, counter-clockwise, and its hole, clockwise. */
export const contours = (design: Design): readonly [outside: Outline, hole: Outline] => {
  const { width, length, headWidth, headLength, hole, corner } = bushingOf(design).shim
  const chamfer = endChamfer(design)
  const [bar, head] = [width / 2, headWidth / 2]
  const inside = -Math.tan(Math.PI / 8)
  const below: readonly Corner[] = [
    { at: [-headLength, -head] },
    { at: [0, -head] },
    { at: [0, -bar - corner], bulge: inside },
    { at: [corner, -bar] },
    { at: [length - chamfer, -bar] },
    { at: [length, chamfer - bar] },
  ]
  const above: readonly Corner[] = [
    { at: [length, bar - chamfer] },
    { at: [length - chamfer, bar] },
    { at: [corner, bar], bulge: inside },
    { at: [0, bar + corner] },
    { at: [0, head] },
    { at: [-headLength, head] },
  ]
  return [[...below, ...above], reversed(circle(hole, [-headLength / 2, 0]))]
}

/** Every shim of the set, laid side by side. */
const solid = (design: Design): Solid => {
  const { shims, shim } = bushingOf(design)
  const [outside, hole] = contours(design)
  const pitch = shim.headWidth + 3
  return join(
    ...shims.map((thickness, index) =>
      extrude(moved(outside, [0, index * pitch]), 0, thickness, [moved(hole, [0, index * pitch])]),
    ),
  )
}

/** Thicknesses, each once, with how many there are of it. */
const thicknesses = (shims: readonly number[]): readonly { readonly thickness: number; readonly count: number }[] => {
  const each: { thickness: number; count: number }[] = []
  for (const thickness of shims) {
    const same = each.find((one) => Math.abs(one.thickness - thickness) < 1e-6)
    if (same) same.count += 1
    else each.push({ thickness, count: 1 })
  }
  return each
}

/** Limits of the width: a sliding fit in the slot, never over. Source: judgement. */
const widthSize = (design: Design) => {
  const { width } = bushingOf(design).shim
  return { nominal: width, lower: width - either(design.spec.units, 0.1, 0.004), upper: width }
}

const plan = (design: Design): View => {
  const { shim, shims } = bushingOf(design)
  const [outside, hole] = contours(design)
  const chamfer = endChamfer(design)
  const [bar, head] = [shim.width / 2, shim.headWidth / 2]
  const inner = shim.corner * (1 - Math.SQRT1_2)
  const callouts: Callout[] = [
    {
      callout: 'linear',
      of: 'shim.width',
      worth: sized(widthSize(design)),
      axis: 'y',
      a: -bar,
      b: bar,
      fromA: shim.length - chamfer,
      fromB: shim.length - chamfer,
      side: 'right',
    },
    {
      callout: 'linear',
      of: 'shim.headWidth',
      worth: plain(shim.headWidth),
      axis: 'y',
      a: -head,
      b: head,
      fromA: -shim.headLength,
      fromB: -shim.headLength,
      side: 'left',
    },
    {
      callout: 'linear',
      of: 'shim.length',
      worth: plain(shim.length),
      axis: 'x',
      a: 0,
      b: shim.length,
      fromA: -head,
      fromB: chamfer - bar,
      side: 'bottom',
    },
    {
      callout: 'linear',
      of: 'shim.headLength',
      worth: plain(shim.headLength),
      axis: 'x',
      a: -shim.headLength,
      b: 0,
      fromA: -head,
      fromB: -head,
      side: 'bottom',
      chain: 'shim.length',
    },
    {
      callout: 'leader',
      of: 'shims',
      tips: [0.35, 0.5, 0.65].flatMap((part) =>
        [1, -1].map((side) => ({ at: [part * shim.length, side * bar] as const, out: [0.4, side] as const })),
      ),
      lines: thicknesses(shims).map(({ thickness, count }) => [
        plusMinus(thickness, thicknessTolerance(design), { prefix: 't ' }),
        `, ${count} off`,
      ]),
    },
    {
      callout: 'leader',
      of: 'shim.corner',
      tips: [1, -1].map((side) => ({ at: [inner, side * (bar + inner)], out: [1, side] })),
      lines: [[most(shim.corner, { prefix: 'R', suffix: 'both' })]],
    },
    {
      callout: 'leader',
      of: 'shim.hole',
      tips: [45, 135, -45, -135].map((angle) => {
        const out = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)] as const
        return { at: [(shim.hole / 2) * out[0] - shim.headLength / 2, (shim.hole / 2) * out[1]], out }
      }),
      lines: [[round(shim.hole), " anywhere on the head's middle"], ['to hang it; stamp the thickness beside it']],
      small: true,
    },
    {
      callout: 'leader',
      of: 'endChamfer',
      tips: [1, -1].map((side) => ({ at: [shim.length - chamfer / 2, side * (bar - chamfer / 2)], out: [1, side] })),
      lines: [[small(chamfer), ' × ', degrees(45), ' both']],
      small: true,
    },
  ]
  return {
    name: 'plan',
    place: { is: 'front' },
    marks: [
      { mark: 'outline', kind: 'visible', outline: outside },
      { mark: 'outline', kind: 'visible', outline: hole },
      { mark: 'centreMark', centre: [-shim.headLength / 2, 0], radius: shim.hole / 2 },
      { mark: 'line', kind: 'centre', from: [shim.corner, 0], to: [shim.length, 0] },
    ],
    metal: [
      { x1: -shim.headLength, y1: -head, x2: 0, y2: head },
      { x1: 0, y1: -bar, x2: shim.length, y2: bar },
    ],
    callouts,
  }
}

const leavesOf = (leaves: readonly number[]): Wording =>
  leaves.flatMap((leaf, index) => (index === 0 ? [fine(leaf)] : [' + ', fine(leaf)]))

const notes = (design: Design): readonly Notes[] => {
  const { shims, packs, passes } = bushingOf(design)
  const last = shims.length
  return [
    {
      heading: 'ORDER OF WORK',
      numbered: true,
      lines: [
        ['Saw, file or cut the contour: the profile file is 1:1 for cutting.'],
        ['Drill the hole.'],
        [
          'Grind or lap to thickness last, when the back wall is measured. Flat within ',
          fine(either(design.spec.units, 0.01, 0.0005)),
          ', both faces.',
        ],
        ['Stamp the thickness on the head. Break the edges: it slides in the slot.'],
      ],
    },
    {
      heading: 'THE LAST SHIM, AS MEASURED',
      lines: [
        ['across, wanted ', withDecimals(design.section.across, 2, 4)],
        ['− back wall, miked ________'],
        ['− last tooth, miked ________'],
        ...(last > 1 ? [['− shims already in ________']] : []),
        ['= last shim ________'],
      ],
    },
    {
      heading: 'IN WHICH PASS',
      lines: passes.map(({ shims: count }, index) => [
        `Pass ${index + 1}: `,
        ...(count === 0
          ? ['no shim']
          : shims
              .slice(0, count)
              .flatMap((thickness, at) => (at === 0 ? [fine(thickness)] : [' + ', fine(thickness)]))),
      ]),
    },
    ...(packs.some(({ leaves }) => leaves.length > 0)
      ? [
          {
            heading: 'OR MADE UP FROM STOCK ON HAND',
            lines: packs.map(
              ({ leaves, short }, index): Wording => [
                'Shim ',
                `${index + 1}: `,
                ...leavesOf(leaves),
                ...(leaves.length > 1 ? [' makes ', fine((shims[index] ?? 0) - short)] : []),
                ...(Math.abs(short) > 1e-6
                  ? [', ', fine(Math.abs(short)), short > 0 ? ' short.' : ' over: rub it down.']
                  : ['.']),
              ],
            ),
          },
        ]
      : []),
    pressing,
  ]
}

const drawing = (design: Design): Drawing => {
  const bushing = bushingOf(design)
  const { shim, shims } = bushing
  const tolerance = thicknessTolerance(design)
  const spare = either(design.spec.units, 2, 0.0625)
  return {
    part: 'shim-pack',
    title: shims.length === 1 ? 'Shim' : 'Shims',
    number: '11',
    views: [plan(design)],
    notes: notes(design),
    asMade: {
      heading: 'AS MADE: measure and write down',
      rows: [
        ...thicknesses(shims)
          .slice(0, 2)
          .map(({ thickness, count }) => ({
            what: `Thickness, ${count} off`,
            limits: [plusMinus(roundTo(thickness, stepsOf(design.spec.units).shim), tolerance)],
          })),
        { what: 'Bar width', limits: [sized(widthSize(design))] },
        { what: 'Back wall, as made', limits: [sized(bushing.backWall)] },
        { what: 'Last tooth, as measured', limits: ['write down'] },
      ],
    },
    block: {
      material: 'Gauge plate, shim or feeler stock',
      stock: [
        bought(Math.ceil(shim.headWidth / spare) * spare),
        ' x ',
        bought(Math.ceil((shim.length + shim.headLength) / spare) * spare),
        ' x next thickness up',
      ],
      heat: 'none',
      finish: 'both faces ground or as rolled',
      surface: design.spec.units === 'mm' ? 'Ra 0.8, both faces' : '32 µin, both faces',
      edges: design.spec.units === 'mm' ? 'broken 0.1' : 'BREAK .004',
      job: jobLine(design),
    },
  }
}

const profile = (design: Design): Profile => ({ name: 'shim-pack', contours: contours(design) })

export const shimPack: Part = {
  name: 'shim-pack',
  title: 'Shims',
  of: 'press',
  belongs: (design) => (design.bushing?.shims.length ?? 0) > 0,
  solid,
  drawing,
  profile,
}
