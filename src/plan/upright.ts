import type { BarSpec } from '../spec/spec.ts'

/** Whether what is sideways of the slot is up and down: on a lathe the nose looks across the bed, and no slide moves a bar in height. */
export const isUpright = (asked: BarSpec | undefined): boolean => asked?.machine === 'lathe'
