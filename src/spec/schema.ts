import { z } from 'zod/mini'
import { angleAs, flagAs, keyed, lengthAs, maybe, numberAs, pairAs, quantityAs, textAs, told, wordAs } from './leaf.ts'
import { groove, limited, slit, socket, spline } from './feature-schema.ts'
import { area, force, stiffness, stress, torque } from './quantity.ts'
import { shopSchema } from './shop-schema.ts'
import { spindleHolds } from './spindle.ts'

/** The spec as written. One schema: what is read, what is complained of, and what editors show all come from it. */

const signed = () => lengthAs('A deviation from the nominal diameter', [0, '+0.0005 in'], { signed: true })
const relief = () =>
  keyed('Groove that the cut runs out into', {
    diameter: () => lengthAs('Diameter of the groove', [34]),
    length: () => lengthAs('Length of the groove along the bore', [9]),
  })

const bore = () =>
  keyed('The finished bore', {
    diameter: () => lengthAs('Nominal diameter', [24, '7/8 in']),
    measured: maybe(() => lengthAs('The finished bore as measured; depths follow from it', [24.012, '0.8753 in'])),
    tolerance: maybe(
      () =>
        z.union(
          [
            textAs('An ISO 286 class', ['H7'], 'an ISO 286 class'),
            pairAs('Deviations from the diameter, [lower, upper]', signed(), 'deviations: [lower, upper]'),
          ],
          { error: 'an ISO 286 class for holes: H7, or deviations: [lower, upper]' },
        ),
      { description: 'An ISO 286 class for holes, or deviations [lower, upper]; left out: H7', examples: ['H7'] },
    ),
    length: () => lengthAs('Length of the bore, which is the length of the cut', [38, '1-3/8 in']),
    chromed: maybe(() => flagAs('The bore is plated with hard chromium')),
    mouth: maybe(() => lengthAs('Chamfer at the mouth; left out: 0.5 mm or 0.02 in', [0.5], { zero: true })),
    blind: maybe(() =>
      keyed('Only where the bore is blind', {
        beyond: () => lengthAs('Room beyond the end of the keyway', [8], { zero: true }),
        relief: maybe(() => relief()),
      }),
    ),
  })

const materialPhrase = 'a material that is known: mild steel, grey iron'
const hub = () =>
  keyed('The part with the bore in it', {
    outside: maybe(() => lengthAs('Outside diameter', [62])),
    material: maybe(
      () =>
        z.union([z.string().check(z.minLength(1, { error: materialPhrase })), z.number()], { error: materialPhrase }),
      { description: 'Material; left out: mild steel', examples: ['mild steel', 'grey iron', 'brass', '1018'] },
    ),
    hardness: maybe(() => numberAs('Rockwell C, as measured', [28], { least: 0, most: 70 })),
  })

const metal = {
  material: maybe(() =>
    textAs('Metal; left out: E335', ['key steel', 'E335', '1018 cold drawn'], 'a metal: key steel'),
  ),
  yield: maybe(() =>
    quantityAs('Yield strength, instead of material', ['430 MPa'], stress, 'a stress: "430 MPa", "62 ksi"'),
  ),
}
const shaft = () =>
  keyed('The shaft', {
    ...metal,
    break: maybe(() =>
      lengthAs('How far the edges of the keyseat are broken; left out: 0.2 mm', [0.2], { zero: true }),
    ),
    diameter: maybe(() => limited('Diameter of the shaft; left out: h7', 24)),
    across: maybe(() => limited('Floor of the keyseat to the opposite side of the shaft; by hand', 20)),
  })

