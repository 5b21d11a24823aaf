import { inch } from '../standards/inch.ts'
import { threadNamed, threadNames } from '../standards/threads.ts'
import { figure } from './figures.ts'
import { readAngle } from './length.ts'
import { nearest } from './near.ts'
import { isMapping, plainLine } from './place.ts'
import { area, force, stiffness, stress } from './quantity.ts'
import { nominalBore } from './read-bore.ts'
import { readDriven } from './read-driven.ts'
import { readIndex } from './read-index.ts'
import { present, type Reading } from './reading.ts'
import type { Machine, Shop } from './shop.ts'
import type { BarSpec, Broach, PressSpec, Spec } from './spec.ts'

/** Gap that a bar keeps behind, before and drawn back, where none is stated, mm. Judgement. */
const clearance = 0.25
/** Share of a hand press's pull that arrives, where none is stated. From memory (workshop texts). */
const efficiency = 0.8
/** A slot is no deeper than its bore; more passes than this nobody counts. Judgement. */
const mostPasses = 20_000

/** The tooling asked for; both where none is named. `shop`: whose machines the bar may name, once it is read. */
export function readTooling(reading: Reading, shop: Shop | undefined): Spec['tooling'] {
  const tooling = reading.raw('tooling')
  const asked = (name: string): boolean => isMapping(tooling) && Object.hasOwn(tooling, name)
  const both = !asked('bar') && !asked('press')
  return {
    ...((both || asked('bar')) && { bar: readBar(reading, shop) }),
    ...((both || asked('press')) && { press: readPress(reading) }),
    ...present({ index: readIndex(reading) }),
  }
}

/** The kind of machine that is named, and the machine itself where it is one of the shop's. */
function readMachine(
  reading: Reading,
  shop: Shop | undefined,
): { readonly machine: BarSpec['machine']; readonly onHand?: Machine } {
  const path = 'tooling.bar.machine'
  const written = plainLine(reading.text(path) ?? 'lathe')
  if (written === 'lathe' || written === 'mill') return { machine: written }
  const machines = (shop?.machines ?? []).filter(({ kind }) => kind !== 'press')
  const onHand = machines.find(({ name }) => name === written)
  if (onHand && onHand.kind !== 'press') return { machine: onHand.kind, onHand }
  const names = ['lathe', 'mill', ...machines.map(({ name }) => name)]
  // Where the shop itself cannot be read, it is not known whose name this is.
  if (shop) reading.complain(path, `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`, nearest(written, names))
  return { machine: 'lathe' }
}

function readBar(reading: Reading, shop: Shop | undefined): BarSpec {
  const at = 'tooling.bar'
  const size = (name: string): number | undefined => reading.length(`${at}.${name}`)
  const either = (mm: number, inches: number): number => (reading.units === 'mm' ? mm : inches * inch)
  const bit = size('bit.size')
  const { machine, onHand } = readMachine(reading, shop)
  const least = Math.max(0.001, (nominalBore(reading) ?? 0) / mostPasses)
  if ((size('infeed') ?? least) < least)
    reading.complain(
      `${at}.infeed`,
      `an infeed of at least ${figure(least, reading.units, { fit: true, lean: 'up' })} in this bore`,
    )
  return present({
    machine,
    onHand,
    form: reading.word(`${at}.form`, ['end screw', 'side screw', 'inclined', 'one piece']),
    incline: readAngle(reading.raw(`${at}.incline`)),
    stages: reading.number(`${at}.stages`),
    dial: {
      mark: size('dial.mark') ?? onHand?.dial?.mark ?? either(0.02, 0.001),
      reads: reading.word(`${at}.dial.reads`, ['diameter', 'travel']) ?? onHand?.dial?.reads ?? ('travel' as const),
      ...present({ slide: readAngle(reading.raw(`${at}.dial.slide`)) }),
    },
    give: reading.quantity(`${at}.give`, stiffness) ?? onHand?.give,
    ...readDriven(reading, onHand),
    behind: size('behind'),
    opening: size('opening'),
    points: reading.word(`${at}.points`, ['front']) ?? ('back' as const),
    stroke: reading.word(`${at}.stroke`, ['pull']) ?? ('push' as const),
    clearance: {
      back: size('clearance.back') ?? clearance,
      front: size('clearance.front') ?? clearance,
      withdrawn: size('clearance.withdrawn') ?? clearance,
    },
    setting: size('setting') ?? either(0.05, 0.002),
    nose: present({ width: size('nose.width'), cornerRadius: size('nose.cornerRadius') }),
    rake: readAngle(reading.raw(`${at}.rake`)),
    diameter: size('diameter'),
    projection: size('projection'),
    bit:
      bit === undefined
        ? undefined
        : { shape: reading.word(`${at}.bit.shape`, ['round']) ?? ('square' as const), size: bit },
    screw: readThread(reading, `${at}.screw`),
    shank: size('shank'),
    infeed: size('infeed'),
  })
}

