import { limitsOf } from '../fits/iso-286.ts'
import { type Size, withDeviations } from '../fits/size.ts'
import { inch } from '../standards/inch.ts'
import { workMaterial, workMaterialNames } from '../standards/materials.ts'
import { figure } from './figures.ts'
import { nearest } from './near.ts'
import { present, type Reading } from './reading.ts'
import type { Bore, Hub } from './spec.ts'

/** Bores that anything here is meant for, mm. */
const smallest = 3
const largest = 400
/** A bore measured farther than this from its nominal size is a slip of the pen, mm. */
const slip = 1

/** The nominal diameter, mm, where it can be that of a bore here. */
export function nominalBore(reading: Reading): number | undefined {
  const nominal = reading.length('bore.diameter')
  return nominal !== undefined && nominal >= smallest && nominal <= largest ? nominal : undefined
}

/** The bore; `undefined` only with a complaint, here or from the schema. */
export function readBore(reading: Reading): Bore | undefined {
  const nominal = nominalBore(reading)
  const length = reading.length('bore.length')
  const mouth = reading.length('bore.mouth') ?? (reading.units === 'mm' ? 0.5 : 0.02 * inch)
  const measured = reading.length('bore.measured')
  if (nominal === undefined && reading.length('bore.diameter'))
    reading.complain(
      'bore.diameter',
      `a bore of ${figure(smallest, reading.units)} to ${figure(largest, reading.units)}; a bare number is in ${reading.units === 'mm' ? 'mm' : 'inches'}`,
    )
  if (length !== undefined && length > 1000)
    reading.complain('bore.length', `a bore of at most ${figure(1000, reading.units)} long`)
  if (length !== undefined && length > 0 && reading.states('bore.mouth') && mouth * 2 >= length)
    reading.complain('bore.mouth', 'a chamfer shorter than half the bore')
  if (nominal !== undefined && measured !== undefined && Math.abs(measured - nominal) > slip)
    reading.complain('bore.measured', `within ${figure(slip, reading.units)} of the diameter: one of the two is a slip`)
  const diameter = nominal === undefined ? undefined : limits(reading, nominal)
  if (diameter === undefined || length === undefined) return undefined
  return present({
    ...diameter,
    measured,
    length,
    chromed: reading.raw('bore.chromed') === true ? true : undefined,
    mouth,
    blind: blind(reading, diameter.diameter),
  })
}

function limits(reading: Reading, nominal: number): { diameter: Size; tolerance: string } | undefined {
  const path = 'bore.tolerance'
  if (Array.isArray(reading.raw(path))) {
    const [lower, upper] = [0, 1].map((n) => reading.length(`${path}[${n}]`, { signed: true }))
    if (lower === undefined || upper === undefined) return undefined
    if (lower > upper) reading.complain(path, 'the lower deviation first: [lower, upper]')
    else if (Math.max(-lower, upper) > slip)
      reading.complain(path, 'deviations from the diameter, not limits: [0, 0.021]; at most 1 mm')
    else
      return {
        diameter: withDeviations(nominal, lower, upper),
        tolerance: `${signed(upper, reading)}/${signed(lower, reading)}`,
      }
    return undefined
  }
  const tolerance = reading.text(path)?.trim() ?? 'H7'
  const found = /^[A-Z]{1,2}\d{1,2}$/.test(tolerance) ? limitsOf(nominal, tolerance) : undefined
  if (found) return { diameter: withDeviations(nominal, found.lower, found.upper), tolerance }
  const upright = tolerance.toUpperCase()
  const meant = upright !== tolerance && limitsOf(nominal, upright) ? upright : undefined
  reading.complain(
    path,
    'an ISO 286 class for holes, D5 to P11, for bores up to 315 mm: H7; or deviations: [lower, upper]',
    meant,
  )
  return undefined
}

/** A deviation as it is written: in the job's units, with its sign, nought without one. */
function signed(deviation: number, reading: Reading): string {
  const value = Number((reading.units === 'mm' ? deviation : deviation / inch).toFixed(6))
  if (value === 0) return '0'
  const digits =
    reading.units === 'mm'
      ? String(Math.abs(value))
      : Math.abs(value).toFixed((Math.abs(value) * 1e4) % 1 < 1e-6 ? 4 : 5)
  return `${value < 0 ? '-' : '+'}${digits}`
}

function blind(reading: Reading, bore: Size): Bore['blind'] {
  const beyond = reading.length('bore.blind.beyond')
  if (beyond === undefined) return undefined
  const [diameter, length] = [reading.length('bore.blind.relief.diameter'), reading.length('bore.blind.relief.length')]
  if (diameter !== undefined && diameter <= bore.upper)
    reading.complain('bore.blind.relief.diameter', 'a groove wider than the bore')
  return { beyond, ...(diameter !== undefined && length !== undefined && { relief: { diameter, length } }) }
}

/** The hub; mild steel where no material is named. */
export function readHub(reading: Reading): Hub {
  const outside = reading.length('hub.outside')
  const bore = nominalBore(reading)
  if (outside !== undefined && outside > 0 && bore !== undefined && outside <= bore)
    reading.complain('hub.outside', `an outside wider than the bore of ${figure(bore, reading.units)}`)
  const named = reading.text('hub.material') ?? 'mild steel'
  const material = workMaterial(named)
  if (material === undefined && named !== '')
    reading.complain(
      'hub.material',
      `a material that is known: ${mainNames().join('; ')}`,
      nearest(named, workMaterialNames),
    )
  return present({ outside, material: material?.name ?? named, hardness: reading.number('hub.hardness') })
}

const mainNames = () => workMaterialNames.filter((name) => workMaterial(name)?.name === name)
