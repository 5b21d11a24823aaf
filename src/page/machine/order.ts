import type { Design } from '../../design.ts'

type Plain = 'stop' | 'bore' | 'bit' | 'stack' | 'zero' | 'add' | 'measure' | 'done'

interface Keyed {
  /** What is kept of a screen. */
  readonly key: string
}

/** Before this cut the bit is set out farther, or the bar moved sideways. */
export interface BeforeCut extends Keyed {
  readonly is: 'anew' | 'lane'
  readonly cut: number
}

/** A stretch that is cut, or the work turned on to its slot. */
export interface OfSlot extends Keyed {
  readonly is: 'turn' | 'cut'
  readonly cut: number
  readonly gate: number
  readonly slot: number
}

export interface AtGate extends Keyed {
  readonly is: 'gate'
  readonly cut: number
  readonly gate: number
}

export interface Push extends Keyed {
  readonly is: 'push'
  readonly slot: number
  readonly pass: number
}

/** One screen: one thing to do. */
export type Screen = (Keyed & { readonly is: Plain }) | BeforeCut | OfSlot | AtGate | Push

const plain = (is: Plain): Screen => ({ key: is, is })

const byBar = ({ plan }: Design): readonly Screen[] => {
  if (!plan) return []
  const lanes = plan.lanes.length > 1
  const cuts = plan.cuts.flatMap((cut, at): readonly Screen[] => {
    const before = plan.cuts[at - 1]
    return [
      ...(before && before.setting !== cut.setting ? [{ key: `anew-${at}`, is: 'anew' as const, cut: at }] : []),
      ...(lanes ? [{ key: `lane-${at}`, is: 'lane' as const, cut: at }] : []),
      ...cut.gates.flatMap((_, gate): readonly Screen[] => [
        ...Array.from({ length: plan.keyways }, (_slot, slot): readonly Screen[] => {
          const place = { cut: at, gate, slot }
          const named = `${at}-${gate}-${slot}`
          const first = at === 0 && gate === 0 && slot === 0
          return [
            ...(plan.keyways > 1 && !first ? [{ key: `turn-${named}`, is: 'turn' as const, ...place }] : []),
            { key: `cut-${named}`, is: 'cut' as const, ...place },
          ]
        }).flat(),
        { key: `gate-${at}-${gate}`, is: 'gate' as const, cut: at, gate },
      ]),
    ]
  })
  return [
    ...(['stop', 'bore', 'bit', 'zero'] as const).map(plain),
    ...cuts,
    ...(plan.gateBy === 'nothing' ? [] : [plain('add')]),
    plain('measure'),
    plain('done'),
  ]
}

const byPress = ({ bushing, section }: Design): readonly Screen[] => [
  ...(['stop', 'bore', 'stack'] as const).map(plain),
  ...section.at.flatMap((_, slot) =>
    (bushing?.passes ?? []).map((_pass, pass): Screen => ({ key: `push-${slot}-${pass}`, is: 'push', slot, pass })),
  ),
  plain('measure'),
  plain('done'),
]

/** All screens, in the order of the card. */
export const orderOf = (design: Design, way: 'bar' | 'press'): readonly Screen[] =>
  way === 'bar' ? byBar(design) : byPress(design)
