/** The key that goes in and the shaft that it drives, as far as they are told. */
import { keySteel, keySteelNames } from '../standards/key-steels.ts'
import { barMaterial } from '../standards/materials.ts'
import { workMaterial, workMaterialNames } from '../standards/materials.ts'
import { nearest } from './near.ts'
import { stress } from './quantity.ts'
import { nominalBore } from './read-bore.ts'
import { present, type Reading } from './reading.ts'
import type { KeySpec, Keyway, Metal, ShaftSpec } from './spec.ts'

const key = 'feature.keyway.key'

/** A metal by its name, or by its yield alone; `undefined` where neither is told, or with a complaint. */
function readMetal(reading: Reading, at: string): Metal | undefined {
  const named = reading.text(`${at}.material`)
  const strength = reading.quantity(`${at}.yield`, stress)
  if (named !== undefined && reading.states(`${at}.yield`))
    reading.complain(`${at}.yield`, 'material or yield, one of the two')
  if (named === undefined || named === '') return strength === undefined ? undefined : { yield: strength }
  const steel = keySteel(named) ?? barMaterial(named)
  if (steel) return { name: steel.name, yield: steel.yield }
  const work = workMaterial(named)
  if (work?.strength) return present({ name: work.name, yield: work.strength.yield, tensile: work.strength.tensile })
  const known = [...keySteelNames, ...workMaterialNames]
  reading.complain(
    `${at}.material`,
    'a metal that is known: key steel, E335, 1018 cold drawn, 1045 cold drawn, mild steel; or give yield instead',
    nearest(named, known),
  )
  return undefined
}

/** The key of a keyway. */
export function readKey(reading: Reading): KeySpec | undefined {
  if (!reading.states(key)) return undefined
  if (reading.states(`${key}.height`) && reading.states('feature.keyway.height'))
    reading.complain(`${key}.height`, 'the height of the key once: here, or as feature.keyway.height')
  return present({
    metal: readMetal(reading, key),
    length: reading.length(`${key}.length`),
    ends: reading.word(`${key}.ends`, ['round']) ?? ('square' as const),
    chamfer: reading.limits(`${key}.chamfer`),
    height: reading.limits(`${key}.height`),
  })
}

/** What was found on the keyway once it was cut. */
export function readFound(reading: Reading): Keyway['found'] {
  const at = 'feature.keyway.found'
  const found = present({ offset: reading.length(`${at}.offset`), lead: reading.length(`${at}.lead`) })
  return Object.keys(found).length > 0 ? found : undefined
}

/** The shaft. */
export function readShaft(reading: Reading): ShaftSpec | undefined {
  if (!reading.states('shaft')) return undefined
  const bore = nominalBore(reading)
  const diameter = reading.limits('shaft.diameter')
  if (diameter && bore !== undefined && Math.abs(diameter[1] - bore) > 1)
    reading.complain('shaft.diameter', 'within 1 mm of the bore: shaft and hub are one fit')
  const across = reading.limits('shaft.across')
  if (across && bore !== undefined && across[1] >= bore)
    reading.complain('shaft.across', 'from the keyseat’s floor to the opposite side, less than the shaft')
  return present({
    metal: readMetal(reading, 'shaft'),
    edgeBreak: reading.length('shaft.break'),
    diameter,
    across,
  })
}
