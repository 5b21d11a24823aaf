/** The dimensions that a finding speaks of, as the figures name them. */
const dimensions: Readonly<Record<string, readonly string[]>> = {
  'bar-passes-bore': ['bar.diameter', 'section.bore'],
  'projection-reaches': ['bar.projection', 'bar.gaps.front'],
  'projection-enters': ['bar.projection', 'bar.gaps.back'],
  'nose-not-over-width': ['section.width'],
  'nose-long-enough': ['bar.projection'],
  'floor-beyond-bore': ['section.crownDepth', 'cut.left'],
  'land-between-keyways': ['section.land'],
  'hole-in-bar': ['bar.diameter'],
  'hole-in-bar-easy': ['bar.diameter'],
  'bar-not-too-long': ['bar.overhang', 'bar.diameter'],
  'room-behind-hub': ['bar.tipBeyond'],
  'lag-within-tolerance': ['loads.lag'],
}

/** Those that are to be shown heavier while a finding is looked at. */
export const dimensionsOf = (rule: string): readonly string[] => dimensions[rule] ?? []
