import { readEvenAngles } from './read-angles.ts'
import { nominalBore } from './read-bore.ts'
import type { Reading } from './reading.ts'
import type { Socket } from './spec.ts'

const key = 'feature.socket'

/** The socket; `undefined` only with a complaint, here or from the schema. */
export function readSocket(reading: Reading): Socket | undefined {
  const sides = reading.number(`${key}.sides`)
  const across = reading.limits(`${key}.across`)
  const tip = reading.length(`${key}.tip`) ?? 0
  const bore = nominalBore(reading)
  if (reading.states('tooling.bar.nose.cornerRadius'))
    reading.complain('tooling.bar.nose.cornerRadius', `nothing here: the V’s tip is ${key}.tip`)
  if (across && bore !== undefined && (across[1] < bore / 2 || across[1] > 2 * bore)) {
    reading.complain(
      `${key}.across`,
      'a size across flats that the bore goes with: the bore is no smaller than it, and smaller than across corners',
    )
    return undefined
  }
  if (across && bore !== undefined && tip > bore / 8) {
    reading.complain(`${key}.tip`, 'a tip radius of no more than an eighth of the bore')
    return undefined
  }
  const at = sides === undefined ? undefined : readEvenAngles(reading, `${key}.at`, sides)
  return sides === undefined || !across || !at ? undefined : { kind: 'socket', sides, across, tip, at }
}
