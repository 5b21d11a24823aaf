import { isoSplineNamed, isoSplineNames, isoSplines } from '../standards/iso-14.ts'
import { saeProportions, saeSpline } from '../standards/sae-j499.ts'
import { figure } from './figures.ts'
import { nearest } from './near.ts'
import { readEvenAngles } from './read-angles.ts'
import { nominalBore } from './read-bore.ts'
import { present, type Reading } from './reading.ts'
import type { Spline } from './spec.ts'

const key = 'feature.spline'
/** A bore whose nominal size is as near as this to the standard's is that bore, mm. Judgement. */
const sameBore = 0.03

type Sized = Omit<Spline, 'kind' | 'corner' | 'at'>

/** The splines; `undefined` only with a complaint, here or from the schema. */
export function readSpline(reading: Reading): Spline | undefined {
  const written = reading.word(`${key}.standard`, ['iso-14', 'sae-j499'])
  if (reading.states(`${key}.standard`) && written === undefined) return undefined
  const standard = written ?? (reading.states(`${key}.size`) ? 'iso-14' : undefined)
  const sized = standard === 'iso-14' ? byIso(reading) : standard === 'sae-j499' ? bySae(reading) : byHand(reading)
  const corner = reading.limits(`${key}.corner`)
  const at = sized && readEvenAngles(reading, `${key}.at`, sized.count)
  return sized && at && present({ ...sized, kind: 'spline' as const, corner, at })
}

/** Complains of what does not go with a way of giving the sizes. */
function nothing(reading: Reading, names: readonly string[], why: string): void {
  for (const name of names)
    if (reading.states(`${key}.${name}`)) reading.complain(`${key}.${name}`, `nothing here: ${why}`)
}

function byIso(reading: Reading): Sized | undefined {
  nothing(
    reading,
    ['count', 'width', 'major'],
    'iso-14 has it in its size; or take standard and size out and give count, width and major by hand',
  )
  nothing(reading, ['fit'], 'fit A, B or C belongs to sae-j499; a hub of iso-14 is treated or not')
  const size = reading.text(`${key}.size`)
  const bore = nominalBore(reading)
  const row = size === undefined ? undefined : isoSplineNamed(size)
  if (row === undefined) {
    const here = bore === undefined ? [] : namesFor(bore)
    const accepted =
      here.length > 0
        ? `a size of iso-14 for this bore: ${here.join(', ')}`
        : `a size of iso-14: ${isoSplineNames()[0]}, for ${isoSplines.scope}; or count, width and major by hand`
    reading.complain(`${key}.size`, accepted, size === undefined ? undefined : nearest(size, isoSplineNames()))
    return undefined
  }
  if (bore !== undefined && Math.abs(bore - row.minor) > sameBore) {
    const here = namesFor(bore)
    reading.complain(
      `${key}.size`,
      `a spline whose minor diameter is the bore, ${figure(bore, reading.units)}: ${here.length > 0 ? here.join(', ') : 'iso-14 has none'}; this one is for a bore of ${row.minor} mm`,
    )
    return undefined
  }
  return present({
    standard: 'iso-14' as const,
    size: `${row.count}x${row.minor}x${row.major}`,
    treated: reading.raw(`${key}.treated`) === true ? true : undefined,
    count: row.count,
  })
}

/** Designations of the splines of iso-14 whose bore this is. */
const namesFor = (bore: number): readonly string[] =>
  isoSplines.rows.flatMap(({ minor }, n) => (Math.abs(minor - bore) <= sameBore ? (isoSplineNames()[n] ?? []) : []))

function bySae(reading: Reading): Sized | undefined {
  nothing(
    reading,
    ['width', 'major'],
    'sae-j499 has it from count, size and fit; or take the standard out and give count, width and major by hand',
  )
  nothing(reading, ['treated'], 'it belongs to iso-14')
  const counts = [...new Set(saeProportions.rows.map((row) => row.count))]
  const count = reading.number(`${key}.count`)
  const fit = reading.word(`${key}.fit`, ['A', 'B', 'C'])
  const major = reading.length(`${key}.size`)
  const bore = nominalBore(reading)
  if (count === undefined || !counts.some((one) => one === count)) {
    reading.complain(`${key}.count`, `${counts.slice(0, -1).join(', ')} or ${counts.at(-1)} splines, with sae-j499`)
    return undefined
  }
  if (fit === undefined) {
    if (!reading.states(`${key}.fit`))
      reading.complain(`${key}.fit`, 'A (permanent), B (sliding when not under load) or C (sliding under load)')
    return undefined
  }
  if (!saeProportions.rows.some((row) => row.count === count && row.fit === fit)) {
    reading.complain(`${key}.fit`, `A or B: sae-j499 has no fit ${fit} for ${count} splines`)
    return undefined
  }
  const row = major === undefined ? undefined : saeSpline({ count, fit, major })
  if (row === undefined || major === undefined) {
    reading.complain(`${key}.size`, `the major diameter, with sae-j499: "1-1/4 in"; it has ${saeProportions.scope}`)
    return undefined
  }
  if (bore !== undefined && Math.abs(bore - row.minor) > sameBore) {
    reading.complain(
      `${key}.size`,
      `a major diameter whose bore is ${figure(bore, reading.units)}: ${figure((bore / row.minor) * major, reading.units)}; this one is for a bore of ${figure(row.minor, reading.units)}`,
    )
    return undefined
  }
  return { standard: 'sae-j499', count, fit, major: [major, major] }
}

function byHand(reading: Reading): Sized | undefined {
  nothing(reading, ['fit', 'treated'], 'sizes by hand carry their own limits; or name a standard')
  const count = reading.number(`${key}.count`)
  const [width, major] = [reading.limits(`${key}.width`), reading.limits(`${key}.major`)]
  for (const name of ['count', 'width', 'major'] as const)
    if (!reading.states(`${key}.${name}`))
      reading.complain(`${key}.${name}`, 'count, width and major by hand; or size, and a standard')
  const bore = nominalBore(reading)
  if (width && bore !== undefined && width[1] >= bore) {
    reading.complain(`${key}.width`, 'a width smaller than the bore')
    return undefined
  }
  if (major && bore !== undefined && major[0] <= bore) {
    reading.complain(
      `${key}.major`,
      `a diameter over the floors that is larger than the bore, ${figure(bore, reading.units)}`,
    )
    return undefined
  }
  if (major && bore !== undefined && major[1] > 2 * bore) {
    reading.complain(`${key}.major`, 'a diameter over the floors of no more than two bores')
    return undefined
  }
  return count === undefined || !width || !major ? undefined : { count, width, major }
}
