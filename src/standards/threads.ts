import { drillNamed } from './drills.ts'
import { inch, inchesNamed } from './inch.ts'
import { once, type Table, worked } from './table.ts'

/** A thread on hand for set screws and taps. All mm. */
export interface Thread {
  /** `M5`, `#10-32`, `1/4-28`: what it is asked for by. */
  readonly name: string
  readonly system: 'metric' | 'inch'
  /** The screw's size alone: `M5`, `#10`, `1/4`. */
  readonly size: string
  readonly major: number
  readonly pitch: number
  /** Basic minor diameter of the nut thread: major − 1.0825 pitch. */
  readonly minorInternal: number
  readonly tapDrill: { readonly name: string; readonly diameter: number }
  /** Callout of the tapped hole: `M5-6H`, `#10-32 UNF-2B`. */
  readonly callout: string
  readonly source: string
}

/** Depth of the basic thread in the nut, in pitches: 5/8 of √3/2 on each side. ISO 68-1; the unified form is the same. */
const nutDepth = (5 * Math.sqrt(3)) / 8

const drill = (name: string): Thread['tapDrill'] => {
  const found = drillNamed(name)
  if (!found) throw new Error(`no drill named ${name}`)
  return found
}

const iso = 'tap drill of ISO 2306 (core-hole table of a general CAD thread table); diameters by ISO 68-1'
const isoRemembered =
  'tap drill of ISO 2306, from memory: 77 % of thread by 1.299 pitch, as in its neighbours; diameters by ISO 68-1'
const chart =
  'tap drill of the customary 75 % chart, from memory; 68 to 80 % of thread by 1.299 pitch; diameters by ASME B1.1'
const chartRemembered =
  'size, pitch and tap drill from memory (ASME B1.1, customary 75 % chart); 66 to 81 % of thread by 1.299 pitch'

const metric = (size: string, pitch: number, tap: string, source: string): Thread => {
  const major = Number(size.slice(1))
  return {
    name: size,
    system: 'metric',
    size,
    major,
    pitch,
    minorInternal: major - nutDepth * pitch,
    tapDrill: drill(tap),
    callout: `${size}-6H`,
    source,
  }
}

/** Major diameter of an inch screw, inches: number sizes are .060 + .013 n. */
const majorInches = (size: string): number =>
  size.startsWith('#') ? (60 + 13 * Number(size.slice(1))) / 1000 : inchesNamed(size)

const unified = (size: string, perInch: number, series: 'UNC' | 'UNF', tap: string, source: string): Thread => {
  const [major, pitch] = [majorInches(size) * inch, inch / perInch]
  return {
    name: `${size}-${perInch}`,
    system: 'inch',
    size,
    major,
    pitch,
    minorInternal: major - nutDepth * pitch,
    tapDrill: drill(tap),
    callout: `${size}-${perInch} ${series}-2B`,
    source,
  }
}

/** Metric coarse threads, ascending. */
export const metricThreads: Table<Thread> = worked(
  {
    source: 'ISO 261 and ISO 724 coarse series; tap drills of ISO 2306',
    scope: 'M1.6 to M12, coarse',
  },
  () => [
    metric('M1.6', 0.35, '1.25', isoRemembered),
    metric('M2', 0.4, '1.6', iso),
    metric('M2.5', 0.45, '2.05', iso),
    metric('M3', 0.5, '2.5', iso),
    metric('M3.5', 0.6, '2.9', iso),
    metric('M4', 0.7, '3.3', iso),
    metric('M5', 0.8, '4.2', iso),
    metric('M6', 1, '5', iso),
    metric('M8', 1.25, '6.8', iso),
    metric('M10', 1.5, '8.5', iso),
    metric('M12', 1.75, '10.2', iso),
  ],
)

/** Unified coarse and fine threads: coarse ascending, then fine ascending. */
export const unifiedThreads: Table<Thread> = worked(
  {
    source: 'ASME B1.1 UNC and UNF series; tap drills of the customary 75 % chart',
    scope: '#0 to 1/2 in, coarse and fine',
  },
  () => [
    unified('#1', 64, 'UNC', '#53', chartRemembered),
    unified('#2', 56, 'UNC', '#50', chart),
    unified('#3', 48, 'UNC', '#47', chart),
    unified('#4', 40, 'UNC', '#43', chart),
    unified('#5', 40, 'UNC', '#38', chart),
    unified('#6', 32, 'UNC', '#36', chart),
    unified('#8', 32, 'UNC', '#29', chart),
    unified('#10', 24, 'UNC', '#25', chart),
    unified('#12', 24, 'UNC', '#16', chart),
    unified('1/4', 20, 'UNC', '#7', chart),
    unified('5/16', 18, 'UNC', 'F', chart),
    unified('3/8', 16, 'UNC', '5/16', chart),
    unified('7/16', 14, 'UNC', 'U', chart),
    unified('1/2', 13, 'UNC', '27/64', chart),
    unified('#0', 80, 'UNF', '3/64', chartRemembered),
    unified('#1', 72, 'UNF', '#53', chartRemembered),
    unified('#2', 64, 'UNF', '#50', chart),
    unified('#3', 56, 'UNF', '#45', chart),
    unified('#4', 48, 'UNF', '#42', chart),
    unified('#5', 44, 'UNF', '#37', chart),
    unified('#6', 40, 'UNF', '#33', chart),
    unified('#8', 36, 'UNF', '#29', chart),
    unified('#10', 32, 'UNF', '#21', chart),
    unified('#12', 28, 'UNF', '#14', chart),
    unified('1/4', 28, 'UNF', '#3', chart),
    unified('5/16', 24, 'UNF', 'I', chart),
    unified('3/8', 24, 'UNF', 'Q', chart),
    unified('7/16', 20, 'UNF', '25/64', chart),
    unified('1/2', 20, 'UNF', '29/64', chart),
  ],
)

const named = (rows: readonly Thread[]): ReadonlyMap<string, Thread> =>
  new Map(
    rows.flatMap((thread) => [[thread.name, thread] as const, [`${thread.name}x${thread.pitch}`, thread] as const]),
  )
const metricNamed = once(() => named(metricThreads.rows))
const unifiedNamed = once(() => named(unifiedThreads.rows))

/** The thread of this name (`M5`, `#10-32`, `1/4-28`; `M5x0.8` too), or `undefined`. */
export const threadNamed = (name: string): Thread | undefined => {
  const bare = name.trim().replace(/\s+UN[CF]$/i, '')
  return metricNamed().get(bare) ?? unifiedNamed().get(bare)
}

/** Every thread name, metric first. */
export const threadNames = (): readonly string[] =>
  [...metricThreads.rows, ...unifiedThreads.rows].map((thread) => thread.name)