const fitPhrase = 'normal, tight or sliding (iso-773); class 1 or class 2 (asme-b17.1)'
const keyway = () =>
  keyed('A keyway: by a standard, or its sizes by hand', {
    standard: maybe(() =>
      wordAs('Left out and no sizes given: iso-773 in mm jobs, asme-b17.1 in inch jobs', ['iso-773', 'asme-b17.1']),
    ),
    form: maybe(() => wordAs('asme-b17.1 only; left out: square for bores up to 6-1/2 in', ['square', 'rectangular'])),
    fit: maybe(
      () =>
        z.union([z.enum(['normal', 'tight', 'sliding', 'class 1', 'class 2']), z.literal([1, 2])], {
          error: fitPhrase,
        }),
      {
        description: 'iso-773: normal, tight or sliding; asme-b17.1: class 1 or class 2. Left out: normal, class 1',
      },
    ),
    width: maybe(() => limited('Width of the slot by hand; with a standard, the width of the key', 8)),
    height: maybe(() => limited('Height of the key', 7)),
    across: maybe(() => limited('Floor of the slot to the opposite wall of the bore', 27.3)),
    depth: maybe(() =>
      keyed('Depth instead of across, one of the two', {
        crown: maybe(() => limited('From the crown of the bore', 3.3)),
        side: maybe(() => limited('Along the side wall of the slot', 4)),
      }),
    ),
    corner: maybe(() => limited('Corner radius that the slot may have', 0.2, true)),
    taper: maybe(() =>
      wordAs('For a taper key: how the floor falls along the bore; across is then that of the deep end', [
        '1:96',
        '1:100',
      ]),
    ),
    key: maybe(() =>
      keyed('The key that goes in', {
        ...metal,
        length: maybe(() => lengthAs('Length over all; left out: the hub’s', [36])),
        ends: maybe(() => wordAs('Left out: square', ['square', 'round'])),
        chamfer: maybe(() => limited('How far its long edges are broken', 0.3, true)),
        height: maybe(() => limited('Height of the key, in place of the standard’s', 6.9)),
      }),
    ),
    found: maybe(() =>
      keyed('What was measured once the keyway was cut', {
        offset: maybe(() => lengthAs('Its middle sideways of the bore’s', [0.05], { zero: true })),
        lead: maybe(() => lengthAs('Out of line with the bore’s axis, over its whole length', [0.02], { zero: true })),
      }),
    ),
    at: maybe(
      () =>
        z.union(
          [
            angleAs('Angle of the keyway', [0], -360, 360),
            z
              .array(angleAs('Angle of a keyway', [90], -360, 360), { error: 'a list of angles' })
              .check(z.minLength(1, { error: 'one to 36 angles' }), z.maxLength(36, { error: 'one to 36 angles' })),
          ],
          { error: 'an angle in degrees, or a list of them: [0, 90]' },
        ),
      { description: 'Angles of the keyways, degrees; left out: one, at 0', examples: [[0], [0, 90]] },
    ),
  })

const feature = () =>
  told(
    keyed('Exactly one', {
      keyway: maybe(() => z.nullable(keyway())),
      spline: maybe(() => spline()),
      socket: maybe(() => socket()),
      slit: maybe(() => slit()),
      groove: maybe(() => groove()),
    }),
    { description: 'Exactly one of these', minProperties: 1, maxProperties: 1 },
  )

