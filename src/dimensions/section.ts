import type { Spec } from '../spec/spec.ts'
import type { Reasoned } from './basis.ts'
import { grooveSection } from './groove-section.ts'
import { keywaySection } from './keyway-section.ts'
import { slitSection } from './slit-section.ts'
import { socketSection } from './socket-section.ts'
import { splineSection } from './spline-section.ts'
import type { Section } from './types.ts'

export { sideDepthLimits } from './keyway-section.ts'
export { anglesBetween } from './round-the-bore.ts'
export { classed } from './sized.ts'

/** The bore section at mid-tolerance, with its limits. */
export const sectionOf = (spec: Spec): Reasoned<Section> => {
  const { feature } = spec
  switch (feature.kind) {
    case 'keyway':
      return keywaySection(spec, feature)
    case 'spline':
      return splineSection(spec, feature)
    case 'socket':
      return socketSection(spec, feature)
    case 'slit':
      return slitSection(spec, feature)
    case 'groove':
      return grooveSection(spec, feature)
  }
}
