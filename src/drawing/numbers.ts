/**
 * A size as it is written: rounding, decimals, signs, deviations and limits for each convention and unit. Views and worths are always mm; the
 * sheet's unit is applied here and nowhere else.
 */
import type { Saying, Wording, Worth } from './view.ts'

export interface Manner {
  readonly convention: 'iso' | 'asme'
  readonly units: 'mm' | 'in'
  /** ISO 129-1:2018 asks for the comma; English shops write the point. */
  readonly decimal?: 'point' | 'comma'
}

/** What is written: one text, or a main text with two over each other after it (deviations) or instead of it (limits, `main` empty). */
export interface Said {
  readonly main: string
  readonly upper?: string
  readonly lower?: string
  readonly after: string
}

const minus = '\u2212'
const guard = 1e-7

/** `value` to `decimals`, half to even, down or up; a figure that is exact but for binary noise stays. */
export function rounded(value: number, decimals: number, way: 'even' | 'down' | 'up'): number {
  const power = 10 ** decimals
  const x = value * power
  const near = Math.round(x)
  if (Math.abs(x - near) < guard) return near / power
  if (way === 'down') return Math.floor(x) / power
  if (way === 'up') return Math.ceil(x) / power
  const low = Math.floor(x)
  if (Math.abs(x - low - 0.5) < guard) return (low % 2 === 0 ? low : low + 1) / power
  return near / power
}

const isExact = (value: number, decimals: number): boolean =>
  Math.abs(value * 10 ** decimals - Math.round(value * 10 ** decimals)) < guard * 10
/** The fewest decimals, up to `most`, that give the value as it is rounded at `most`. */
function decimalsFor(value: number, most: number): number {
  const kept = rounded(value, most, 'even')
  for (let n = 0; n < most; n++) if (isExact(kept, n)) return n
  return most
}

/** Figures with fixed decimals, minus as U+2212, the zero before the sign as the manner has it. */
function figures(value: number, decimals: number, manner: Manner): string {
  let text = Math.abs(value).toFixed(decimals)
  if (manner.convention === 'asme' && manner.units === 'in') text = text.replace(/^0\./, '.')
  if (manner.convention === 'iso' && manner.decimal === 'comma') text = text.replace('.', ',')
  return value < 0 && Number(text.replace(',', '.')) !== 0 ? minus + text : text
}

/** Decimals at most by the width of the zone, in the sheet's unit. */
function decimalsByBand(band: number, units: 'mm' | 'in'): number {
  if (units === 'mm') return band <= 0.05 + guard ? 3 : band <= 0.5 + guard ? 2 : 1
  return band <= 0.002 + guard ? 4 : band <= 0.02 + guard ? 3 : 2
}

/** Trailing zeros are kept by the American inch alone: there the number of decimals is the tolerance. */
const keepsZeros = (manner: Manner): boolean => manner.convention === 'asme' && manner.units === 'in'

/** Both limits rounded inwards; one more decimal where that would eat more than a tenth of the zone. */
function inwards(lower: number, upper: number, decimals: number): { lower: number; upper: number; decimals: number } {
  let kept = decimals
  for (; kept < 6; kept++) {
    const lost = rounded(lower, kept, 'up') - lower + upper - rounded(upper, kept, 'down')
    if (lost <= (upper - lower) / 10 + 1e-9) break
  }
  return { lower: rounded(lower, kept, 'up'), upper: rounded(upper, kept, 'down'), decimals: kept }
}

const signed = (value: number, decimals: number, manner: Manner): string =>
  value > 0 ? `+${figures(value, decimals, manner)}` : figures(value, decimals, manner)

/** In capitals, ASCII letters only: µ stays µ. */
const capitals = (text: string): string => text.replace(/[a-z]+/g, (letters) => letters.toUpperCase())
const fraction = (inches: number): string | undefined => {
  const parts = inches * 64
  if (Math.abs(parts - Math.round(parts)) > 1e-6 || inches <= 0) return undefined
  let over = Math.round(parts)
  let under = 64
  while (over % 2 === 0 && under > 1) {
    over /= 2
    under /= 2
  }
  const whole = Math.floor(over / under)
  const rest = over % under
  return rest === 0 ? `${whole}` : whole === 0 ? `${rest}/${under}` : `${whole}-${rest}/${under}`
}