const forcePhrase = 'a force: "20 kN", "4500 lbf", "2 ton" (a short ton, 2000 lbf)'
const chosen = 'left out: chosen'
const bar = () =>
  keyed('A cutter bar with a ground tool bit', {
    machine: maybe(() =>
      textAs(
        'lathe, mill, or the name of a machine of the shop; left out: lathe',
        ['lathe', 'mill', 'bench lathe'],
        'lathe, mill, or the name of a machine of the shop',
      ),
    ),
    form: maybe(() =>
      wordAs('How the bar holds its edge; left out: the first that works', [
        'end screw',
        'side screw',
        'inclined',
        'one piece',
      ]),
    ),
    incline: maybe(() => angleAs(`How far an inclined bit leans, its nose leading; ${chosen}`, [20], 5, 30)),
    stages: maybe(() =>
      numberAs('Most settings of the projection; left out: as few as reach', [1, 2], {
        least: 1,
        most: 12,
        whole: true,
      }),
    ),
    dial: maybe(() =>
      z.nullable(
        keyed('The dial that sets the depth', {
          mark: maybe(() => lengthAs('What one mark is; left out: 0.02 mm or 0.001 in', [0.02, '0.001 in'])),
          reads: maybe(() =>
            wordAs('Travel of the tool, or the change of diameter; left out: travel', ['travel', 'diameter']),
          ),
          slide: maybe(() =>
            angleAs(
              'A slide set over from the bed’s axis, whose dial it is; left out: square to it',
              [30, 5.74],
              0.5,
              90,
            ),
          ),
        }),
      ),
    ),
    give: maybe(() =>
      quantityAs(
        'Sideways stiffness, as measured at the holder',
        ['5000 N/mm'],
        stiffness,
        'a stiffness: "5000 N/mm", "28550 lbf/in"',
      ),
    ),
    pull: maybe(() =>
      keyed('Instead of give: a spring balance at the nose, the bar in place', {
        force: () => quantityAs('What the balance reads', ['100 N', '20 lbf'], force, forcePhrase),
        moves: () => lengthAs('How far the nose comes along', [0.065]),
      }),
    ),
    thrust: maybe(() =>
      quantityAs('The most that the machine may push along the bore', ['1100 N'], force, forcePhrase),
    ),
    travel: maybe(() => lengthAs('How far the machine strokes along the bore', [100, '4 in'])),
    handle: maybe(() =>
      keyed('What drives the stroke by hand', {
        radius: () => lengthAs('Radius of the handle', [200, '8 in']),
        travel: () => lengthAs('Stroke for one turn of it', [100, '4 in']),
      }),
    ),
    rack: maybe(() =>
      keyed('The rack that drives the stroke', {
        module: () => lengthAs('Module of its teeth (pitch over 3.1416)', [1.5]),
        width: () => lengthAs('Face width of its teeth', [12]),
      }),
    ),
    hold: maybe(() => wordAs('What keeps the spindle from turning; left out: lock', [...spindleHolds])),
    work: maybe(() =>
      keyed('What holds the work', {
        held: maybe(() => wordAs('In what', ['vise', 'chuck', 'strap'])),
        jaws: maybe(() => quantityAs('Force of one jaw', ['8 kN'], force, forcePhrase)),
        stop: maybe(() => quantityAs('What the stop or strap bears that takes the pull', ['4 kN'], force, forcePhrase)),
        support: maybe(() =>
          lengthAs('How far what it stands on reaches from the bore’s axis, under the keyway', [18]),
        ),
        clamp: maybe(() =>
          quantityAs(
            'Force of the clamp that holds it down, at the edge away from the cut',
            ['3 kN'],
            force,
            forcePhrase,
          ),
        ),
        above: maybe(() => lengthAs('How far it stands up above the jaws', [30])),
      }),
    ),
    behind: maybe(() => lengthAs('Room open behind the hub', [20], { zero: true })),
    opening: maybe(() => lengthAs('The hole behind the hub that the bar runs out into, across', [60])),
    points: maybe(() =>
      wordAs('Lathe: the nose points to the back or to the front; left out: back', ['back', 'front']),
    ),
    stroke: maybe(() => wordAs('The cut is pushed or pulled; left out: push', ['push', 'pull'])),
    clearance: maybe(() =>
      z.nullable(
        keyed('Gaps that the bar must keep; each left out: 0.25 mm', {
          back: maybe(() => lengthAs('Behind the bar, at the deepest cut', [0.25], { zero: true })),
          front: maybe(() => lengthAs('Before the bar', [0.25], { zero: true })),
          withdrawn: maybe(() => lengthAs('Nose to bore, drawn back', [0.25], { zero: true })),
        }),
      ),
    ),
    setting: maybe(() =>
      lengthAs('± with which the projection can be set; left out: 0.05 mm or 0.002 in', [0.05], {
        zero: true,
      }),
    ),
    nose: maybe(() =>
      z.nullable(
        keyed('The cutting nose', {
          width: maybe(() => lengthAs(`Width; ${chosen}`, [8])),
          cornerRadius: maybe(() => lengthAs(`Corner radius; ${chosen}`, [0.2], { zero: true })),
        }),
      ),
    ),
    rake: maybe(() => angleAs(`Rake; ${chosen} by the material`, [8], -10, 30)),
    diameter: maybe(() => lengthAs(`Diameter of the bar; ${chosen}`, [18])),
    projection: maybe(() => lengthAs(`Nose beyond the bar; ${chosen}`, [4.1])),
    bit: maybe(() =>
      keyed(`Tool-bit blank; ${chosen}`, {
        shape: maybe(() => wordAs('Left out: square', ['square', 'round'])),
        size: () => lengthAs('Side or diameter', [8, '1/4 in']),
      }),
    ),
    screw: maybe(() => textAs(`Set screw; ${chosen}`, ['M6', '#10-32'], 'a thread: "M6", "#10-32", "1/4-28"')),
    shank: maybe(() => lengthAs(`Diameter of the shank; ${chosen}`, [18])),
    infeed: maybe(() => lengthAs(`Infeed for each pass; ${chosen}`, [0.02])),
  })

