/**
 * Block with a step that sets the projection of the bit, lying along the bar. Form and names: src/dimensions/setting-step.ts.
 *
 * Datum: the foot y = 0, the step's inner corner x = 0. Thickness along z; it is printed lying down, so that the step lies in the bed plane.
 */
import type { Design } from '../src/design.ts'
import type { SettingStep } from '../src/dimensions/setting-step.ts'
import type { Profile } from '../src/drawing/profile.ts'
import type { Callout, Drawing, Notes, View } from '../src/drawing/view.ts'
import type { Outline } from '../src/solid/outline.ts'
import { bore, cut, join, type Solid } from '../src/solid/solid.ts'
import { type Part, type Print, sideBySide } from './part.ts'
import { goCheck, printedBlock, printingOrder, raised, standing } from './printed.ts'
import { coarse, degrees, fine, plain, plusMinus, small } from './wording.ts'

const stepsOf = (design: Design): SettingStep => {
  if (!design.settingStep) throw new Error('this design has no setting step')
  return design.settingStep
}

/** The flat contour for one step, counter-clockwise, its inner corner freed. */
export const contour = ({ footLength, stepLength, over, room }: SettingStep, step: number): Outline => {
  const free = Math.min(room, step / 2)
  return [
    { at: [-footLength, 0] },
    { at: [0, 0] },
    // Three quarters round the corner, through the metal.
    { at: [0, step - free], bulge: -Math.tan((3 * Math.PI) / 8) },
    { at: [free, step] },
    { at: [stepLength, step] },
    { at: [stepLength, step + over] },
    { at: [-footLength, step + over] },
  ]
}

const block = (sizes: SettingStep, at: number): Solid => {
  const { footLength, stepLength, over, thickness, room, foot, allowance, marking } = sizes
  const step = (sizes.steps[at] ?? 0) + allowance
  const top = step + over
  const text = marking[at] ?? ''
  return join(
    cut(
      join(
        standing(
          [
            [-footLength, 0],
            [0, 0],
            [0, top],
            [-footLength, top],
          ],
          thickness,
          foot,
        ),
        standing(
          [
            [-footLength, step],
            [stepLength, step],
            [stepLength, top],
            [-footLength, top],
          ],
          thickness,
          foot,
        ),
      ),
      bore('z', [0, step, -1], 2 * Math.min(room, step / 2), thickness + 2),
    ),
    raised(text, [-footLength / 2, step + over / 2], 0.8 * footLength, 0.6 * over, thickness),
  )
}

const prints = (design: Design): readonly Print[] => {
  const sizes = stepsOf(design)
  const pitch = sizes.over + Math.max(...sizes.steps) + 5
  return sizes.steps.map((_, at) => ({
    name: sizes.steps.length > 1 ? `setting-step-${at + 1}` : 'setting-step',
    solid: block(sizes, at),
    move: [0, at * pitch, 0],
  }))
}

