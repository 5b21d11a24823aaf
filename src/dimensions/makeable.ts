import type { Units } from '../spec/spec.ts'

/** Sizes that a shop works to in its own units: each dimension is chosen once on one of these steps, and what depends on it follows. */
export interface Steps {
  /** Ground and milled sizes. */
  readonly fine: number
  /** Shims, ground to thickness. */
  readonly shim: number
  /** Hole centre to end, countersinks. */
  readonly small: number
  /** Nose lengths, blanks. */
  readonly half: number
  /** Lengths of bars and bushings. */
  readonly whole: number
  /** Projection as set. */
  readonly setting: number
}

const inch = 25.4

export const stepsOf = (units: Units): Steps =>
  units === 'mm'
    ? { fine: 0.01, shim: 0.001, small: 0.1, half: 0.5, whole: 1, setting: 0.1 }
    : {
        fine: 0.0005 * inch,
        shim: 0.0001 * inch,
        small: 0.001 * inch,
        half: inch / 64,
        whole: inch / 16,
        setting: 0.005 * inch,
      }

/** The same length in round figures of either unit: `mm` where the job is metric, `inches` where it is not. */
export const either = (units: Units, mm: number, inches: number): number => (units === 'mm' ? mm : inches * inch)

const tidy = (value: number): number => Math.round(value * 1e9) / 1e9

export const roundUp = (value: number, step: number): number => tidy(Math.ceil(value / step - 1e-9) * step)
export const roundDown = (value: number, step: number): number => tidy(Math.floor(value / step + 1e-9) * step)
export const roundTo = (value: number, step: number): number => tidy(Math.round(value / step) * step)