function plainDecimals(value: number, saying: Saying, manner: Manner): number {
  const asked = saying.say === 'plain' ? saying.decimals?.[manner.units] : undefined
  if (keepsZeros(manner)) return asked ?? 3
  const most = asked ?? 3
  return decimalsFor(value, most)
}

/** The number alone, without prefix and suffix. */
function number(worth: Worth, manner: Manner): Said {
  const unit = worth.angle || manner.units === 'mm' ? 1 : 25.4
  const inUnit: Manner = worth.angle ? { ...manner, units: 'mm' } : manner
  const value = worth.value / unit
  const degree = worth.angle ? '°' : ''
  const { saying } = worth
  switch (saying.say) {
    case 'plain':
      return {
        main:
          figures(
            rounded(value, plainDecimals(value, saying, inUnit), 'even'),
            plainDecimals(value, saying, inUnit),
            inUnit,
          ) + degree,
        after: '',
      }
    case 'fraction': {
      const said = manner.units === 'in' ? fraction(value) : undefined
      const decimals = plainDecimals(value, { say: 'plain' }, inUnit)
      return { main: said ?? figures(rounded(value, decimals, 'even'), decimals, inUnit), after: '' }
    }
    case 'reference': {
      const decimals = plainDecimals(value, saying, inUnit)
      return { main: `(${figures(rounded(value, decimals, 'even'), decimals, inUnit)}${degree})`, after: '' }
    }
    case 'max':
    case 'min': {
      const way = saying.say === 'max' ? 'down' : 'up'
      const most = inUnit.units === 'mm' ? 2 : 3
      const kept = rounded(value, most, way)
      const decimals = keepsZeros(inUnit) ? Math.max(2, decimalsFor(kept, most)) : decimalsFor(kept, most)
      const word = manner.convention === 'asme' ? capitals(saying.say) : saying.say
      return { main: `${figures(kept, decimals, inUnit)}${degree}`, after: ` ${word}` }
    }
    case 'plusMinus': {
      const tolerance = saying.tolerance / unit
      const most = worth.angle ? 2 : decimalsByBand(2 * tolerance, inUnit.units)
      const zeros = keepsZeros(inUnit)
      let mostTolerance = most
      while (rounded(tolerance, mostTolerance, 'down') < tolerance * 0.9 && mostTolerance < 6) mostTolerance++
      const given = rounded(tolerance, mostTolerance, 'down')
      const own = decimalsFor(given, mostTolerance)
      const nominal = decimalsFor(value, Math.max(most, own))
      const decimals = zeros ? Math.max(own, nominal) : nominal
      const main = figures(rounded(value, decimals, 'even'), decimals, inUnit)
      return { main: `${main}${degree} ±${figures(given, zeros ? decimals : own, inUnit)}${degree}`, after: '' }
    }
    case 'limits': {
      const lower = saying.lower / unit
      const upper = saying.upper / unit
      const most = decimalsByBand(upper - lower, inUnit.units)
      const short = decimalsFor(value, 4) <= 2 || saying.fit !== undefined
      if (manner.convention === 'iso' && short) {
        const nominal = decimalsFor(value, most)
        const kept = rounded(value, nominal, 'even')
        const { lower: low, upper: high, decimals } = inwards(lower - kept, upper - kept, most)
        const shown = Math.max(decimalsFor(low, decimals), decimalsFor(high, decimals))
        const said = (deviation: number): string => (deviation === 0 ? '0' : signed(deviation, shown, inUnit))
        const main = figures(kept, nominal, inUnit) + degree
        return { main: saying.fit ? `${main} ${saying.fit}` : main, upper: said(high), lower: said(low), after: '' }
      }
      const { lower: low, upper: high, decimals } = inwards(lower, upper, most)
      const shown = keepsZeros(inUnit) ? decimals : Math.max(decimalsFor(low, decimals), decimalsFor(high, decimals))
      return {
        main: '',
        upper: figures(high, shown, inUnit) + degree,
        lower: figures(low, shown, inUnit) + degree,
        after: '',
      }
    }
  }
}

