import { z } from 'zod'
import { angleAs, flagAs, keyed, lengthAs, numberAs, pairAs, quantityAs, textAs, wordAs } from './leaf.ts'
import { groove, limited, slit, socket, spline } from './feature-schema.ts'
import { area, force, stiffness, stress, torque } from './quantity.ts'
import { shopSchema } from './shop-schema.ts'

/** The spec as written. One schema: what is read, what is complained of, and what editors show all come from it. */

const signed = lengthAs('A deviation from the nominal diameter', [0, '+0.0005 in'], { signed: true })
const relief = keyed('Groove that the cut runs out into', {
  diameter: lengthAs('Diameter of the groove', [34]),
  length: lengthAs('Length of the groove along the bore', [9]),
})

const bore = keyed('The finished bore', {
  diameter: lengthAs('Nominal diameter', [24, '7/8 in']),
  measured: lengthAs('The finished bore as measured; depths follow from it', [24.012, '0.8753 in']).optional(),
  tolerance: z
    .union(
      [
        textAs('An ISO 286 class', ['H7'], 'an ISO 286 class'),
        pairAs('Deviations from the diameter, [lower, upper]', signed, 'deviations: [lower, upper]'),
      ],
      { error: 'an ISO 286 class for holes: H7, or deviations: [lower, upper]' },
    )
    .optional()
    .meta({ description: 'An ISO 286 class for holes, or deviations [lower, upper]; left out: H7', examples: ['H7'] }),
  length: lengthAs('Length of the bore, which is the length of the cut', [38, '1-3/8 in']),
  chromed: flagAs('The bore is plated with hard chromium').optional(),
  mouth: lengthAs('Chamfer at the mouth; left out: 0.5 mm or 0.02 in', [0.5], { zero: true }).optional(),
  blind: keyed('Only where the bore is blind', {
    beyond: lengthAs('Room beyond the end of the keyway', [8], { zero: true }),
    relief: relief.optional(),
  }).optional(),
})

const materialPhrase = 'a material that is known: mild steel, grey iron'
const hub = keyed('The part with the bore in it', {
  outside: lengthAs('Outside diameter', [62]).optional(),
  material: z
    .union([z.string().min(1, { error: materialPhrase }), z.number()], { error: materialPhrase })
    .optional()
    .meta({ description: 'Material; left out: mild steel', examples: ['mild steel', 'grey iron', 'brass', '1018'] }),
  hardness: numberAs('Rockwell C, as measured', [28], { least: 0, most: 70 }).optional(),
})

const metal = {
  material: textAs('Metal; left out: E335', ['key steel', 'E335', '1018 cold drawn'], 'a metal: key steel').optional(),
  yield: quantityAs(
    'Yield strength, instead of material',
    ['430 MPa'],
    stress,
    'a stress: "430 MPa", "62 ksi"',
  ).optional(),
}
const shaft = keyed('The shaft', {
  ...metal,
  break: lengthAs('How far the edges of the keyseat are broken; left out: 0.2 mm', [0.2], { zero: true }).optional(),
  diameter: limited('Diameter of the shaft; left out: h7', 24).optional(),
  across: limited('Floor of the keyseat to the opposite side of the shaft; by hand', 20).optional(),
})

