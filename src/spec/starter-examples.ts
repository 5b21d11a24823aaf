import { asmeKeyFor, asmeParallelClearance } from '../standards/asme-b17-1.ts'
import { inch, inchName } from '../standards/inch.ts'
import { isoSplineNames, isoSplines } from '../standards/iso-14.ts'
import { isoKeyFor } from '../standards/iso-773.ts'
import { stockLists } from '../standards/stock.ts'
import { rounded } from './figures.ts'
import type { Units } from './spec.ts'

/** Sizes that a starter spec shows for one bore, as written; absent where none would make sense. */
export interface BoreExamples {
  readonly measured: string
  readonly outside: string
  /** A keyway by hand, as a mapping on one line. */
  readonly hand?: string
  readonly bar?: string
  /** Nominal width of the key, as it is called. */
  readonly width?: string
}

const trimmed = (value: number, decimals: number): string =>
  rounded(value, decimals)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '')

/** Examples for a bore of this diameter (mm): a hub two and a half times as large, a bar of three quarters at the most. */
export function examplesFor(units: Units, diameter: number): BoreExamples {
  // A bar and its nose enter together: common practice, no source.
  const bar = stockLists(units).bars.findLast((size) => size <= 0.75 * diameter)
  return units === 'mm' ? metric(diameter, bar) : inches(diameter, bar)
}

function metric(diameter: number, bar: number | undefined): BoreExamples {
  const key = isoKeyFor(diameter)
  const across = (depth: number): string => trimmed(diameter + depth, 3)
  return {
    measured: trimmed(diameter + 0.012, 3),
    outside: trimmed(2.5 * diameter, 0),
    ...(bar !== undefined && { bar: trimmed(bar, 3) }),
    ...(key && {
      width: String(key.width),
      hand: `{ width: ${key.width}, height: ${key.height}, across: [${across(key.hubDepth)}, ${across(key.hubDepth + key.hubDepthTolerance)}] }`,
    }),
  }
}

function inches(diameter: number, bar: number | undefined): BoreExamples {
  const key = asmeKeyFor(diameter)
  const [width, height] = [key?.width, key?.heightSquare]
  const eighths = (mm: number): string => inchName(Math.round((mm / inch) * 8) * (inch / 8)) ?? ''
  return {
    measured: rounded(diameter / inch + 0.0003, 4),
    outside: eighths(2.5 * diameter),
    ...(bar !== undefined && { bar: inchName(bar) ?? '' }),
    ...(key && { width: key.widthName }),
    ...(key &&
      width !== undefined &&
      height !== undefined && {
        hand: `{ width: ${key.widthName}, height: ${key.heightSquareName}, across: [${asmeAcross(diameter, width, height)}] }`,
      }),
  }
}

/** Floor to the opposite wall for a square key, ASME B17.1-1967: T = (D + H + √(D² - W²)) / 2 + C, +0.010 in / 0. */
const asmeAcross = (shaft: number, width: number, height: number): string => {
  const least = (shaft + height + Math.sqrt(shaft ** 2 - width ** 2)) / 2 + asmeParallelClearance
  return [least / inch, least / inch + 0.01].map((size) => rounded(size, 4)).join(', ')
}

/** Other features for a bore of this diameter (mm), each on one line: an ISO 14 spline where there is one, else six slots by hand. */
export function othersFor(units: Units, diameter: number): readonly string[] {
  const metricJob = units === 'mm'
  const size = (mm: number): string => {
    if (metricJob) return trimmed(Math.max(0.5, Math.round(mm * 2) / 2), 1)
    const thirtySeconds = Math.max(1, Math.round((mm / inch) * 32)) * (inch / 32)
    return inchName(thirtySeconds) ?? rounded(thirtySeconds / inch, 4)
  }
  const iso = isoSplines.rows.findIndex(({ minor }) => Math.abs(minor - diameter) < 1e-6)
  const name = metricJob ? isoSplineNames()[iso] : undefined
  const fine = (mm: number): string => (metricJob ? trimmed(mm, 1) : rounded(mm / inch, 3))
  return [
    name === undefined
      ? `spline: { count: 6, width: ${size(0.2 * diameter)}, major: ${fine(1.13 * diameter)} }`
      : `spline: { standard: iso-14, size: ${name} }`,
    `socket: { sides: 4, across: ${fine(0.92 * diameter)}, tip: ${metricJob ? '0.2' : '.008'} }`,
    `slit: { width: ${size(0.05 * diameter)}, count: 3, outside: ${fine(1.3 * diameter)} }`,
    `groove: { radius: ${size(0.04 * diameter)}, depth: ${fine(0.02 * diameter)} }`,
  ]
}