const broach = () =>
  keyed('A push broach as measured; heights from its back', {
    toothWidth: () => lengthAs('Width over the teeth', [8.018]),
    bodyWidth: () => lengthAs('Width of the body', [7.98]),
    firstTooth: () => lengthAs('Height of the first tooth', [12.5]),
    lastTooth: () => lengthAs('Height of the last tooth', [14.4]),
    pilot: () => lengthAs('Height of the pilot', [12]),
    toothedLength: () => lengthAs('First tooth to last', [150]),
    teeth: () => numberAs('Number of teeth', [26], { least: 2, most: 500, whole: true }),
    overall: () => lengthAs('Length over all', [210]),
    pilotLength: () => lengthAs('Length of the pilot', [28]),
    shoulder: maybe(() => lengthAs('Height at which the body is wider than the teeth', [9])),
    finishingTeeth: maybe(() => numberAs('Teeth of the last height', [3], { least: 0, most: 100, whole: true })),
    heights: maybe(
      () =>
        z
          .array(lengthAs('Height of a tooth', [12.5]), { error: 'a list of heights: [12.5, 12.6]' })
          .check(z.minLength(2, { error: 'two to 500 heights' }), z.maxLength(500, { error: 'two to 500 heights' })),
      { description: 'Height of every tooth, first to last, where each was measured', examples: [[12.5, 12.6]] },
    ),
    faceAngle: maybe(() => angleAs('Angle of the teeth’s faces; left out: 10', [12], -5, 30)),
    gulletArea: maybe(() => quantityAs('Area of one gullet', ['8 mm2'], area, 'an area: "8 mm2", "0.012 in2"')),
    rootHeight: maybe(() => lengthAs('Height at the root of the first gullet', [10])),
    yield: maybe(() => quantityAs('Yield strength', ['2000 MPa'], stress, 'a stress: "2000 MPa", "290000 psi"')),
  })
const press = () =>
  keyed('A push broach in a slotted guide bushing', {
    broach: maybe(() => broach()),
    ram: maybe(() => wordAs('The ram runs true, or it wobbles; left out: guided', ['guided', 'loose'])),
    stroke: maybe(() => lengthAs('How far the ram goes', [250])),
    below: maybe(() => lengthAs('Room under the table for the broach to fall into', [200], { zero: true })),
    daylight: maybe(() => lengthAs('Table to ram, drawn back', [300])),
    opening: maybe(() => lengthAs('The hole in the table or plate, across', [60])),
    force: maybe(() => quantityAs('What the press gives', ['20 kN', '2 ton'], force, forcePhrase)),
    lever: maybe(() =>
      keyed('Instead of force: a hand press', {
        pull: () => quantityAs('Pull on the lever', ['300 N', '75 lbf'], force, forcePhrase),
        length: () => lengthAs('Length of the lever', [400]),
        pinion: () => lengthAs('Pitch radius of the pinion', [19]),
        efficiency: maybe(() => numberAs('Share that is not lost; left out: 0.8', [0.8], { least: 0.1, most: 1 })),
      }),
    ),
  })

