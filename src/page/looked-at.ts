import { signal } from '@preact/signals'
import type { Drawn, PictureName } from './workers/works.ts'

/** What is looked at, and what was drawn of it last. */

/** The finding whose dimension is shown on the picture. */
export const shownFinding = signal<string | undefined>(undefined)
/** Width of the figures, px; 0 until it is known. */
export const width = signal(0)
/** Passes taken; undefined is all of them, where fronts foul. */
export const taken = signal<number | undefined>(undefined)
/** The figures that are looked at, the first of them first. */
export const seen = signal<readonly PictureName[]>(['section', 'lengths', 'infeed'])
export const drawnNow = signal<Drawn | undefined>(undefined)

/** The findings whose margins are shown, how wide, and the bar of each. */
export const barsShown = signal<readonly string[]>([])
export const barWidth = signal(0)
export const bars = signal<Readonly<Record<string, string>>>({})
