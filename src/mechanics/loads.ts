/** All that is asked of bar, press and joint. */
export { groundLoadsOf, type Loads, loadsOf } from './bar-loads.ts'
export { type JointLoads, jointLoadsOf } from './joint-loads.ts'
export { type KeyLoads, keyLoadsOf } from './key-loads.ts'
export { type PressLoads, pressLoadsOf } from './press-loads.ts'