const fitPhrase = 'normal, tight or sliding (iso-773); class 1 or class 2 (asme-b17.1)'
const keyway = keyed('A keyway: by a standard, or its sizes by hand', {
  standard: wordAs('Left out and no sizes given: iso-773 in mm jobs, asme-b17.1 in inch jobs', [
    'iso-773',
    'asme-b17.1',
  ]).optional(),
  form: wordAs('asme-b17.1 only; left out: square for bores up to 6-1/2 in', ['square', 'rectangular']).optional(),
  fit: z
    .union([z.enum(['normal', 'tight', 'sliding', 'class 1', 'class 2']), z.literal([1, 2])], { error: fitPhrase })
    .optional()
    .meta({
      description: 'iso-773: normal, tight or sliding; asme-b17.1: class 1 or class 2. Left out: normal, class 1',
    }),
  width: limited('Width of the slot by hand; with a standard, the width of the key', 8).optional(),
  height: limited('Height of the key', 7).optional(),
  across: limited('Floor of the slot to the opposite wall of the bore', 27.3).optional(),
  depth: keyed('Depth instead of across, one of the two', {
    crown: limited('From the crown of the bore', 3.3).optional(),
    side: limited('Along the side wall of the slot', 4).optional(),
  }).optional(),
  corner: limited('Corner radius that the slot may have', 0.2, true).optional(),
  taper: wordAs('For a taper key: how the floor falls along the bore; across is then that of the deep end', [
    '1:96',
    '1:100',
  ]).optional(),
  key: keyed('The key that goes in', {
    ...metal,
    length: lengthAs('Length over all; left out: the hub’s', [36]).optional(),
    ends: wordAs('Left out: square', ['square', 'round']).optional(),
    chamfer: limited('How far its long edges are broken', 0.3, true).optional(),
    height: limited('Height of the key, in place of the standard’s', 6.9).optional(),
  }).optional(),
  found: keyed('What was measured once the keyway was cut', {
    offset: lengthAs('Its middle sideways of the bore’s', [0.05], { zero: true }).optional(),
    lead: lengthAs('Out of line with the bore’s axis, over its whole length', [0.02], { zero: true }).optional(),
  }).optional(),
  at: z
    .union(
      [
        angleAs('Angle of the keyway', [0], -360, 360),
        z
          .array(angleAs('Angle of a keyway', [90], -360, 360), { error: 'a list of angles' })
          .min(1, { error: 'one to 36 angles' })
          .max(36, { error: 'one to 36 angles' }),
      ],
      { error: 'an angle in degrees, or a list of them: [0, 90]' },
    )
    .optional()
    .meta({ description: 'Angles of the keyways, degrees; left out: one, at 0', examples: [[0], [0, 90]] }),
})

const feature = keyed('Exactly one', {
  keyway: keyway.nullable().optional(),
  spline: spline.optional(),
  socket: socket.optional(),
  slit: slit.optional(),
  groove: groove.optional(),
}).meta({ description: 'Exactly one of these', minProperties: 1, maxProperties: 1 })

const forcePhrase = 'a force: "20 kN", "4500 lbf", "2 ton" (a short ton, 2000 lbf)'
const chosen = 'left out: chosen'
const bar = keyed('A cutter bar with a ground tool bit', {
  machine: textAs(
    'lathe, mill, or the name of a machine of the shop; left out: lathe',
    ['lathe', 'mill', 'bench lathe'],
    'lathe, mill, or the name of a machine of the shop',
  ).optional(),
  form: wordAs('How the bar holds its edge; left out: the first that works', [
    'end screw',
    'side screw',
    'inclined',
    'one piece',
  ]).optional(),
  incline: angleAs(`How far an inclined bit leans, its nose leading; ${chosen}`, [20], 5, 30).optional(),
  stages: numberAs('Most settings of the projection; left out: as few as reach', [1, 2], {
    least: 1,
    most: 12,
    whole: true,
  }).optional(),
  dial: keyed('The dial that sets the depth', {
    mark: lengthAs('What one mark is; left out: 0.02 mm or 0.001 in', [0.02, '0.001 in']).optional(),
    reads: wordAs('Travel of the tool, or the change of diameter; left out: travel', ['travel', 'diameter']).optional(),
    slide: angleAs(
      'A slide set over from the bed’s axis, whose dial it is; left out: square to it',
      [30, 5.74],
      0.5,
      90,
    ).optional(),
  })
    .nullable()
    .optional(),
  give: quantityAs(
    'Sideways stiffness, as measured at the holder',
    ['5000 N/mm'],
    stiffness,
    'a stiffness: "5000 N/mm", "28550 lbf/in"',
  ).optional(),
  pull: keyed('Instead of give: a spring balance at the nose, the bar in place', {
    force: quantityAs('What the balance reads', ['100 N', '20 lbf'], force, forcePhrase),
    moves: lengthAs('How far the nose comes along', [0.065]),
  }).optional(),
  thrust: quantityAs('The most that the machine may push along the bore', ['1100 N'], force, forcePhrase).optional(),
  travel: lengthAs('How far the machine strokes along the bore', [100, '4 in']).optional(),
  handle: keyed('What drives the stroke by hand', {
    radius: lengthAs('Radius of the handle', [200, '8 in']),
    travel: lengthAs('Stroke for one turn of it', [100, '4 in']),
  }).optional(),
  rack: keyed('The rack that drives the stroke', {
    module: lengthAs('Module of its teeth (pitch over 3.1416)', [1.5]),
    width: lengthAs('Face width of its teeth', [12]),
  }).optional(),
  hold: wordAs('What keeps the spindle from turning; left out: lock', ['gear', 'lock', 'belt', 'hand']).optional(),
  work: keyed('What holds the work', {
    held: wordAs('In what', ['vise', 'chuck', 'strap']).optional(),
    jaws: quantityAs('Force of one jaw', ['8 kN'], force, forcePhrase).optional(),
    stop: quantityAs('What the stop or strap bears that takes the pull', ['4 kN'], force, forcePhrase).optional(),
    support: lengthAs('How far what it stands on reaches from the bore’s axis, under the keyway', [18]).optional(),
    clamp: quantityAs(
      'Force of the clamp that holds it down, at the edge away from the cut',
      ['3 kN'],
      force,
      forcePhrase,
    ).optional(),
    above: lengthAs('How far it stands up above the jaws', [30]).optional(),
  }).optional(),
  behind: lengthAs('Room open behind the hub', [20], { zero: true }).optional(),
  opening: lengthAs('The hole behind the hub that the bar runs out into, across', [60]).optional(),
  points: wordAs('Lathe: the nose points to the back or to the front; left out: back', ['back', 'front']).optional(),
  stroke: wordAs('The cut is pushed or pulled; left out: push', ['push', 'pull']).optional(),
  clearance: keyed('Gaps that the bar must keep; each left out: 0.25 mm', {
    back: lengthAs('Behind the bar, at the deepest cut', [0.25], { zero: true }).optional(),
    front: lengthAs('Before the bar', [0.25], { zero: true }).optional(),
    withdrawn: lengthAs('Nose to bore, drawn back', [0.25], { zero: true }).optional(),
  })
    .nullable()
    .optional(),
  setting: lengthAs('± with which the projection can be set; left out: 0.05 mm or 0.002 in', [0.05], {
    zero: true,
  }).optional(),
  nose: keyed('The cutting nose', {
    width: lengthAs(`Width; ${chosen}`, [8]).optional(),
    cornerRadius: lengthAs(`Corner radius; ${chosen}`, [0.2], { zero: true }).optional(),
  })
    .nullable()
    .optional(),
  rake: angleAs(`Rake; ${chosen} by the material`, [8], -10, 30).optional(),
  diameter: lengthAs(`Diameter of the bar; ${chosen}`, [18]).optional(),
  projection: lengthAs(`Nose beyond the bar; ${chosen}`, [4.1]).optional(),
  bit: keyed(`Tool-bit blank; ${chosen}`, {
    shape: wordAs('Left out: square', ['square', 'round']).optional(),
    size: lengthAs('Side or diameter', [8, '1/4 in']),
  }).optional(),
  screw: textAs(`Set screw; ${chosen}`, ['M6', '#10-32'], 'a thread: "M6", "#10-32", "1/4-28"').optional(),
  shank: lengthAs(`Diameter of the shank; ${chosen}`, [18]).optional(),
  infeed: lengthAs(`Infeed for each pass; ${chosen}`, [0.02]).optional(),
})

