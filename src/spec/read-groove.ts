import { readAngles } from './read-angles.ts'
import { nominalBore } from './read-bore.ts'
import type { Reading } from './reading.ts'
import type { Groove } from './spec.ts'

const key = 'feature.groove'

/** The oil groove; `undefined` only with a complaint, here or from the schema. */
export function readGroove(reading: Reading): Groove | undefined {
  const radius = reading.length(`${key}.radius`)
  const depth = reading.limits(`${key}.depth`)
  const at = readAngles(reading, `${key}.at`)
  const bore = nominalBore(reading)
  for (const name of ['width', 'cornerRadius'])
    if (reading.states(`tooling.bar.nose.${name}`))
      reading.complain(`tooling.bar.nose.${name}`, `nothing here: the nose’s round is ${key}.radius`)
  if (radius !== undefined && bore !== undefined && radius > bore / 4) {
    reading.complain(`${key}.radius`, 'a radius of no more than a quarter of the bore')
    return undefined
  }
  if (depth && bore !== undefined && depth[1] > bore / 2) {
    reading.complain(`${key}.depth`, 'a depth of no more than half the bore')
    return undefined
  }
  return radius === undefined || radius === 0 || !depth || !at ? undefined : { kind: 'groove', radius, depth, at }
}
