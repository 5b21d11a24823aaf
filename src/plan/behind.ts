/** Room behind the bar. All mm. */
import type { Section } from '../dimensions/types.ts'
import type { Units } from '../spec/spec.ts'
import { quarterOfLimits } from './measuring.ts'

/**
 * What the bar wants behind it, drawn back from first touch: what it may lie out of line over the bore, and six chips that have fallen there
 * (judgement). What the cut pushes it off by is not in it: it is pushed off while it cuts, and then it stands nearer the work by what it was drawn back.
 */
export const roomBehind = (section: Section, units: Units, infeed: number): number =>
  quarterOfLimits(section, units) + 6 * infeed
