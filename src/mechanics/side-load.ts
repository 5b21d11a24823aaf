/** What a cut beside the middle of the nose does: it twists the bar and bends it sideways. N, mm, degrees where named. */
import { steelModuli } from '../standards/moduli.ts'
import { type Held, secondMoment, steelModulus } from './bar.ts'

/** Middle of a strip that one side of the nose cuts, from the nose's own middle, mm. */
export const stripOffset = (noseWidth: number, strip: number): number => (noseWidth - strip) / 2

/** How far a cutting force beside the middle bends the nose sideways, mm: the bar, and the tilt of its holder. */
export const sidewaysBend = ({ diameter, overhang, machine }: Held, cutting: number, offset: number): number =>
  cutting * offset * (overhang ** 2 / (2 * steelModulus * secondMoment(diameter)) + 1 / (machine * overhang))

/** Twist of the bar over its overhang, radians; torque in N mm. */
export const twistRadians = (diameter: number, overhang: number, torque: number): number =>
  (torque * overhang) / (steelModuli.shear * 2 * secondMoment(diameter))

/** Sideways shift of the nose, mm, when the spindle slips by an angle in degrees: nose `eccentricity` from the bar's axis. */
export const slipShift = (eccentricity: number, degrees: number): number =>
  eccentricity * Math.tan((degrees * Math.PI) / 180)

/**
 * The worst torque that a nose working beside its slot's middle meets, N mm, of the thrust of the whole nose. A strip of half the nose is
 * the worst: half the thrust, at a quarter of the width.
 */
export const worstStripTorque = (noseWidth: number, thrust: number): number => (thrust * noseWidth) / 8