const broach = keyed('A push broach as measured; heights from its back', {
  toothWidth: lengthAs('Width over the teeth', [8.018]),
  bodyWidth: lengthAs('Width of the body', [7.98]),
  firstTooth: lengthAs('Height of the first tooth', [12.5]),
  lastTooth: lengthAs('Height of the last tooth', [14.4]),
  pilot: lengthAs('Height of the pilot', [12]),
  toothedLength: lengthAs('First tooth to last', [150]),
  teeth: numberAs('Number of teeth', [26], { least: 2, most: 500, whole: true }),
  overall: lengthAs('Length over all', [210]),
  pilotLength: lengthAs('Length of the pilot', [28]),
  shoulder: lengthAs('Height at which the body is wider than the teeth', [9]).optional(),
  finishingTeeth: numberAs('Teeth of the last height', [3], { least: 0, most: 100, whole: true }).optional(),
  heights: z
    .array(lengthAs('Height of a tooth', [12.5]), { error: 'a list of heights: [12.5, 12.6]' })
    .min(2, { error: 'two to 500 heights' })
    .max(500, { error: 'two to 500 heights' })
    .optional()
    .meta({ description: 'Height of every tooth, first to last, where each was measured', examples: [[12.5, 12.6]] }),
  faceAngle: angleAs('Angle of the teeth’s faces; left out: 10', [12], -5, 30).optional(),
  gulletArea: quantityAs('Area of one gullet', ['8 mm2'], area, 'an area: "8 mm2", "0.012 in2"').optional(),
  rootHeight: lengthAs('Height at the root of the first gullet', [10]).optional(),
  yield: quantityAs('Yield strength', ['2000 MPa'], stress, 'a stress: "2000 MPa", "290000 psi"').optional(),
})
const press = keyed('A push broach in a slotted guide bushing', {
  broach: broach.optional(),
  ram: wordAs('The ram runs true, or it wobbles; left out: guided', ['guided', 'loose']).optional(),
  stroke: lengthAs('How far the ram goes', [250]).optional(),
  below: lengthAs('Room under the table for the broach to fall into', [200], { zero: true }).optional(),
  daylight: lengthAs('Table to ram, drawn back', [300]).optional(),
  opening: lengthAs('The hole in the table or plate, across', [60]).optional(),
  force: quantityAs('What the press gives', ['20 kN', '2 ton'], force, forcePhrase).optional(),
  lever: keyed('Instead of force: a hand press', {
    pull: quantityAs('Pull on the lever', ['300 N', '75 lbf'], force, forcePhrase),
    length: lengthAs('Length of the lever', [400]),
    pinion: lengthAs('Pitch radius of the pinion', [19]),
    efficiency: numberAs('Share that is not lost; left out: 0.8', [0.8], { least: 0.1, most: 1 }).optional(),
  }).optional(),
})