const namePhrase = "a name of letters, digits, '-' and '_', at most 64"

const wholeCount = (description: string, examples: readonly number[], most: number) =>
  numberAs(description, [...examples], { least: 1, most, whole: true })
const index = () =>
  keyed('How the work is turned from slot to slot', {
    by: maybe(() => wordAs('Left out: a dividing head, or what is told of', ['dividing head', 'gear', 'plate'])),
    ratio: maybe(() => wholeCount('Turns of the crank for one of the work; left out: 40', [40, 90], 1000)),
    circles: maybe(
      () =>
        z
          .array(wholeCount('Holes in a circle', [18, 49], 1000), { error: 'a list of hole counts: [15, 18, 20]' })
          .check(
            z.minLength(1, { error: 'one hole count or more: [18]' }),
            z.maxLength(100, { error: 'a list of at most 100' }),
          ),
      {
        description: 'Circles of holes in its plates; left out: the usual three plates',
        examples: [[15, 18, 20]],
      },
    ),
    gear: maybe(() => wholeCount('Teeth of a gear on the spindle', [48], 1000)),
    plate: maybe(() =>
      keyed('An index plate of one’s own', {
        radius: () => lengthAs('Radius of its holes', [60]),
        hole: maybe(() => lengthAs('How far a hole may be off its place; left out: 0.05 mm', [0.05], { zero: true })),
      }),
    ),
    eccentric: maybe(() => lengthAs('The bore off the axis that it is turned about', [0.02], { zero: true })),
    play: maybe(() => lengthAs('Play of the mating teeth or keys in their slots; left out: by the standard', [0.03])),
  })

export const specSchema = keyed('One job: a bore, its feature, and what the shop has', {
  $schema: maybe(() => textAs('Names this schema for an editor', ['borewright.schema.json'], 'a path')),
  name: () =>
    told(z.string({ error: namePhrase }).check(z.regex(/^[A-Za-z0-9_-]{1,64}$/, { error: namePhrase })), {
      description: `Names the output folder: ${namePhrase}`,
      examples: ['cider-mill-pulley'],
    }),
  units: () => wordAs('What a bare number is in', ['mm', 'in']),
  bore,
  hub: maybe(() => z.nullable(hub())),
  feature,
  shaft: maybe(() => shaft()),
  load: maybe(() =>
    keyed('What the key must carry', {
      torque: () =>
        quantityAs('Torque', ['90 N m', '800 lbf in'], torque, 'a torque: "90 N m", "800 lbf in", "66 lbf ft"'),
      service: maybe(() => numberAs('Service factor; left out: 1', [1.5], { least: 0.1, most: 20 })),
    }),
  ),
  use: maybe(() => textAs('What it is for; say so where a life may hang on it', ['belt pulley'], 'a few words')),
  tooling: maybe(() =>
    z.nullable(
      keyed('One or both; left out: both are worked out and compared', {
        bar: maybe(() => z.nullable(bar())),
        press: maybe(() => z.nullable(press())),
        index: maybe(() => index()),
      }),
    ),
  ),
  shop: maybe(
    () =>
      z.union([textAs('Path of a shop file', ['shop.yaml'], 'a path'), shopSchema()], {
        error: 'the path of a shop file, or what is on hand',
      }),
    { description: 'What is on hand: the path of a shop file, from this one, or the lists themselves' },
  ),
  drafting: maybe(() =>
    z.nullable(
      keyed('How the drawings are made; left out: by the units', {
        convention: maybe(() => wordAs('Left out: iso in mm jobs, asme in inch jobs', ['iso', 'asme'])),
        paper: maybe(() => wordAs('Left out: A4 in mm jobs, Letter in inch jobs', ['A4', 'Letter'])),
        projection: maybe(() =>
          wordAs('Angle of projection; left out: first in mm jobs, third in inch jobs', ['first', 'third']),
        ),
        dual: maybe(() =>
          flagAs('Whether the job card gives every length in the other unit too, small; left out: false'),
        ),
      }),
    ),
  ),
})
