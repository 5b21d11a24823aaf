/** What the dial reads. Readings count from first touch of the first lane; all mm. */
import type { BarSpec } from '../spec/spec.ts'

export interface Dial {
  readonly mark: number
  readonly reads: 'travel' | 'diameter'
  readonly perInfeed: number
  readonly slide?: number
  /** The least that is set by hand, as read. */
  readonly finest: number
  /** x of the nose flat at reading 0. */
  readonly zero: number
}

const tidy = (value: number): number => Math.round(value * 1e9) / 1e9

/** Down to a whole number of steps; a millionth of a step short counts as there. */
export const downTo = (value: number, step: number): number => tidy(Math.floor(value / step + 1e-6) * step)

/** To the nearest whole number of steps. */
export const nearTo = (value: number, step: number): number => tidy(Math.round(value / step) * step)

/** Up to a whole number of steps. */
export const upTo = (value: number, step: number): number => tidy(Math.ceil(value / step - 1e-6) * step)

/** Half a mark can be set by eye, a quarter with care; where even that is more than a pass may take, a fifth or a tenth, for a slide set over. */
const finestOf = (mark: number, planned: number): number => {
  const parts = [2, 4, 5, 10].find((n) => mark / n <= planned * (1 + 1e-6))
  return mark / (parts ?? Math.ceil(mark / planned - 1e-6))
}

/** `zero`: x at first touch. `planned`: infeed for a pass. */
export const dialOf = ({ dial }: BarSpec, zero: number, planned: number): Dial => {
  const perTravel = dial.reads === 'diameter' ? 2 : 1
  const perInfeed = dial.slide === undefined ? perTravel : perTravel / Math.sin((dial.slide * Math.PI) / 180)
  return { ...dial, perInfeed, zero, finest: finestOf(dial.mark, planned * perInfeed) }
}

export const readingAt = (dial: Dial, x: number): number => (x - dial.zero) * dial.perInfeed
export const xAt = (dial: Dial, reading: number): number => dial.zero + reading / dial.perInfeed

/**
 * A slide set over from the bed's axis makes a mark finer: its infeed is the sine of the angle. At 30° a mark gives half of itself, at
 * 5.739170° a tenth.
 */
export const slideAngles = (mark: number): readonly { readonly angle: number; readonly infeed: number }[] =>
  [0.5, 0.1].map((part) => ({ angle: (Math.asin(part) * 180) / Math.PI, infeed: part * mark }))
