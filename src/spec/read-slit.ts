import { figure } from './figures.ts'
import { readEvenAngles } from './read-angles.ts'
import { nominalBore } from './read-bore.ts'
import type { Reading } from './reading.ts'
import type { Slit } from './spec.ts'

const key = 'feature.slit'
/** Thicker walls are sawn. Judgement. */
const mostBores = 4

/** The slits; `undefined` only with a complaint, here or from the schema. */
export function readSlit(reading: Reading): Slit | undefined {
  const width = reading.limits(`${key}.width`)
  const count = reading.number(`${key}.count`) ?? 1
  const own = reading.states(`${key}.outside`)
  const outside = reading.length(own ? `${key}.outside` : 'hub.outside')
  const bore = nominalBore(reading)
  if (!own && !reading.states('hub.outside'))
    reading.complain(`${key}.outside`, 'the outside that the slits run out through, here or as hub.outside')
  if (own && outside !== undefined && bore !== undefined && outside <= bore) {
    reading.complain(`${key}.outside`, `an outside wider than the bore, ${figure(bore, reading.units)}`)
    return undefined
  }
  // A hub may be any size; what is sawn through by hand may not.
  if (outside !== undefined && bore !== undefined && outside > mostBores * bore) {
    reading.complain(
      own ? `${key}.outside` : 'hub.outside',
      `with slits: an outside of no more than ${mostBores} bores`,
    )
    return undefined
  }
  const hub = reading.length('hub.outside')
  if (own && outside !== undefined && hub !== undefined && outside > hub)
    reading.complain(`${key}.outside`, `an outside no wider than the hub’s, ${figure(hub, reading.units)}`)
  if (width && bore !== undefined && width[1] >= bore / 2) {
    reading.complain(`${key}.width`, 'a slit narrower than half the bore')
    return undefined
  }
  const at = readEvenAngles(reading, `${key}.at`, count)
  return !width || outside === undefined || outside === 0 || !at ? undefined : { kind: 'slit', width, outside, at }
}
