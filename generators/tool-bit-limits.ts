/** Limits that the bit's sheet gives where the core gives none: its length in the window. All mm. */
import type { Design } from '../src/design.ts'
import { either, roundDown } from '../src/dimensions/makeable.ts'
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