/** The name of the thread at a path; complains of a thread that is not known. */
export function readThread(reading: Reading, path: string): string | undefined {
  const written = reading.text(path)
  if (written === undefined || written === '') return undefined
  const thread = threadNamed(written)
  if (thread === undefined) {
    const [first, last] = [threadNames()[0], threadNames().at(-1)]
    reading.complain(
      path,
      `a thread that is known, ${first} to ${last}: "M6", "#10-32", "1/4-28"`,
      nearest(written, threadNames()),
    )
  }
  return thread?.name
}

function readPress(reading: Reading): PressSpec {
  const at = 'tooling.press'
  if (reading.states(`${at}.force`) && reading.states(`${at}.lever`))
    reading.complain(`${at}.lever`, 'force or lever, one of the two')
  const pull = reading.quantity(`${at}.lever.pull`, force)
  const [length, pinion] = [reading.length(`${at}.lever.length`), reading.length(`${at}.lever.pinion`)]
  const share = reading.number(`${at}.lever.efficiency`) ?? efficiency
  return present({
    broach: readBroach(reading),
    ram: reading.word(`${at}.ram`, ['guided', 'loose']),
    stroke: reading.length(`${at}.stroke`),
    below: reading.length(`${at}.below`),
    daylight: reading.length(`${at}.daylight`),
    opening: reading.length(`${at}.opening`),
    force: reading.quantity(`${at}.force`, force),
    lever:
      pull === undefined || length === undefined || pinion === undefined
        ? undefined
        : { pull, length, pinion, efficiency: share },
  })
}

function readBroach(reading: Reading): Broach | undefined {
  const at = 'tooling.press.broach'
  if (!isMapping(reading.raw(at))) return undefined
  const size = (name: string): number | undefined => reading.length(`${at}.${name}`)
  const [firstTooth, lastTooth, toothedLength, overall] = ['firstTooth', 'lastTooth', 'toothedLength', 'overall'].map(
    size,
  )
  if (firstTooth !== undefined && lastTooth !== undefined && lastTooth <= firstTooth)
    reading.complain(`${at}.lastTooth`, 'a last tooth higher than the first')
  if (toothedLength !== undefined && overall !== undefined && toothedLength >= overall)
    reading.complain(`${at}.overall`, 'a length over all that is longer than the toothed length')
  const must = {
    toothWidth: size('toothWidth'),
    bodyWidth: size('bodyWidth'),
    firstTooth,
    lastTooth,
    pilot: size('pilot'),
    toothedLength,
    teeth: reading.number(`${at}.teeth`),
    overall,
    pilotLength: size('pilotLength'),
  }
  if (!complete(must)) return undefined
  const finishingTeeth = reading.number(`${at}.finishingTeeth`)
  if (finishingTeeth !== undefined && finishingTeeth >= must.teeth)
    reading.complain(`${at}.finishingTeeth`, `fewer than the ${must.teeth} teeth: those before them do the cutting`)
  const may = {
    shoulder: size('shoulder'),
    finishingTeeth,
    heights: readHeights(reading, must),
    faceAngle: readAngle(reading.raw(`${at}.faceAngle`)),
    gulletArea: reading.quantity(`${at}.gulletArea`, area),
    rootHeight: size('rootHeight'),
    yield: reading.quantity(`${at}.yield`, stress),
  }
  return { ...must, ...present(may) }
}

/** Every tooth as measured; they agree with what is said of the first, the last and their number. */
function readHeights(reading: Reading, broach: Pick<Broach, 'firstTooth' | 'lastTooth' | 'teeth'>): Broach['heights'] {
  const at = 'tooling.press.broach.heights'
  const written = reading.raw(at)
  if (!Array.isArray(written)) return undefined
  const heights = written.flatMap((_, n) => reading.length(`${at}[${n}]`) ?? [])
  if (heights.length !== written.length) return undefined
  const alike = (one: number | undefined, other: number): boolean => Math.abs((one ?? 0) - other) < 0.0005
  const sorted = heights.every((height, n) => n === 0 || height >= (heights[n - 1] ?? 0) - 0.02)
  if (heights.length !== broach.teeth) reading.complain(at, `a height of every one of the ${broach.teeth} teeth`)
  else if (!alike(heights[0], broach.firstTooth) || !alike(Math.max(...heights), broach.lastTooth))
    reading.complain(at, 'heights whose first and highest are firstTooth and lastTooth')
  else if (!sorted) reading.complain(at, 'heights that rise from the pilot to the end')
  return heights
}

const complete = <Keys extends string>(fields: Record<Keys, number | undefined>): fields is Record<Keys, number> =>
  Object.values(fields).every((value) => value !== undefined)
