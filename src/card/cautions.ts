/** Cautions, each for the place where the hand is about to go. None promises safety; the local code is deferred to at every foot. */
import type { Design } from '../design.ts'
import type { Block, Words } from './document.ts'
import { bold, say, type Saying } from './saying.ts'

const caution = (signal: string, words: Words, ...ticks: readonly Words[]): Block => ({
  block: 'caution',
  says: [{ signal, words }],
  ...(ticks.length > 0 && { ticks }),
})

export const deferral =
  'Sizes, not an approval. Steering, brakes, suspension, lifting, pressure, aircraft and all else a life hangs on: licensed hands, the local code, the maker’s own part.'

/** Over this a hub is slung, kg. Source: judgement. */
const heavyFrom = 20

const heavyHub = ({ hubWeight }: Design): readonly Block[] =>
  hubWeight !== undefined && hubWeight > heavyFrom
    ? [
        caution(
          'Sling it.',
          `About ${Math.round(hubWeight)} kg: a hub of this weight is not lifted by the bore with a finger in it.`,
        ),
      ]
    : []

const ironDust = ({ spec }: Design): readonly Block[] =>
  spec.hub.material === 'grey iron'
    ? [
        {
          block: 'paragraph',
          size: 'note',
          words: say`${bold('Iron dust')} is black and grinds the ways: cover them, brush and suck, no air line, a mask if it hangs.`,
        },
      ]
    : []

/** At the head of a job that is cut with a bar. */
export const atTheMachine = (design: Design, says: Saying): readonly Block[] => {
  const mill = design.asked?.machine === 'mill'
  const wheel = mill ? 'the quill handle' : 'the carriage wheel'
  const stop: Block = {
    block: 'caution',
    says: [
      {
        signal: 'Stop.',
        words: `Power must not reach the spindle while the bar is in the hub: one turn folds the bar and throws the bit. Sleeves, rings and hair away from ${wheel}; knuckles off the edge of the hub. Chips by brush.`,
      },
    ],
    ticks: [
      'plug out',
      mill ? 'spindle held, gear or lock' : 'spindle held, lock or strap',
      mill ? 'drawbar key away' : 'chuck key put away',
      mill ? 'quill feed out' : 'feed levers out',
      'eyes covered',
    ],
  }
  const push = design.loads?.pushMost
  const quill: readonly Block[] = mill
    ? [
        caution(
          'The quill’s rack is made for drilling.',
          `Stay under ${push === undefined ? 'what the largest drill asks that the machine is sold to push' : `${says.force(push)} at the spindle (the largest drill the machine is sold to push)`}. If the handle wants a second hand, take a finer infeed or stone the nose. The quill flies back when let go: keep your knuckles off the hub’s edge. Do not hang on the handle. Belt and hand do not hold a spindle; the gear or the lock does.`,
        ),
      ]
    : []
  return [stop, ...quill, ...heavyHub(design), ...ironDust(design)]
}

/** Over the gates. */
export const aboveTheGates: Block = {
  block: 'caution',
  says: [
    {
      signal: 'Handle suddenly heavy?',
      words: 'Stop; do not lean on it. Back off, draw the bar out, look for a chipped corner.',
    },
    { signal: 'Edges like a knife', words: 'from gate 1 on. Chips by brush, never by finger, never by air line.' },
  ],
}

/** At the head of a job that is pushed. */
export const atThePress = (design: Design): readonly Block[] => {
  const short = design.findings.some(({ rule, verdict }) => rule === 'teeth-in-cut' && verdict !== 'pass')
  return [
    caution(
      'Stop.',
      'A push broach is hard right through. Bent, it bursts sideways without a sound before it.',
      'guard between it and you',
      'full face shield',
      'nobody in line with it, left, right or front',
      'ram square, end of the broach flat and pressed flat',
      'tray below, not a hand',
      'oil on every tooth',
    ),
    ...(short ? [caution('Fewer than two teeth in the cut:', 'it will dive. Stack two hubs, or use the bar.')] : []),
    ...heavyHub(design),
    ...ironDust(design),
  ]
}

/** Over the passes. */
export const atEachPass: Block = {
  block: 'caution',
  says: [
    {
      signal: 'One steady push, all the way.',
      words:
        'Never strike it. Never stop half way and start again with a jerk. Never draw it back up: let it fall through into the tray.',
    },
    { signal: 'Force jumps, or it leans: stop,', words: 'ease the ram off slowly, take the stack apart.' },
  ],
}

export const beforeTheWheel: Block = caution(
  'Before the wheel.',
  'Stand aside while it runs up. Short dips before it colours: never a red-hot bit in water, it cracks. Hold short bits in a holder, not in fingers.',
  'eyes covered, and the shield down',
  'guard and rest on, rest within 3 mm (1/8 in)',
  'wheel sound when tapped, right for the speed',
  'no gloves, no loose cuff',
  'dust drawn off',
  'no aluminium or brass on this wheel',
)

export const crossHoleFirst: Block = caution(
  'Cross hole first, then the tapped end.',
  'Burrs in the hole cut; break both mouths. Clear chips with a hook.',
)

/** A bar with its screw in the wall. */
export const crossHoleThenWall: Block = caution(
  'Cross hole first, then the hole for the screw.',
  'Burrs in the hole cut; break every mouth. Clear chips with a hook.',
)

export const hardening: Block = caution(
  'Hot steel and oil.',
  'Quench in the open, a lid at hand, face back: it flares. A hard bar left undrawn breaks like glass; draw it before it is cold.',
)

export const turningByHand: Block = caution(
  'Long chips cut.',
  'Chuck key out before the spindle starts. Break the chips; a hook, never a hand.',
)
