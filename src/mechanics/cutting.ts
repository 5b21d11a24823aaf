/** Cutting force of a single flat edge. N and mm. */
import type { KienzleRow } from '../standards/kienzle.ts'

/** Hand speed, slotting, and how sharp the edge is. Source: textbook factors, Dietrich/Tschaetsch (from memory), and 1.0 / 1.3 / 1.5 for wear. */
export const edgeFactor = { stoned: 1.2 * 1.1, worn: 1.2 * 1.1 * 1.3, dull: 1.2 * 1.1 * 1.5 } as const
export type Edge = keyof typeof edgeFactor

/** Force per pass falls by 1 % a degree of rake beyond the constants' own. Source: the same textbook; other texts say 1.5 %. */
export const rakeFactor = (rake: number, reference: number): number => 1 - (rake - reference) / 100

/**
 * Cutting force along the stroke, N: specific force (VDI 3323 constants) × width × thickness^(1−m), with rake and edge. Expect ±30 %; under
 * 0.03 mm the constants read low.
 */
export const cuttingForce = (
  material: KienzleRow,
  width: number,
  thickness: number,
  rake: number,
  edge: Edge,
): number =>
  rakeFactor(rake, material.referenceRake) *
  edgeFactor[edge] *
  material.kc11 *
  width *
  thickness ** (1 - material.exponent)

const tan = (degrees: number): number => Math.tan((degrees * Math.PI) / 180)

/**
 * Thrust over cutting force, a band: friction angles of 35 to 45° less the rake, and 1 for a dull edge. Source: judgement.
 */
export const thrustRatio = (rake: number): { readonly least: number; readonly most: number } => ({
  least: Math.max(0, tan(35 - rake)),
  most: Math.max(tan(45 - rake), 1),
})
