import { z } from 'zod'
import { keyed, lengthAs, textAs, wordAs } from './leaf.ts'

const bar = lengthAs('A diameter', [16, '5/8 in'])
const blank = keyed('One tool-bit blank', {
  shape: wordAs('Cross section', ['square', 'round']).optional(),
  size: lengthAs('Side or diameter', [8, '1/4 in']),
})
const blankPhrase = 'a size, 8 or "1/4 in" (square), or { shape, size }'

const list = <Leaf extends z.ZodType>(description: string, leaf: Leaf) =>
  z.array(leaf, { error: 'a list: [ … ]' }).max(500, { error: 'a list of at most 500' }).meta({ description })
const thread = textAs('Thread', ['M6', '#10-32', '1/4-28'], 'a thread: "M6", "#10-32", "1/4-28"')

/** What is on hand, as written. What is left out is the default list for the units. */
export const shopSchema = keyed('What is on hand; a list that is left out is the usual one', {
  $schema: textAs('Names the schema for an editor', ['borewright.schema.json'], 'a path').optional(),
  units: wordAs('What a bare number is in; left out: as in the spec', ['mm', 'in']).optional(),
  drills: list('Drills', lengthAs('A drill', [8.4, '#7', 'letter F', '23/64 in'], { drill: true })).optional(),
  reamers: list('Reamers', bar).optional(),
  taps: list('Taps', thread).optional(),
  screws: list('Threads of set screws', thread).optional(),
  threads: list('Threads for which there are both taps and set screws', thread).optional(),
  bits: list(
    'Tool-bit blanks',
    z.union([lengthAs('Side of a square blank', [8]), blank], { error: blankPhrase }),
  ).optional(),
  bars: list('Round bar for cutter bars', bar).optional(),
  rounds: list('Round bar for bushings', bar).optional(),
  collets: list('Diameters that collet or holder takes', bar).optional(),
  shims: list('Shim and feeler stock, thicknesses', lengthAs('A thickness', [0.1, '0.005 in'])).optional(),
  pins: list('Pins', bar).optional(),
  printer: keyed('As measured on this printer', {
    outside: lengthAs('An outside, per side: negative where it comes out small', [-0.1], { signed: true }),
    inside: lengthAs('An inside, per side: negative where the hole comes out small', [-0.15], { signed: true }),
    foot: lengthAs("Chamfer against the first layer's spread", [0.4], { zero: true }),
  }).optional(),
})