/** A worth as it is written on a sheet of this manner. Limits larger on top, the prefix on both. */
export function said(worth: Worth, manner: Manner): Said {
  const bare = number(worth, manner)
  const inchSquare = worth.prefix === '□' && manner.convention === 'asme' && manner.units === 'in'
  const prefix = inchSquare ? '' : (worth.prefix ?? '')
  let after = bare.after + (inchSquare ? ' SQ' : '')
  if (worth.suffix) {
    const suffix = manner.convention === 'asme' ? capitals(worth.suffix) : worth.suffix
    after += /^[\s,;.)°]/.test(suffix) ? suffix : ` ${suffix}`
  }
  if (bare.upper === undefined || bare.lower === undefined) return { main: prefix + bare.main + after, after: '' }
  if (bare.main === '') return { main: '', upper: prefix + bare.upper, lower: prefix + bare.lower, after }
  return { ...bare, main: prefix + bare.main, after }
}

/** A worth in one line: `Ø24 −0.013/−0.025`, `.8740 / .8745` (the smaller first, as tables have it). */
export function inline(worth: Worth, manner: Manner): string {
  const { main, upper, lower, after } = said(worth, manner)
  if (upper === undefined || lower === undefined) return main + after
  return main === '' ? `${lower} / ${upper}${after}` : `${main} ${upper}/${lower}${after}`
}

/** A worth in a table to write measured sizes beside: a toleranced one as its two limits, `23.975 / 23.987`. */
export function asLimits(worth: Worth, manner: Manner): string {
  const { saying, value } = worth
  if (saying.say === 'reference' || saying.say === 'max' || saying.say === 'min') return inline(worth, manner)
  if (saying.say !== 'limits' && saying.say !== 'plusMinus') return inline(worth, manner)
  const unit = worth.angle || manner.units === 'mm' ? 1 : 25.4
  const lower = (saying.say === 'limits' ? saying.lower : value - saying.tolerance) / unit
  const upper = (saying.say === 'limits' ? saying.upper : value + saying.tolerance) / unit
  const inUnit: Manner = worth.angle ? { ...manner, units: 'mm' } : manner
  const kept = inwards(lower, upper, decimalsByBand(upper - lower, inUnit.units))
  const prefix = worth.prefix === '□' ? '' : (worth.prefix ?? '')
  const degree = worth.angle ? '°' : ''
  const shown = keepsZeros(inUnit)
    ? kept.decimals
    : Math.max(decimalsFor(kept.lower, kept.decimals), decimalsFor(kept.upper, kept.decimals))
  return `${prefix}${figures(kept.lower, shown, inUnit)}${degree} / ${prefix}${figures(kept.upper, shown, inUnit)}${degree}`
}

/** A line of words and sizes as one text. `capital`: callouts of a convention that writes in capitals. */
export const inWords = (wording: Wording, manner: Manner, capital = false): string =>
  wording.map((part) => (typeof part !== 'string' ? inline(part, manner) : capital ? capitals(part) : part)).join('')

const microinches: readonly (readonly [ra: number, microinch: number])[] = [
  [0.1, 4],
  [0.2, 8],
  [0.4, 16],
  [0.8, 32],
  [1.6, 63],
  [3.2, 125],
  [6.3, 250],
  [12.5, 500],
] // the paired preferred values of ISO 1302 and ASME B46.1

/** Roughness: `Ra 0.8` (µm), or `32` (µin) on an inch sheet. */
export function roughness(ra: number, manner: Manner): string {
  if (manner.units === 'mm') return `Ra ${figures(ra, decimalsFor(ra, 2), manner)}`
  return `${microinches.find(([of]) => Math.abs(of - ra) < 1e-9)?.[1] ?? Math.round(ra / 0.0254)}`
}

/** Geometric tolerance, mm in, the sheet's unit out, rounded down: `0.05`, `.002`. */
export function tolerance(value: number, manner: Manner): string {
  const inUnit = manner.units === 'mm' ? value : value / 25.4
  for (let decimals = manner.units === 'mm' ? 2 : 3; decimals < 6; decimals++) {
    const kept = rounded(inUnit, decimals, 'down')
    if (kept >= inUnit * 0.85) return figures(kept, decimalsFor(kept, decimals), manner)
  }
  return figures(inUnit, 6, manner)
}
