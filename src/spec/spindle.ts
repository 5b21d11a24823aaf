/** What may keep a spindle from turning. */
export const spindleHolds = ['gear', 'lock', 'belt', 'hand'] as const

export type SpindleHold = (typeof spindleHolds)[number]