const namePhrase = "a name of letters, digits, '-' and '_', at most 64"

const wholeCount = (description: string, examples: readonly number[], most: number) =>
  numberAs(description, [...examples], { least: 1, most, whole: true })
const index = keyed('How the work is turned from slot to slot', {
  by: wordAs('Left out: a dividing head, or what is told of', ['dividing head', 'gear', 'plate']).optional(),
  ratio: wholeCount('Turns of the crank for one of the work; left out: 40', [40, 90], 1000).optional(),
  circles: z
    .array(wholeCount('Holes in a circle', [18, 49], 1000), { error: 'a list of hole counts: [15, 18, 20]' })
    .min(1, { error: 'one hole count or more: [18]' })
    .max(100, { error: 'a list of at most 100' })
    .optional()
    .meta({
      description: 'Circles of holes in its plates; left out: the usual three plates',
      examples: [[15, 18, 20]],
    }),
  gear: wholeCount('Teeth of a gear on the spindle', [48], 1000).optional(),
  plate: keyed('An index plate of one’s own', {
    radius: lengthAs('Radius of its holes', [60]),
    hole: lengthAs('How far a hole may be off its place; left out: 0.05 mm', [0.05], { zero: true }).optional(),
  }).optional(),
  eccentric: lengthAs('The bore off the axis that it is turned about', [0.02], { zero: true }).optional(),
  play: lengthAs('Play of the mating teeth or keys in their slots; left out: by the standard', [0.03]).optional(),
})

export const specSchema = keyed('One job: a bore, its feature, and what the shop has', {
  $schema: textAs('Names this schema for an editor', ['borewright.schema.json'], 'a path').optional(),
  name: z
    .string({ error: namePhrase })
    .regex(/^[A-Za-z0-9_-]{1,64}$/, { error: namePhrase })
    .meta({ description: `Names the output folder: ${namePhrase}`, examples: ['cider-mill-pulley'] }),
  units: wordAs('What a bare number is in', ['mm', 'in']),
  bore,
  hub: hub.nullable().optional(),
  feature,
  shaft: shaft.optional(),
  load: keyed('What the key must carry', {
    torque: quantityAs('Torque', ['90 N m', '800 lbf in'], torque, 'a torque: "90 N m", "800 lbf in", "66 lbf ft"'),
    service: numberAs('Service factor; left out: 1', [1.5], { least: 0.1, most: 20 }).optional(),
  }).optional(),
  use: textAs('What it is for; say so where a life may hang on it', ['belt pulley'], 'a few words').optional(),
  tooling: keyed('One or both; left out: both are worked out and compared', {
    bar: bar.nullable().optional(),
    press: press.nullable().optional(),
    index: index.optional(),
  })
    .nullable()
    .optional(),
  shop: z
    .union([textAs('Path of a shop file', ['shop.yaml'], 'a path'), shopSchema], {
      error: 'the path of a shop file, or what is on hand',
    })
    .optional()
    .meta({ description: 'What is on hand: the path of a shop file, from this one, or the lists themselves' }),
  drafting: keyed('How the drawings are made; left out: by the units', {
    convention: wordAs('Left out: iso in mm jobs, asme in inch jobs', ['iso', 'asme']).optional(),
    paper: wordAs('Left out: A4 in mm jobs, Letter in inch jobs', ['A4', 'Letter']).optional(),
    projection: wordAs('Angle of projection; left out: first in mm jobs, third in inch jobs', [
      'first',
      'third',
    ]).optional(),
    dual: flagAs('Whether the job card gives every length in the other unit too, small; left out: false').optional(),
  })
    .nullable()
    .optional(),
})