const plan = (design: Design): View => {
  const sizes = stepsOf(design)
  const { steps, footLength, stepLength, over, thickness, room, foot, within } = sizes
  const step = steps[0] ?? 0
  const top = step + over
  const inner = Math.min(room, step / 2) * Math.SQRT1_2
  const one: Callout = {
    callout: 'linear',
    of: 'steps',
    worth: plusMinus(step, within),
    axis: 'y',
    a: 0,
    b: step,
    fromA: 0,
    fromB: stepLength,
    side: 'right',
  }
  const several: Callout = {
    callout: 'leader',
    of: 'steps',
    tips: [0.4, 0.6, 0.8].map((part) => ({ at: [part * stepLength, step] as const, out: [0.4, -1] as const })),
    lines: steps.map((each, at) => [`${at + 1}: step `, plusMinus(each, within)]),
  }
  return {
    name: 'plan',
    place: { is: 'front' },
    marks: [{ mark: 'outline', kind: 'visible', outline: contour(sizes, step) }],
    metal: [
      { x1: -footLength, y1: 0, x2: 0, y2: top },
      { x1: 0, y1: step, x2: stepLength, y2: top },
    ],
    callouts: [
      steps.length > 1 ? several : one,
      {
        callout: 'linear',
        of: 'over',
        worth: plain(over),
        axis: 'y',
        a: step,
        b: top,
        fromA: stepLength,
        fromB: stepLength,
        side: 'right',
        ...(steps.length > 1 ? {} : { chain: 'steps' }),
      },
      {
        callout: 'linear',
        of: 'footLength',
        worth: plain(footLength),
        axis: 'x',
        a: -footLength,
        b: 0,
        fromA: 0,
        fromB: 0,
        side: 'bottom',
      },
      {
        callout: 'linear',
        of: 'stepLength',
        worth: plain(stepLength),
        axis: 'x',
        a: 0,
        b: stepLength,
        fromA: 0,
        fromB: step,
        side: 'bottom',
        chain: 'footLength',
      },
      {
        callout: 'leader',
        of: 'thickness',
        tips: [0.3, 0.5, 0.7].map((part) => ({ at: [-part * footLength, top] as const, out: [-0.4, 1] as const })),
        lines: [[plain(thickness, { prefix: 't ' })]],
      },
      {
        callout: 'leader',
        of: 'room',
        tips: [{ at: [inner, step + inner], out: [1, -1] }],
        lines: [[small(room, { prefix: 'R' }), ' room']],
        small: true,
      },
      {
        callout: 'leader',
        of: 'foot',
        tips: [0.3, 0.6].map((part) => ({ at: [-footLength, part * top] as const, out: [-1, 0.4] as const })),
        lines: [[small(foot), ' × ', degrees(45)], ['at the bed, all round']],
        small: true,
      },
    ],
  }
}

const notes = (design: Design): readonly Notes[] => {
  const { within, allowance, steps } = stepsOf(design)
  return [
    {
      heading: goCheck(design, stepsOf(design).tolerance),
      caution: true,
      lines:
        allowance > 0
          ? [
              ['A print is not as good as this setting asks: the step is printed ', coarse(allowance), ' high.'],
              ['File the foot until a depth micrometer reads the step within ', fine(within), '.'],
            ]
          : [['Measure the step before it is used.']],
    },
    {
      heading: 'SETTING THE BIT',
      numbered: true,
      lines: [
        ['Bar in the vise, nose up, its screw just slack. Wipe both.'],
        ['Lay the foot along the bar towards the holder, the step over the nose.'],
        ['Push the bit out until it lies flat on the step. Tighten the screw.'],
        ['Read over bar and nose: the bar as miked and the step.'],
        ...(steps.length > 1 ? [['One block a stage, in their order. Set anew before each stage.']] : []),
      ],
    },
    printingOrder(
      'Print it lying down, letters up, nothing under it.',
      [
        [
          steps.length > 1
            ? 'Or cut them from flat stock; the profile is that of the first.'
            : 'Or cut it from flat stock by the profile.',
        ],
      ],
      'High: file the foot. Low: print again, higher.',
    ),
  ]
}

const drawing = (design: Design): Drawing => {
  const { steps, within, tolerance, thickness } = stepsOf(design)
  return {
    part: 'setting-step',
    title: steps.length > 1 ? 'Setting steps' : 'Setting step',
    number: '44',
    views: [plan(design)],
    notes: notes(design),
    asMade: {
      heading: 'AS FILED: measure and write down',
      rows: steps.slice(0, 5).map((step, at) => ({
        what: steps.length > 1 ? `Step ${at + 1}` : 'Step, foot to step',
        limits: [plusMinus(step, within)],
      })),
    },
    block: {
      ...printedBlock(design, tolerance),
      material: 'printed plastic, or flat stock',
      stock: ['model file, or flat ', plain(thickness), ' thick'],
    },
  }
}

const profile = (design: Design): Profile => ({
  name: 'setting-step',
  contours: [contour(stepsOf(design), stepsOf(design).steps[0] ?? 0)],
})

export const settingStep: Part = {
  name: 'setting-step',
  title: 'Setting step',
  of: 'bar',
  belongs: (design) => design.settingStep !== undefined,
  solid: (design) => sideBySide(prints(design)),
  prints,
  drawing,
  profile,
}
