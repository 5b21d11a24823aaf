import { inch } from '../standards/inch.ts'
import { threadNamed, threadNames } from '../standards/threads.ts'
import { readAngle } from './length.ts'
import { nearest } from './near.ts'
import { isMapping } from './place.ts'
import { area, force, stiffness, stress } from './quantity.ts'
import { present, type Reading } from './reading.ts'
import type { BarSpec, Broach, PressSpec, Spec } from './spec.ts'

/** Gap that a bar keeps behind, before and drawn back, where none is stated, mm. Judgement. */
const clearance = 0.25
/** Share of a hand press's pull that arrives, where none is stated. From memory (workshop texts). */
const efficiency = 0.8

/** The tooling asked for; both where none is named. */
export function readTooling(reading: Reading): Spec['tooling'] {
  const tooling = reading.raw('tooling')
  const asked = (name: string): boolean => isMapping(tooling) && Object.hasOwn(tooling, name)
  const both = !asked('bar') && !asked('press')
  return {
    ...((both || asked('bar')) && { bar: readBar(reading) }),
    ...((both || asked('press')) && { press: readPress(reading) }),
  }
}

function readBar(reading: Reading): BarSpec {
  const at = 'tooling.bar'
  const size = (name: string): number | undefined => reading.length(`${at}.${name}`)
  const either = (mm: number, inches: number): number => (reading.units === 'mm' ? mm : inches * inch)
  const bit = size('bit.size')
  return present({
    machine: reading.word(`${at}.machine`, ['mill']) ?? ('lathe' as const),
    dial: {
      mark: size('dial.mark') ?? either(0.02, 0.001),
      reads: reading.word(`${at}.dial.reads`, ['diameter']) ?? ('travel' as const),
    },
    give: reading.quantity(`${at}.give`, stiffness),
    behind: size('behind'),
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
    const [first, last] = [threadNames[0], threadNames.at(-1)]
    reading.complain(
      path,
      `a thread that is known, ${first} to ${last}: "M6", "#10-32", "1/4-28"`,
      nearest(written, threadNames),
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
  const may = {
    shoulder: size('shoulder'),
    finishingTeeth: reading.number(`${at}.finishingTeeth`),
    gulletArea: reading.quantity(`${at}.gulletArea`, area),
    rootHeight: size('rootHeight'),
    yield: reading.quantity(`${at}.yield`, stress),
  }
  return { ...must, ...present(may) }
}

const complete = <Keys extends string>(fields: Record<Keys, number | undefined>): fields is Record<Keys, number> =>
  Object.values(fields).every((value) => value !== undefined)
