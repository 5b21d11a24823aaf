import { readLength } from './length.ts'
import type { Units } from './spec.ts'
import { examplesFor, othersFor } from './starter-examples.ts'

/** What a starter spec may be told beforehand, each as a person would write it: `24`, `"15/16"`. */
export interface StarterAnswers {
  readonly name?: string
  readonly diameter?: string | number
  readonly length?: string | number
  readonly material?: string
  /** Path or address of the JSON Schema, for the editor. */
  readonly schema?: string
}

const examples = {
  mm: {
    diameter: 24,
    length: 38,
    mouth: '0.5',
    standard: 'iso-773',
    keyed: '8',
    fit: 'normal          # normal, tight or sliding',
    torque: '"90 N m"',
    mark: '0.02',
    behind: '20',
    screw: 'M6',
    force: '"30 kN"',
    broach: [
      'toothWidth: 8.01, bodyWidth: 7.98, firstTooth: 12.5, lastTooth: 14.4, teeth: 26,',
      'toothedLength: 150, overall: 210, pilot: 12, pilotLength: 28',
    ],
  },
  in: {
    diameter: '7/8',
    length: '1-3/8',
    mouth: '0.02',
    standard: 'asme-b17.1',
    keyed: '3/16',
    fit: 'class 1         # class 1 or class 2; form: square or rectangular',
    torque: '"600 lbf in"',
    mark: '0.001',
    behind: '3/4',
    screw: '"#10-32"        # a name with # needs its quotes',
    force: '"2 ton"          # short tons of 2000 lbf; or "4000 lbf"',
    broach: [
      'toothWidth: .1885, bodyWidth: .1880, firstTooth: .375, lastTooth: .440, teeth: 21,',
      'toothedLength: 5, overall: 6.75, pilot: .360, pilotLength: .9',
    ],
  },
} as const

/** Words on one line of YAML: bare where that is safe, quoted where not. */
const worded = (value: string): string => {
  const text = value.trim()
  const plain = /^[A-Za-z][\w-]*(?: [\w-]+)*$/.test(text) && !/^(?:true|false|null)$/i.test(text)
  return plain ? text : JSON.stringify(text)
}

/** A size on one line of YAML: bare where that is safe, quoted where not. */
const sized = (value: string | number): string => {
  const text = String(value).trim()
  return /^\d+(?:\.\d+)?$|^\d+(?:-\d+)?\/\d+$/.test(text) ? text : JSON.stringify(text)
}

/**
 * A spec to start from, commented YAML. It reads as it stands; every line under a `#` is there to be made one's own. The
 * first line names the schema, so that an editor tells what may be written where.
 */
export function starterSpec(units: Units, answers: StarterAnswers = {}): string {
  const given = examples[units]
  const {
    name = 'my-first-keyway',
    diameter = given.diameter,
    length = given.length,
    material = 'mild steel',
  } = answers
  const bore = readLength(diameter, units) || (readLength(given.diameter, units) ?? 0)
  const { measured, outside, hand, bar, width } = examplesFor(units, bore)
  const line = (text: string | undefined, before: string, after = ''): string =>
    text === undefined ? '' : `${before}${text}${after}\n`
  // A screw for this bar and no other, and a broach for one width of key.
  const usual = bore === readLength(given.diameter, units)
  const broach = width === given.keyed ? '' : ` (this one cuts ${given.keyed} wide: put your own)`
  return `# yaml-language-server: $schema=${(answers.schema ?? 'borewright.schema.json').replace(/\s/g, '%20')}
# One job: a bore, the keyway in it, and what the shop has. Sizes here are an example: put your own.
# A bare number is in units. A text may carry its own unit and may be a fraction: "24 mm", 15/16, "1-3/8 in", "12,5 mm".

name: ${worded(name)}             # letters, digits, '-' and '_'; names the output folder
units: ${units}                  # mm or in

bore:
  diameter: ${sized(diameter)}             # nominal
  # measured: ${measured}      # the finished bore as measured: the depths follow from it
  tolerance: H7            # an ISO 286 class, or deviations: [lower, upper]
  length: ${sized(length)}               # of the bore, which is the length of the cut
  mouth: ${given.mouth}               # chamfer
  # blind: { beyond: ${given.mouth} }   # only where the bore is blind: room beyond the end of the keyway

hub:
  # outside: ${outside}            # tells the wall that is left over the keyway
  material: ${worded(material)}

feature:
  keyway:
    standard: ${given.standard}
    # fit: ${given.fit}
    # at: [0, 90]          # angles of several keyways
${line(hand, '  # or sizes by hand, in place of the lines above:\n  # keyway: ')}  # or another feature in its place:
${othersFor(units, bore)
  .map((other) => `  # ${other}\n`)
  .join('')}
# load: { torque: ${given.torque}, service: 1.5 }
# use: belt pulley         # say so where a life may hang on it: steering, brakes, lifting

# Left out, the bar is worked out; the bushing for a press too, once a broach has been measured and stands here. What is left
# out of either is chosen, and the reason given.
# tooling:
#   bar:                   # a slim bar with a ground bit
#     machine: lathe       # lathe, mill, or the name of a machine in the shop file
#     # form: side screw     # end screw, side screw, inclined or one piece: left out, the first that works
#     # stages: 1            # one setting of the projection and no more
#     dial: { mark: ${given.mark}, reads: travel }   # travel or diameter
#     behind: ${given.behind}           # room open behind the hub
${line(bar, '#     diameter: ')}${line(usual ? given.screw : undefined, '#     screw: ')}#   press:                 # a push broach in a slotted guide bushing
#     force: ${given.force}
#     broach:              # as measured${broach}; heights from its back
#       { ${given.broach[0]}
#         ${given.broach[1]} }

# shop: shop.yaml          # what is on hand: drills, reamers, endMills, taps, screws, bits, bars, rounds, collets, shims,
#                          # pins, plugs, machines, gears, dividing, measuring, printer
`
}
