import { fromInchName, inch, inchesNamed, poundForce, poundForceInch } from './inch.ts'
import { once, sameSize, type Table, worked } from './table.ts'
import { threadNamed } from './threads.ts'

/** A socket set screw with cup point. All mm, N, N mm. */
export interface SetScrew {
  /** Size without pitch: `M5`, `#10`, `1/4`. */
  readonly size: string
  /** Diameter of the cup point (inch screws: the largest). */
  readonly cupPoint: number
  /** Hexagon key, across flats. */
  readonly hexKey: number
  /** Hexagon key by name: `2.5`, `3/32`, `.050`. */
  readonly hexKeyName: string
  /** Stock lengths, ascending. */
  readonly lengths: readonly number[]
  /** Tightening torque, N mm; absent where no source gives one. */
  readonly seatingTorque?: number
  /** Axial holding force on a plain shaft when so tightened, N; inch screws only. */
  readonly axialHolding?: number
  readonly source: string
}

/** ISO 4029 / ISO 888 lengths, mm. From memory. */
const metricLengths = [2, 2.5, 3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 30, 35, 40, 45, 50, 55, 60]

const iso4029 =
  'ISO 4029 = DIN 916: tables and a data sheet (hexagon, cup point); torque from a shaft-collar hardware torque chart; lengths from memory'
const metric = (
  size: string,
  hexKey: number,
  cupPoint: number,
  shortest: number,
  longest: number,
  newtonMetres: number | undefined,
  source = iso4029,
): SetScrew => ({
  size,
  cupPoint,
  hexKey,
  hexKeyName: String(hexKey),
  lengths: metricLengths.filter((length) => length >= shortest && length <= longest),
  ...(newtonMetres !== undefined && { seatingTorque: newtonMetres * 1000 }),
  source,
})

/** ISO 4029 set screws, cup point. */
export const metricSetScrews: Table<SetScrew> = worked(
  {
    source: 'ISO 4029:2003 (DIN 916) hexagon socket set screws with cup point',
    scope: 'M1.6 to M12',
  },
  () => [
    metric(
      'M1.6',
      0.7,
      0.8,
      2,
      8,
      0.11,
      'ISO 4029, from memory; hexagon and point fall in line with M2 and M2.5; torque that of #0, a screw of the same size',
    ),
    metric('M2', 0.9, 1, 2.5, 10, 0.21),
    metric('M2.5', 1.3, 1.2, 3, 12, 0.57),
    metric('M3', 1.5, 1.4, 3, 16, 0.92),
    metric('M4', 2, 2, 4, 20, 2.2),
    metric('M5', 2.5, 2.5, 5, 25, 4),
    metric('M6', 3, 3, 6, 30, 7.2),
    metric('M8', 4, 5, 8, 40, 17),
    metric('M10', 5, 6, 10, 50, 33),
    metric('M12', 6, 8, 12, 60, undefined),
  ],
)

/** ASME B18.3 lengths in inches, from memory: by 1/32 to 3/16, 1/16 to 1/2, 1/8 to 1, 1/4 to 2, 1/2 to 6. */
const steps = (from: number, to: number, each: number): readonly number[] =>
  Array.from({ length: Math.round((to - from) / each) + 1 }, (_, n) => from + n * each)
const inchLengths = once(() => [
  ...steps(1 / 16, 3 / 16, 1 / 32),
  ...steps(1 / 4, 1 / 2, 1 / 16),
  ...steps(5 / 8, 1, 1 / 8),
  ...steps(1.25, 2, 1 / 4),
  ...steps(2.5, 6, 1 / 2),
])

const b18 = 'ASME B18.3-2003 tables (hexagon, cup point); length range from memory'
const torqueSeen = 'seating torque in two charts'
const holdingSeen = 'holding force calculated back from a printed torsional table'
const rememberedForces = 'torque and holding force from memory (Shigley Table 7-4)'
const unified = (
  size: string,
  hexKeyName: string,
  cupPoint: number,
  lengths: readonly [shortest: string, longest: string],
  torque: number,
  holding: number,
  source: string,
): SetScrew => ({
  size,
  cupPoint: cupPoint * inch,
  hexKey: hexKeyName.startsWith('.') ? Number(hexKeyName) * inch : fromInchName(hexKeyName),
  hexKeyName,
  lengths: inchLengths()
    .filter((length) => length >= inchesNamed(lengths[0]) - sameSize && length <= inchesNamed(lengths[1]) + sameSize)
    .map((length) => length * inch),
  seatingTorque: torque * poundForceInch,
  axialHolding: holding * poundForce,
  source,
})

/** ASME B18.3 set screws, cup point. Columns: size, key, cup point (largest, in), lengths, torque lbf in, holding lbf. */
export const inchSetScrews: Table<SetScrew> = worked(
  {
    source: 'ASME B18.3-2003 socket set screws with cup point; holding forces Shigley Table 7-4',
    scope: '#0 to 1/2 in',
  },
  () => [
    unified('#0', '.028', 0.033, ['1/16', '3/16'], 1, 50, `sizes and lengths from memory (ASME B18.3); ${holdingSeen}`),
    unified('#1', '.035', 0.04, ['1/16', '1/4'], 1.8, 65, `sizes and lengths from memory (ASME B18.3); ${holdingSeen}`),
    unified('#2', '.035', 0.047, ['1/8', '1/4'], 1.8, 85, `${b18}; ${holdingSeen}`),
    unified('#3', '.050', 0.054, ['1/8', '3/8'], 5, 120, `${b18}; ${holdingSeen}`),
    unified('#4', '.050', 0.061, ['1/8', '1/2'], 5, 160, `${b18}; ${holdingSeen}`),
    unified('#5', '1/16', 0.067, ['1/8', '1/2'], 10, 200, `${b18}; ${rememberedForces}`),
    unified('#6', '1/16', 0.074, ['1/8', '1/2'], 10, 250, `${b18}; ${rememberedForces}`),
    unified('#8', '5/64', 0.087, ['1/8', '3/4'], 20, 385, `${b18}; ${rememberedForces}`),
    unified('#10', '3/32', 0.102, ['3/16', '1'], 36, 540, `${b18}; ${rememberedForces}`),
    unified('1/4', '1/8', 0.132, ['3/16', '1-1/2'], 87, 1000, `${b18}; ${torqueSeen}; ${rememberedForces}`),
    unified('5/16', '5/32', 0.172, ['1/4', '2'], 165, 1500, `${b18}; ${torqueSeen}; ${rememberedForces}`),
    unified('3/8', '3/16', 0.212, ['1/4', '2'], 290, 2000, `${b18}; ${torqueSeen}; ${rememberedForces}`),
    unified('7/16', '7/32', 0.252, ['3/8', '2'], 430, 2500, `${b18}; ${rememberedForces}`),
    unified('1/2', '1/4', 0.291, ['3/8', '3'], 620, 3000, `${b18}; ${torqueSeen}; ${rememberedForces}`),
  ],
)

const bySize = {
  metric: once(() => new Map(metricSetScrews.rows.map((row) => [row.size, row] as const))),
  inch: once(() => new Map(inchSetScrews.rows.map((row) => [row.size, row] as const))),
}

/** The cup-point set screw of a thread (`M5`, `#10-32`, `1/4-28`); `undefined` if thread or screw is not in the tables. */
export const setScrewFor = (threadName: string): SetScrew | undefined => {
  const thread = threadNamed(threadName)
  return thread && bySize[thread.system]().get(thread.size)
}
