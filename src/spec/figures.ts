import { inch, inchName } from '../standards/inch.ts'
import type { Units } from './spec.ts'

/** How a figure is to be printed. */
export interface FigureStyle {
  /** A size with a fit: one more decimal. */
  readonly fit?: boolean
  /** Which way to round, so that a printed number never contradicts its verdict; left out: to the nearest. */
  readonly lean?: 'up' | 'down'
  /** False leaves the unit off. */
  readonly unit?: boolean
}

/**
 * A number with this many decimals and no more, rounded to the nearest (a half goes to the even figure, as on the drawings: ASTM E29, ISO 80000-1 rule A) or the way it leans.
 * A value within a billionth of a step counts as on it. No locale, no minus zero.
 */
export function rounded(value: number, decimals: number, lean?: 'up' | 'down'): string {
  const steps = Math.abs(value) * 10 ** decimals
  const near = Math.round(steps)
  const low = Math.floor(steps)
  const isHalf = Math.abs(steps - low - 0.5) < 1e-9 * Math.max(1, steps)
  const nearest = isHalf ? low % 2 === 1 : steps - low > 0.5
  const away = lean === undefined ? nearest : (lean === 'up') === value > 0
  const whole = Math.abs(steps - near) < 1e-9 * Math.max(1, steps) ? near : low + (away ? 1 : 0)
  return `${value < 0 && whole > 0 ? '-' : ''}${(whole / 10 ** decimals).toFixed(decimals)}`
}

/**
 * A length (mm) for people, in the job's units: `4.1 mm`, `0.625 in`. Millimetres to 0.01 (0.001 for a fit) without
 * closing zeros, inches to 0.001 (0.0001 for a fit) with them, as each trade writes them.
 */
export function figure(mm: number, units: Units, style: FigureStyle = {}): string {
  const decimals = (units === 'mm' ? 2 : 3) + (style.fit ? 1 : 0)
  const digits = rounded(units === 'mm' ? mm : mm / inch, decimals, style.lean)
  const number = units === 'mm' && digits.includes('.') ? digits.replace(/\.?0+$/, '') : digits
  return style.unit === false ? number : `${number} ${units}`
}

/** Decimals that a number shows in, no fewer than `least`; undefined where five do not do. */
export const decimalsOf = (value: number, least: number): number | undefined => {
  for (let decimals = least; decimals <= 5; decimals++)
    if (Math.abs(value * 10 ** decimals - Math.round(value * 10 ** decimals)) < 1e-6) return decimals
  return undefined
}

/** A reading or an infeed (mm) in the job's units with every decimal that it has, those of a fit where it has no end: `0.0125`, `0.00025`. */
export const inFull = (mm: number, units: Units): string => {
  const own = units === 'mm' ? mm : mm / inch
  const least = units === 'mm' ? 2 : 3
  const decimals = decimalsOf(own, least)
  if (decimals === undefined) return figure(mm, units, { fit: true, unit: false })
  return decimals === least ? figure(mm, units, { unit: false }) : rounded(own, decimals)
}

/** The inch fraction that a length (mm) is, in lowest terms: `5/8`, `1-3/8`, `2`; `undefined` when it is no exact 64th. */
export const fraction = (mm: number): string | undefined => inchName(mm)

/** As `figure`, and in inch jobs the fraction after it where there is one that is no whole number: `0.625 in (5/8)`. */
export function withFraction(mm: number, units: Units, style: FigureStyle = {}): string {
  const parts = units === 'in' ? fraction(mm) : undefined
  return parts?.includes('/') ? `${figure(mm, units, style)} (${parts})` : figure(mm, units, style)
}
