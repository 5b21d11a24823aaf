import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { parse } from 'yaml'
import { type Design, design, sizesOf } from '../../src/design.ts'
import { readSpec } from '../../src/spec/read.ts'
import { eightBroach } from '../dimensions/broaches.ts'

const specimens = join(import.meta.dirname, '../specimens')

/** The design of a document; throws what the reader complains of. */
export const designed = (document: unknown): Design => {
  const read = readSpec(document)
  if ('complaints' in read) throw new Error(JSON.stringify(read.complaints))
  return design(read.spec)
}

/** As `designed`, without the judging, which no part looks at. */
const sized = (document: unknown): Design => {
  const read = readSpec(document)
  if ('complaints' in read) throw new Error(JSON.stringify(read.complaints))
  return { ...sizesOf(read.spec), findings: [], verdict: 'pass' }
}

/** A specimen by its name. */
export const specimen = (name: string): Design => designed(parse(readFileSync(join(specimens, `${name}.yaml`), 'utf8')))

/** Names of all specimens that can be read. */
export const specimenNames: readonly string[] = readdirSync(specimens)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => name.slice(0, -'.yaml'.length))
  .filter((name) => {
    try {
      specimen(name)
      return true
    } catch {
      return false
    }
  })

/** A broach to go with a keyway `width` wide in a bore, as such broaches are proportioned; invented. */
const broachFor = (bore: number, width: number, rise: number) => ({
  toothWidth: round(width * 1.002),
  bodyWidth: round(width * 0.998),
  firstTooth: round(bore * 0.52),
  lastTooth: round(bore * 0.52 + rise),
  pilot: round(bore * 0.5),
  teeth: 24,
  toothedLength: round(width * 18),
  overall: round(width * 26),
  pilotLength: round(width * 4),
})

const round = (value: number): number => Math.round(value * 1e4) / 1e4

/** Jobs over the whole range in either unit, with a bar and mostly a broach. Not all can be made; all have a design. */
export const jobs: fc.Arbitrary<Design> = fc
  .record({
    units: fc.constantFrom('mm' as const, 'in' as const),
    bore: fc.integer({ min: 7, max: 100 }),
    sixteenths: fc.integer({ min: 6, max: 64 }),
    hub: fc.double({ min: 0.6, max: 2.5, noNaN: true }),
    rise: fc.double({ min: 0.04, max: 0.12, noNaN: true }),
    broach: fc.boolean(),
    machine: fc.constantFrom('lathe', 'mill'),
    shape: fc.constantFrom(undefined, 'square', 'round'),
  })
  .map(({ units, bore, sixteenths, hub, rise, broach, machine, shape }) => {
    const diameter = units === 'mm' ? bore : sixteenths / 16
    const base = {
      name: 'any-job',
      units,
      bore: {
        diameter,
        length:
          units === 'mm' ? Math.max(5, Math.round(diameter * hub)) : Math.max(0.25, Math.round(diameter * hub * 8) / 8),
      },
      feature: { keyway: units === 'mm' ? { standard: 'iso-773' } : { standard: 'asme-b17.1', form: 'square' } },
      drafting: units === 'mm' ? { convention: 'iso' } : { convention: 'asme' },
    }
    const width = sized(base).section.width / (units === 'mm' ? 1 : 25.4)
    return sized({
      ...base,
      tooling: {
        bar: {
          machine,
          ...(shape
            ? {
                bit: {
                  shape,
                  size: units === 'mm' ? Math.max(2, Math.round(width)) : Math.max(0.125, Math.round(width * 16) / 16),
                },
              }
            : {}),
        },
        ...(broach ? { press: { broach: broachFor(diameter, width, diameter * rise) } } : {}),
      },
    })
  })

/** Bars of one piece: no specimen needs one. */
const onePiece: readonly Design[] = [
  { units: 'mm', bore: { diameter: 7, length: 10 }, stroke: 'push' },
  { units: 'mm', bore: { diameter: 40, length: 60 }, stroke: 'pull' },
  { units: 'in', bore: { diameter: 0.375, length: 0.5 }, stroke: 'pull' },
  { units: 'in', bore: { diameter: 1, length: 1.5 }, stroke: 'push' },
].map(({ units, bore, stroke }) =>
  sized({
    name: 'one-piece',
    units,
    bore,
    feature: {
      keyway: units === 'mm' ? { standard: 'iso-773' } : { standard: 'asme-b17.1', form: 'square' },
    },
    tooling: { bar: { form: 'one piece', stroke } },
  }),
)

/** Bars that no specimen asks for: the screw in the wall, leaning bits for blind bores, several settings. */
export const otherBars: readonly Design[] = [
  {
    name: 'mangle-roller',
    units: 'mm',
    bore: { diameter: 30, length: 36, blind: { beyond: 12, relief: { diameter: 40, length: 12 } } },
    hub: { outside: 70, material: 'mild steel' },
    feature: { keyway: { standard: 'iso-773' } },
    tooling: { bar: { form: 'inclined', incline: 20, machine: 'mill' } },
  },
  {
    name: 'valve-spindle-cap',
    units: 'mm',
    bore: {
      diameter: 17.4,
      tolerance: [0, 0.05],
      length: 22,
      blind: { beyond: 12, relief: { diameter: 26, length: 12 } },
    },
    hub: { outside: 45, material: 'grey iron' },
    feature: { socket: { sides: 4, across: [16, 16.1], tip: 0.2 } },
    tooling: { bar: { form: 'inclined', incline: 15 } },
  },
  {
    name: 'butter-press-nut',
    units: 'in',
    bore: { diameter: 0.875, length: 1.25, blind: { beyond: 0.5, relief: { diameter: 1.25, length: 0.5 } } },
    hub: { outside: 2.5, material: 'mild steel' },
    feature: { keyway: { standard: 'asme-b17.1', form: 'square' } },
    tooling: { bar: { form: 'side screw' } },
  },
  {
    name: 'grease-collar',
    units: 'mm',
    bore: { diameter: 24, length: 30 },
    hub: { outside: 40, material: 'bronze' },
    feature: { groove: { radius: 1, depth: [0.8, 1] } },
    tooling: { bar: { form: 'side screw', behind: 30 } },
  },
  {
    name: 'hoist-drum',
    units: 'mm',
    bore: { diameter: 25, length: 40 },
    hub: { outside: 60, material: 'mild steel' },
    feature: { keyway: { standard: 'iso-773' } },
    tooling: { bar: { diameter: 22, behind: 40 } },
  },
].map(sized)

/** A press with keyways that must be found again. */
const keyedAgain: readonly Design[] = [
  { name: 'chain-wheel', at: [0, 90] },
  { name: 'brick-press-cam', at: [30, 150, 270] },
]
  .map(({ name, at }) => ({
    name,
    units: 'mm',
    bore: { diameter: 25, length: 40 },
    hub: { outside: 70, material: 'mild steel' },
    feature: { keyway: { standard: 'iso-773', at } },
    tooling: {
      press: {
        broach: eightBroach,
      },
    },
  }))
  .map(sized)

/** The specimens, bars of other kinds, a press with keyways to find again, and sixty jobs drawn once. */
export const everyDesign: readonly Design[] = [
  ...specimenNames.map(specimen),
  ...onePiece,
  ...otherBars,
  ...fc.sample(jobs, { numRuns: 60, seed: 24 }),
  ...keyedAgain,
]
