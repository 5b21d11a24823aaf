import { asmeFit, asmeKeyFor, asmeKeyOfWidth, asmeKeys } from '../standards/asme-b17-1.ts'
import { inch } from '../standards/inch.ts'
import { isoKeyFor, isoKeyOfWidth, isoKeys } from '../standards/iso-773.ts'
import { isMapping } from './place.ts'
import { readAngles } from './read-angles.ts'
import { nominalBore } from './read-bore.ts'
import { readFound, readKey } from './read-key.ts'
import { present, type Reading } from './reading.ts'
import type { Keyway, LeastMost } from './spec.ts'

const key = 'feature.keyway'
/** Square keys up to this bore, rectangular above. ASME B17.1-1967. */
const squareUpTo = 6.5 * inch

/** The keyway or keyways; `undefined` only with a complaint, here or from the schema. */
export function readKeyway(reading: Reading): Keyway | undefined {
  const at = readAngles(reading, `${key}.at`)
  const width = reading.limits(`${key}.width`)
  const corner = reading.limits(`${key}.corner`)
  const bore = nominalBore(reading)
  if (width && bore !== undefined && width[1] >= bore) {
    reading.complain(`${key}.width`, 'a width smaller than the bore')
    return undefined
  }
  for (const [name, bores] of [
    ['across', 2],
    ['depth.crown', 1],
    ['depth.side', 1],
  ] as const)
    if (bore !== undefined && (reading.limits(`${key}.${name}`)?.[1] ?? 0) > bores * bore)
      reading.complain(
        `${key}.${name}`,
        bores === 2 ? 'across of no more than two bores' : 'a depth of no more than a bore',
      )
  const sizes = ['width', 'height', 'across', 'depth'].some((name) => reading.states(`${key}.${name}`))
  const written = reading.word(`${key}.standard`, ['iso-773', 'asme-b17.1'])
  if (reading.states(`${key}.standard`) && written === undefined) return undefined
  const standard = written ?? (sizes ? undefined : reading.units === 'mm' ? 'iso-773' : 'asme-b17.1')
  const rest = standard === undefined ? byHand(reading, width) : byStandard(reading, standard, width, bore)
  return (
    rest &&
    at &&
    present({
      ...rest,
      kind: 'keyway' as const,
      corner,
      at,
      taper: readTaper(reading, standard),
      key: readKey(reading),
      found: readFound(reading),
    })
  )
}

/** The floor's fall for a taper key: with asme-b17.1, whose sizes follow, or with sizes by hand at the deep end. */
function readTaper(reading: Reading, standard: Keyway['standard']): Keyway['taper'] {
  const taper = reading.word(`${key}.taper`, ['1:96', '1:100'])
  if (taper === undefined) return undefined
  if (standard === 'iso-773')
    reading.complain(
      `${key}.taper`,
      'nothing here: iso-773 is of parallel keys; take the standard out and give width, height and across at the deep end by hand',
    )
  if (standard === 'asme-b17.1' && ['1', 'class 1'].includes(reading.text(`${key}.fit`) ?? ''))
    reading.complain(`${key}.fit`, 'class 2: taper keys have no class 1')
  return taper
}

type Sized = Omit<Keyway, 'kind' | 'corner' | 'at'>

/** Sizes by hand: a width, and across or one depth. */
function byHand(reading: Reading, width: LeastMost | undefined): Sized | undefined {
  for (const name of ['form', 'fit'] as const)
    if (reading.states(`${key}.${name}`))
      reading.complain(`${key}.${name}`, 'nothing here: sizes by hand carry their own limits; or name a standard')
  if (!reading.states(`${key}.width`))
    reading.complain(`${key}.width`, 'a width, with the other sizes by hand; or no sizes, and a standard')
  const across = reading.limits(`${key}.across`)
  const depths = ['crown', 'side'].filter((from) => reading.states(`${key}.depth.${from}`))
  if (reading.states(`${key}.across`) === reading.states(`${key}.depth`))
    reading.complain(
      reading.states(`${key}.across`) ? `${key}.depth` : `${key}.across`,
      'across, or depth: { crown } or { side }, one of the two; or name a standard, and the width picks its key',
    )
  if (reading.states(`${key}.depth`) && isMapping(reading.raw(`${key}.depth`)) && depths.length !== 1)
    reading.complain(`${key}.depth`, 'one of crown and side')
  const from = depths[0] === 'crown' ? 'crown' : 'side'
  const by = reading.limits(`${key}.depth.${from}`)
  if (width === undefined || (across === undefined && by === undefined)) return undefined
  return present({
    fit: 'normal' as const,
    width,
    height: reading.limits(`${key}.height`),
    across,
    depth: by && { from: from as 'crown' | 'side', by },
  })
}

