import { isMapping } from './place.ts'
import { readGroove } from './read-groove.ts'
import { readKeyway } from './read-keyway.ts'
import type { Reading } from './reading.ts'
import { readSlit } from './read-slit.ts'
import { readSocket } from './read-socket.ts'
import { readSpline } from './read-spline.ts'
import type { Feature } from './spec.ts'

const readers = {
  keyway: readKeyway,
  spline: readSpline,
  socket: readSocket,
  slit: readSlit,
  groove: readGroove,
} as const satisfies Record<Feature['kind'], (reading: Reading) => Feature | undefined>

const kinds = Object.keys(readers) as readonly Feature['kind'][]

/** What a push broach cannot cut, and why the bar alone can. */
const barOnly: Readonly<Partial<Record<Feature['kind'], string>>> = {
  socket: 'a keyway broach has no V: a socket is cut with the bar',
  slit: 'a broach’s bushing would fall apart with the work: a slit is cut with the bar',
  groove: 'a keyway broach cuts a flat floor: an oil groove is cut with the bar',
}

/** Whether a push broach can cut it: keyways, and splines slot by slot. */
export const byBroach = (kind: Feature['kind']): boolean => !Object.hasOwn(barOnly, kind)

/** The feature; `undefined` only with a complaint, here or from the schema. */
export function readFeature(reading: Reading): Feature | undefined {
  const feature = reading.raw('feature')
  if (!isMapping(feature)) return undefined
  const named = kinds.filter((kind) => Object.hasOwn(feature, kind) && feature[kind] !== undefined)
  const [kind] = named
  if (kind === undefined || named.length !== 1) {
    reading.complain('feature', `exactly one feature: ${kinds.slice(0, -1).join(', ')} or ${kinds.at(-1)}`)
    return undefined
  }
  const why = barOnly[kind]
  if (why && reading.states('tooling.press')) reading.complain('tooling.press', `nothing here: ${why}`)
  if ((kind === 'socket' || kind === 'groove') && reading.raw('tooling.bar.form') === 'one piece')
    reading.complain('tooling.bar.form', 'a bar with a bit: one of one piece has a flat edge, no V and no round')
  return readers[kind](reading)
}
