import { z } from 'zod'
import { keyed, lengthAs, numberAs, quantityAs, textAs, wordAs } from './leaf.ts'
import { force, stiffness } from './quantity.ts'

const bar = lengthAs('A diameter', [16, '5/8 in'])
const blank = keyed('One tool-bit blank', {
  shape: wordAs('Cross section', ['square', 'round']).optional(),
  size: lengthAs('Side or diameter', [8, '1/4 in']),
})
const blankPhrase = 'a size, 8 or "1/4 in" (square), or { shape, size }'

const list = <Leaf extends z.ZodType>(description: string, leaf: Leaf) =>
  z.array(leaf, { error: 'a list: [ … ]' }).max(500, { error: 'a list of at most 500' }).meta({ description })
const thread = textAs('Thread', ['M6', '#10-32', '1/4-28'], 'a thread: "M6", "#10-32", "1/4-28"')

const screw = keyed('A set screw and the lengths on hand', {
  thread,
  lengths: list('Lengths on hand', lengthAs('A length', [6, '1/4 in'])),
})

const trusted = (description: string) => lengthAs(`${description}: what it can be trusted to, ±`, [0.02, '0.001 in'])
const forcePhrase = 'a force: "1100 N", "250 lbf"'

const machine = keyed('A machine', {
  name: textAs('What it is called; tooling.bar.machine may name it', ['bench lathe'], 'a name'),
  kind: wordAs('What it is', ['lathe', 'mill', 'press']),
  dial: keyed('The dial that sets the depth', {
    mark: lengthAs('What one mark is', [0.02, '0.001 in']),
    reads: wordAs('Travel of the tool, or the change of diameter; left out: travel', ['travel', 'diameter']).optional(),
  }).optional(),
  travel: lengthAs('How far it strokes along the bore', [100, '4 in']).optional(),
  give: quantityAs(
    'Sideways stiffness, as measured at the holder',
    ['5000 N/mm'],
    stiffness,
    'a stiffness: "5000 N/mm", "28550 lbf/in"',
  ).optional(),
  thrust: quantityAs('The most that it may push along the bore', ['1100 N'], force, forcePhrase).optional(),
  handle: keyed('What drives the stroke by hand', {
    radius: lengthAs('Radius of the handle', [200, '8 in']),
    travel: lengthAs('Stroke for one turn of it', [100, '4 in']),
  }).optional(),
  hold: wordAs('What keeps the spindle from turning', ['gear', 'lock', 'belt']).optional(),
  jaws: quantityAs('Force of one jaw of its vise or chuck', ['6 kN'], force, forcePhrase).optional(),
})

/** What is on hand, as written. What is left out is the default list for the units. */
export const shopSchema = keyed('What is on hand; a list that is left out is the usual one', {
  $schema: textAs('Names the schema for an editor', ['borewright.schema.json'], 'a path').optional(),
  units: wordAs('What a bare number is in; left out: as in the spec', ['mm', 'in']).optional(),
  drills: list('Drills', lengthAs('A drill', [8.4, '#7', 'letter F', '23/64 in'], { drill: true })).optional(),
  reamers: list('Reamers', bar).optional(),
  taps: list('Taps', thread).optional(),
  screws: list(
    'Set screws: threads, or with the lengths on hand',
    z.union([thread, screw], { error: 'a thread, "M6", or { thread, lengths }' }),
  ).optional(),
  threads: list('Threads for which there are both taps and set screws', thread).optional(),
  bits: list(
    'Tool-bit blanks',
    z.union([lengthAs('Side of a square blank', [8]), blank], { error: blankPhrase }),
  ).optional(),
  bars: list('Round bar for cutter bars', bar).optional(),
  rounds: list('Round bar for bushings', bar).optional(),
  collets: list('Diameters that collet or holder takes', bar).optional(),
  shims: list('Shim and feeler stock, thicknesses', lengthAs('A thickness', [0.1, '0.005 in'])).optional(),
  endMills: list('End mills', bar).optional(),
  pins: list('Pins', bar).optional(),
  plugs: list('Plug gauges', bar).optional(),
  gears: list(
    'Teeth of gears that can serve for an index plate',
    numberAs('Teeth', [48], { least: 8, most: 400, whole: true }),
  ).optional(),
  machines: list('Machines', machine).optional(),
  dividing: keyed('A dividing head', {
    ratio: numberAs('Turns of the crank for one of the work', [40], { least: 1, most: 720, whole: true }),
    circles: list('Holes in the circles', numberAs('Holes', [15], { least: 2, most: 400, whole: true })),
  }).optional(),
  measuring: keyed('What the instruments can be trusted to', {
    caliper: trusted('Caliper').optional(),
    micrometer: trusted('Micrometer').optional(),
    depthMicrometer: trusted('Depth micrometer').optional(),
    boreGauge: trusted('Bore gauge').optional(),
    indicator: trusted('Indicator').optional(),
    blocks: trusted('Gauge blocks, a stack').optional(),
    square: lengthAs('Square: out of true over 100 mm (4 in)', [0.02, '0.001 in']).optional(),
  }).optional(),
  printer: keyed('As measured on this printer', {
    outside: lengthAs('An outside, per side: negative where it comes out small', [-0.1], { signed: true }),
    inside: lengthAs('An inside, per side: negative where the hole comes out small', [-0.15], { signed: true }),
    foot: lengthAs("Chamfer against the first layer's spread", [0.4], { zero: true }),
  }).optional(),
})
