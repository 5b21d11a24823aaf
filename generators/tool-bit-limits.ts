/** Limits that the bit's sheet gives where the core gives none: its length in the window, the nose's width, a round bit's edge. All mm. */
import type { Design } from '../src/design.ts'
import { either, roundDown, roundUp } from '../src/dimensions/makeable.ts'
import type { ToolBit } from '../src/dimensions/types.ts'
import type { Size } from '../src/fits/size.ts'

/** What an abrasive disc may miss a length by, either way, mm. Source: judgement. */
const cutOff = (design: Design): number => either(design.spec.units, 0.5, 0.02)

/**
 * Length as cut off: half a millimetre either way, or what room the window leaves, in round figures; where that is little, each side takes its
 * own.
 */
export const lengthSize = (design: Design, bit: ToolBit): Size => {
  const { units } = design.spec
  const { length, lengthMin, lengthMax } = bit
  const room = (most: number): number => {
    const left = Math.min(cutOff(design), most)
    const step = [either(units, 0.1, 0.005), either(units, 0.01, 0.001)].find((one) => one <= left) ?? left
    return left > 0 ? roundDown(left, step) : 0
  }
  const [below, above] = [room(length - lengthMin), room(lengthMax - length)]
  const least = Math.min(below, above)
  const enough = least >= either(units, 0.2, 0.01) - 1e-9
  return { nominal: length, lower: length - (enough ? least : below), upper: length + (enough ? least : above) }
}

/** The nose's width; where the slot leaves it no limits, what a careful hand loses. Never wider than the blank. */
export const noseSize = (design: Design, { noseWidth, size }: ToolBit): Size => {
  const upper = Math.min(noseWidth.upper, Math.max(noseWidth.nominal, size))
  const lower = upper - noseWidth.lower > 1e-9 ? noseWidth.lower : upper - either(design.spec.units, 0.02, 0.001)
  return { nominal: noseWidth.nominal, lower, upper }
}

/**
 * Edge over the back: up and down as far as the nose at its least width still fits in the round, and no higher than the screw's flat; in round
 * figures, so that view and table read alike.
 */
export const edgeSize = (design: Design, bit: ToolBit): Size => {
  const { size, edgeHeight } = bit
  const within = Math.sqrt(Math.max(size ** 2 - noseSize(design, bit).lower ** 2, 0)) / 2
  const careful = either(design.spec.units, 0.05, 0.002)
  const step = either(design.spec.units, 0.01, 0.0005)
  const lower = roundUp(Math.max(edgeHeight - careful, size / 2 - within), step)
  const upper = roundDown(Math.min(edgeHeight + careful, size / 2 + within, size - (bit.flat ?? 0)), step)
  return { nominal: edgeHeight, lower: Math.min(edgeHeight, lower), upper: Math.max(edgeHeight, upper) }
}