const fits = {
  'iso-773': { normal: 'normal', tight: 'tight', sliding: 'sliding' },
  'asme-b17.1': { '1': 'class 1', '2': 'class 2', 'class 1': 'class 1', 'class 2': 'class 2' },
} as const satisfies Record<string, Record<string, Keyway['fit']>>

function byStandard(
  reading: Reading,
  standard: 'iso-773' | 'asme-b17.1',
  width: LeastMost | undefined,
  bore: number | undefined,
): Sized | undefined {
  for (const name of ['height', 'across', 'depth'] as const)
    if (reading.states(`${key}.${name}`))
      reading.complain(
        `${key}.${name}`,
        `nothing here: ${standard} gives it; or take the standard out and give width and across by hand`,
      )
  const asked = reading.text(`${key}.fit`)
  const table: Readonly<Record<string, Keyway['fit']>> = fits[standard]
  const fit =
    asked === undefined
      ? reading.states(`${key}.taper`)
        ? Object.values(table).at(-1)
        : Object.values(table)[0]
      : Object.hasOwn(table, asked)
        ? table[asked]
        : undefined
  const words = standard === 'iso-773' ? 'normal, tight or sliding' : 'class 1 or class 2'
  if (fit === undefined) reading.complain(`${key}.fit`, `${words}, with ${standard}`)
  if (standard === 'iso-773' && reading.states(`${key}.form`))
    reading.complain(`${key}.form`, 'nothing here: form belongs to asme-b17.1; iso-773 has one key for each bore')
  if (width && width[0] !== width[1]) {
    reading.complain(`${key}.width`, 'with a standard: one width, the nominal width of the key, which picks its row')
    return undefined
  }
  if (bore === undefined || fit === undefined || (width === undefined && reading.states(`${key}.width`)))
    return undefined
  const form =
    standard === 'iso-773'
      ? undefined
      : (reading.word(`${key}.form`, ['square', 'rectangular']) ??
        (bore <= squareUpTo + 1e-6 ? 'square' : 'rectangular'))
  const taper = reading.states(`${key}.taper`)
  const missing =
    standard === 'iso-773'
      ? isoMissing(bore, width)
      : taper
        ? asmeMissing(bore, width, 'taper', 'class 2')
        : asmeMissing(bore, width, form ?? 'square', fit)
  if (missing) {
    reading.complain(`${key}.${missing.at}`, missing.accepted)
    return undefined
  }
  return present({ standard, form, fit, width })
}

interface Missing {
  readonly at: 'standard' | 'width' | 'form' | 'taper'
  readonly accepted: string
}
const waysOut = 'give width to pick another key of it, or leave the standard out and give width and across by hand'

function isoMissing(bore: number, width: LeastMost | undefined): Missing | undefined {
  if (width === undefined)
    return isoKeyFor(bore)
      ? undefined
      : { at: 'standard', accepted: `iso-773 has keys for ${isoKeys.scope}: ${waysOut}` }
  if (isoKeyOfWidth(width[0])) return undefined
  return {
    at: 'width',
    accepted: `the width of a key of iso-773: ${isoKeys.rows.map((row) => row.width).join(', ')} mm`,
  }
}

function asmeMissing(
  bore: number,
  width: LeastMost | undefined,
  form: 'square' | 'rectangular' | 'taper',
  fit: Keyway['fit'],
): Missing | undefined {
  const row = width === undefined ? asmeKeyFor(bore) : asmeKeyOfWidth(width[0])
  if (row === undefined && width === undefined)
    return { at: 'standard', accepted: `asme-b17.1 has keys for ${asmeKeys.scope}: ${waysOut}` }
  if (row === undefined)
    return {
      at: 'width',
      accepted: `the width of a key of asme-b17.1: ${asmeKeys.rows.map((each) => each.widthName).join(', ')} in`,
    }
  const height = form === 'rectangular' ? row.heightRectangular : row.heightSquare
  if (height !== undefined && asmeFit({ form, class: fit === 'class 2' ? 2 : 1, width: row.width })) return undefined
  if (form === 'taper')
    return { at: 'taper', accepted: `keys up to 1-1/4 in wide: asme-b17.1 has no taper key ${row.widthName} in wide` }
  const other = form === 'square' ? 'rectangular' : 'square'
  return { at: 'form', accepted: `${other}: asme-b17.1 has no ${form} key ${row.widthName} in wide` }
}
