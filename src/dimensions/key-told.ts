/** The key as the standard gives it, with what the spec tells of key and shaft laid over it. */
import type { Size } from '../fits/size.ts'
import type { Keyway, Spec } from '../spec/spec.ts'
import { sagitta } from './bore.ts'
import { between } from './sized.ts'
import { acrossAt, taperRates, tiltOf, windowLoss } from './taper-key.ts'
import type { KeySizes } from './types.ts'

const clearanceOver = (across: Size, shaftAcross: Size, height: Size): Size => ({
  nominal: across.nominal - shaftAcross.nominal - height.nominal,
  lower: across.lower - shaftAcross.upper - height.upper,
  upper: across.upper - shaftAcross.lower - height.lower,
})

/** Height, chamfer and keyseat of the shaft as told; what the floor's taper makes of the hub. A taper key has no top clearance: it binds there. */
export const keyAsTold = (spec: Spec, keyway: Keyway, across: Size, standard: KeySizes): KeySizes => {
  const { key, taper } = keyway
  const { shaft } = spec
  const { topClearance: _, ...rest } = standard
  const height = key?.height ? between(key.height) : standard.height
  const chamfer = key?.chamfer ? between(key.chamfer) : standard.chamfer
  const diameter = spec.bore.diameter.nominal
  const seat = shaft?.across
    ? {
        across: between(shaft.across),
        depth: diameter - between(shaft.across).nominal,
        width: standard.shaft?.width ?? {
          nominal: standard.nominalWidth,
          lower: standard.nominalWidth,
          upper: standard.nominalWidth,
        },
      }
    : standard.shaft
  const fall = taper && taperRates[taper]
  const less = (size: number) => (fall ? acrossAt(size, fall, spec.bore.length) : size)
  return {
    ...rest,
    ...(height && { height }),
    ...(chamfer && { chamfer }),
    ...(seat && { shaft: { ...seat, sideDepth: seat.depth - sagitta(diameter / 2, standard.nominalWidth / 2) } }),
    ...(seat && height && !taper && { topClearance: clearanceOver(across, seat.across, height) }),
    ...(taper &&
      fall && {
        taper: {
          rate: taper,
          tilt: tiltOf(fall),
          acrossShallow: { nominal: less(across.nominal), lower: less(across.lower), upper: less(across.upper) },
          windowLoss: windowLoss(fall, spec.bore.length),
        },
      }),
  }
}
