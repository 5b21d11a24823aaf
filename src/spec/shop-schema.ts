import { z } from 'zod/mini'
import { once } from '../standards/table.ts'
import { keyed, lengthAs, maybe, numberAs, quantityAs, textAs, told, wordAs } from './leaf.ts'
import { force, stiffness } from './quantity.ts'
import { spindleHolds } from './spindle.ts'

const bar = () => lengthAs('A diameter', [16, '5/8 in'])
const blank = () =>
  keyed('One tool-bit blank', {
    shape: maybe(() => wordAs('Cross section', ['square', 'round'])),
    size: () => lengthAs('Side or diameter', [8, '1/4 in']),
  })
const blankPhrase = 'a size, 8 or "1/4 in" (square), or { shape, size }'

const list = <Leaf extends z.ZodMiniType>(description: string, leaf: Leaf, least = 0) =>
  told(
    z
      .array(leaf, { error: 'a list: [ … ]' })
      .check(
        ...(least > 0 ? [z.minLength(least, { error: `a list of ${least} or more` })] : []),
        z.maxLength(500, { error: 'a list of at most 500' }),
      ),
    { description },
  )
const thread = () => textAs('Thread', ['M6', '#10-32', '1/4-28'], 'a thread: "M6", "#10-32", "1/4-28"')

const screw = () =>
  keyed('A set screw and the lengths on hand', {
    thread,
    lengths: () => list('Lengths on hand', lengthAs('A length', [6, '1/4 in'])),
  })

const trusted = (description: string) => lengthAs(`${description}: what it can be trusted to, ±`, [0.02, '0.001 in'])
const forcePhrase = 'a force: "1100 N", "250 lbf"'

const machine = () =>
  keyed('A machine', {
    name: () => textAs('What it is called; tooling.bar.machine may name it', ['bench lathe'], 'a name'),
    kind: () => wordAs('What it is', ['lathe', 'mill', 'press']),
    dial: maybe(() =>
      keyed('The dial that sets the depth', {
        mark: () => lengthAs('What one mark is', [0.02, '0.001 in']),
        reads: maybe(() =>
          wordAs('Travel of the tool, or the change of diameter; left out: travel', ['travel', 'diameter']),
        ),
      }),
    ),
    travel: maybe(() => lengthAs('How far it strokes along the bore', [100, '4 in'])),
    give: maybe(() =>
      quantityAs(
        'Sideways stiffness, as measured at the holder',
        ['5000 N/mm'],
        stiffness,
        'a stiffness: "5000 N/mm", "28550 lbf/in"',
      ),
    ),
    thrust: maybe(() => quantityAs('The most that it may push along the bore', ['1100 N'], force, forcePhrase)),
    handle: maybe(() =>
      keyed('What drives the stroke by hand', {
        radius: () => lengthAs('Radius of the handle', [200, '8 in']),
        travel: () => lengthAs('Stroke for one turn of it', [100, '4 in']),
      }),
    ),
    hold: maybe(() => wordAs('What keeps the spindle from turning', [...spindleHolds])),
    jaws: maybe(() => quantityAs('Force of one jaw of its vise or chuck', ['6 kN'], force, forcePhrase)),
  })

/** What is on hand, as written. What is left out is the default list for the units. */
export const shopSchema = once(() =>
  keyed('What is on hand; a list that is left out is the usual one', {
    $schema: maybe(() => textAs('Names the schema for an editor', ['borewright.schema.json'], 'a path')),
    units: maybe(() => wordAs('What a bare number is in; left out: as in the spec', ['mm', 'in'])),
    drills: maybe(() => list('Drills', lengthAs('A drill', [8.4, '#7', 'letter F', '23/64 in'], { drill: true }))),
    reamers: maybe(() => list('Reamers', bar())),
    taps: maybe(() => list('Taps', thread())),
    screws: maybe(() =>
      list(
        'Set screws: threads, or with the lengths on hand',
        z.union([thread(), screw()], { error: 'a thread, "M6", or { thread, lengths }' }),
      ),
    ),
    threads: maybe(() => list('Threads for which there are both taps and set screws', thread())),
    bits: maybe(() =>
      list('Tool-bit blanks', z.union([lengthAs('Side of a square blank', [8]), blank()], { error: blankPhrase })),
    ),
    bars: maybe(() => list('Round bar for cutter bars', bar())),
    rounds: maybe(() => list('Round bar for bushings', bar())),
    collets: maybe(() => list('Diameters that collet or holder takes', bar())),
    shims: maybe(() => list('Shim and feeler stock, thicknesses', lengthAs('A thickness', [0.1, '0.005 in']))),
    endMills: maybe(() => list('End mills', bar())),
    pins: maybe(() => list('Pins', bar())),
    plugs: maybe(() => list('Plug gauges', bar())),
    gears: maybe(() =>
      list(
        'Teeth of gears that can serve for an index plate',
        numberAs('Teeth', [48], { least: 8, most: 400, whole: true }),
      ),
    ),
    machines: maybe(() => list('Machines', machine())),
    dividing: maybe(() =>
      keyed('A dividing head', {
        ratio: () => numberAs('Turns of the crank for one of the work', [40], { least: 1, most: 720, whole: true }),
        circles: () => list('Holes in the circles', numberAs('Holes', [15], { least: 2, most: 400, whole: true }), 1),
      }),
    ),
    measuring: maybe(() =>
      keyed('What the instruments can be trusted to', {
        caliper: maybe(() => trusted('Caliper')),
        micrometer: maybe(() => trusted('Micrometer')),
        depthMicrometer: maybe(() => trusted('Depth micrometer')),
        boreGauge: maybe(() => trusted('Bore gauge')),
        indicator: maybe(() => trusted('Indicator')),
        blocks: maybe(() => trusted('Gauge blocks, a stack')),
        square: maybe(() => lengthAs('Square: out of true over 100 mm (4 in)', [0.02, '0.001 in'])),
      }),
    ),
    printer: maybe(() =>
      keyed('As measured on this printer', {
        outside: () => lengthAs('An outside, per side: negative where it comes out small', [-0.1], { signed: true }),
        inside: () =>
          lengthAs('An inside, per side: negative where the hole comes out small', [-0.15], { signed: true }),
        foot: () => lengthAs("Chamfer against the first layer's spread", [0.4], { zero: true }),
      }),
    ),
  }),
)
