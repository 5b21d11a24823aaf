/**
 * The two drafting conventions as data. Widths, gaps and heights in mm on paper. Sources, read in public excerpts or from memory: ISO 128-2
 * (lines), ISO 129-1:2018 (dimensions: one character height), ISO 5457 (margins), ASME Y14.2 (widths, 3:1 arrows), ASME Y14.5 (10 and 6 mm).
 */
import type { StrokeClass } from './sheet.ts'
import type { LineKind } from './view.ts'

export interface Style {
  readonly name: 'iso' | 'asme'
  readonly widths: { readonly thick: number; readonly thin: number; readonly hatch: number }
  /** Numbers with their deviations, view titles, section letters. */
  readonly text: number
  /** Notes, frames, leaders of secondary features. */
  readonly small: number
  readonly arrow: number
  /** Extension lines: gap at the part, run past the dimension line. */
  readonly gap: number
  readonly past: number
  readonly first: number
  readonly between: number
  readonly underText: number
  /** Text above an unbroken line and turned beside upright ones, or level in a break of the line. */
  readonly reading: 'above' | 'level'
  /** Leaders end in a shelf under their text, or in a shoulder beside it. */
  readonly leader: 'shelf' | 'shoulder'
  /** Arrows of a cutting plane stand on its ends or lead away from them. */
  readonly planeArrow: 'onto' | 'away'
  readonly capitals: boolean
  readonly scales: readonly number[]
  readonly detailScales: readonly number[]
  readonly limits: { readonly mm: string; readonly in: string }
  readonly surface: { readonly mm: string; readonly in: string }
  readonly edges: { readonly mm: string; readonly in: string }
}

const iso: Style = {
  name: 'iso',
  widths: { thick: 0.5, thin: 0.25, hatch: 0.18 },
  text: 3.5,
  small: 2.5,
  arrow: 3,
  gap: 1,
  past: 2,
  first: 10,
  between: 7,
  underText: 1,
  reading: 'above',
  leader: 'shelf',
  planeArrow: 'onto',
  capitals: false,
  scales: [10, 5, 2, 1, 0.5, 0.2, 0.1],
  detailScales: [20, 10, 5, 2, 1, 0.5],
  limits: { mm: 'ISO 2768 - m', in: 'ISO 2768 - m' },
  surface: { mm: 'Ra 3.2', in: '125 µin' },
  edges: { mm: 'broken 0.2 to 0.3', in: 'broken .010 or less' },
}

const asme: Style = {
  ...iso,
  name: 'asme',
  widths: { thick: 0.6, thin: 0.3, hatch: 0.25 },
  small: 3,
  gap: 1.5,
  past: 3,
  between: 6,
  reading: 'level',
  leader: 'shoulder',
  planeArrow: 'away',
  capitals: true,
  scales: [10, 4, 2, 1, 0.5, 0.25, 0.125],
  detailScales: [20, 10, 5, 4, 2, 1, 0.5],
  limits: { mm: 'ISO 2768 - m', in: '.XX ±.01 .XXX ±.005 ANGLES ±.5°' },
  surface: { mm: 'Ra 3.2', in: '125 µin' },
  edges: { mm: 'BREAK 0.25 MAX', in: 'BREAK .010 MAX' },
}

export const styles = { iso, asme } as const

/** On, off, on … in mm: one period of each broken line, which always starts and ends with its first dash. */
export const patterns: Readonly<Partial<Record<LineKind, readonly number[]>>> = {
  hidden: [3, 0.75],
  centre: [6, 0.75, 0.5, 0.75],
  phantom: [6, 0.75, 0.5, 0.75, 0.5, 0.75],
}

/** The stroke class that each kind of line is drawn in. */
export const classes: Readonly<Record<LineKind, StrokeClass>> = {
  visible: 'edge',
  hidden: 'hidden',
  centre: 'axis',
  phantom: 'ghost',
  thin: 'size',
  break: 'torn',
  cut: 'axis',
}

/**
 * One broken line over `length` mm: whole periods, begun and ended by a full dash, the dashes stretched to fit. `undefined` where not even
 * one gap fits: the line is drawn through.
 */
export function fittedDashes(kind: LineKind, length: number): number[] | undefined {
  const period = patterns[kind]
  if (!period) return undefined
  const dash = period[0] ?? 0
  const whole = period.reduce((sum, part) => sum + part, 0)
  const periods = Math.round((length - dash) / whole)
  if (periods < 1) return undefined
  const rest = whole - dash
  const stretched = (length - periods * rest) / (periods + 1)
  if (stretched < 1) return undefined
  const dashes: number[] = []
  for (let i = 0; i < periods; i++) dashes.push(stretched, ...period.slice(1))
  dashes.push(stretched)
  return dashes
}
