/** How the card writes a length, a reading of the dial, a force: in the job's units, the other unit after it where the spec asks for both. */
import type { GoNoGo } from '../plan/types.ts'
import { decimalsOf, figure, fraction, rounded } from '../spec/figures.ts'
import type { Spec } from '../spec/spec.ts'
import { inch, poundForce, poundForceInch } from '../standards/inch.ts'
import type { Cell, Run, Words } from './document.ts'

export interface Saying {
  readonly metric: boolean
  /** As short as it is exact: `38`, `16.5`, `0.250`. */
  readonly size: (mm: number) => string
  /** Every decimal that it has, a reading's at the least: `0.1875`, `7.90`. */
  readonly exact: (mm: number) => string
  /** All decimals of a reading: `27.40`, `1.079`. */
  readonly read: (mm: number) => string
  /** One more: `24.010`, `0.9453`. */
  readonly fine: (mm: number, lean?: 'up' | 'down') => string
  /** A limit: no more decimals than it needs, rounded inwards. */
  readonly limit: (mm: number, lean: 'up' | 'down') => string
  /** `27.30 to 27.50`; one number where both are the same. */
  readonly between: (least: number, most: number) => string
  /** With the decimals that its marks ask for. */
  readonly dial: (reading: number) => string
  /** A reading at which one goes on otherwise: with every decimal that it has, those of its marks at the least. */
  readonly stop: (reading: number) => string
  /** So much a pass, by the dial. */
  readonly step: (reading: number) => string
  readonly force: (newtons: number) => string
  readonly torque: (newtonMm: number) => string
  /** The other unit in small type, where it is asked for. */
  readonly other: (mm: number, decimals?: number) => readonly Run[]
  /** A number for a column, with the other unit. */
  readonly cell: (text: string, mm: number, dress?: 'bold') => Cell
}

/** What cannot be worked out, as in a broken job that is drawn all the same, is not written as a number. */
const ifAny =
  <More extends readonly unknown[]>(write: (value: number, ...more: More) => string) =>
  (value: number, ...more: More): string =>
    Number.isFinite(value) ? write(value, ...more) : 'none'

/** Forces are known to two figures, and said in three. */
const threeFigures = (value: number): string => {
  const step = 10 ** Math.max(0, Math.floor(Math.log10(Math.max(value, 1))) - 2)
  return String(Math.round(value / step) * step)
}

export const sayingOf = (spec: Spec): Saying => {
  const { units } = spec
  const metric = units === 'mm'
  const dual = spec.drafting.dual === true
  const own = (mm: number): number => (metric ? mm : mm / inch)
  const least = metric ? 2 : 3
  const read = ifAny((mm) => rounded(own(mm), least))
  const fine = ifAny((mm, lean?: 'up' | 'down') => rounded(own(mm), least + 1, lean))
  const limit = ifAny((mm, lean: 'up' | 'down') =>
    Math.abs(Number(read(mm)) - own(mm)) < 1e-6 ? read(mm) : fine(mm, lean),
  )
  const mark = own(spec.tooling.bar?.dial.mark ?? (metric ? 0.01 : 0.001 * inch))
  const byMarks = decimalsOf(mark, least) ?? 5
  const others = ifAny((mm, decimals: number) => rounded(metric ? mm / inch : mm, decimals))
  const usual = metric ? 3 : 2
  return {
    metric,
    size: ifAny((mm) => figure(mm, units, { unit: false })),
    exact: ifAny((mm) => {
      const decimals = decimalsOf(own(mm), least)
      return decimals === undefined || decimals === 5
        ? figure(mm, units, { unit: false })
        : metric
          ? figure(mm, units, { unit: false, fit: decimals > least })
          : rounded(own(mm), decimals)
    }),
    read,
    fine,
    limit,
    between: (from, to) => {
      if (!Number.isFinite(to - from)) return 'none'
      if (Math.abs(to - from) < 1e-9) return limit(from, 'up')
      // One number of decimals for both ends.
      const exact = [from, to].every((mm) => Math.abs(Number(read(mm)) - own(mm)) < 1e-6)
      return exact ? `${read(from)} to ${read(to)}` : `${fine(from, 'up')} to ${fine(to, 'down')}`
    },
    dial: ifAny((reading) => rounded(own(reading), byMarks)),
    step: ifAny((reading) => rounded(own(reading), decimalsOf(own(reading), least) ?? 5)),
    stop: ifAny((reading) => rounded(own(reading), decimalsOf(own(reading), byMarks) ?? byMarks)),
    force: ifAny((newtons) =>
      metric
        ? newtons >= 5000
          ? `${rounded(newtons / 1000, 1)} kN`
          : `${threeFigures(newtons)} N`
        : `${threeFigures(newtons / poundForce)} lbf`,
    ),
    torque: ifAny((newtonMm) =>
      metric ? `${Number((newtonMm / 1000).toPrecision(2))} N m` : `${threeFigures(newtonMm / poundForceInch)} lbf in`,
    ),
    other: (mm, decimals = usual) => (dual ? [{ dual: ` ${others(mm, decimals)} ${metric ? 'in' : 'mm'}` }] : []),
    cell: (text, mm, dress) => ({
      number: text,
      ...(dress === 'bold' && { bold: true as const }),
      ...(dual && { dual: others(mm, text.split('.')[1]?.length === least + 1 ? usual + 1 : usual) }),
    }),
  }
}

/** Stock, blanks and screws as they are asked for: in inch jobs by their fraction, where they are one. */
export const bought = (mm: number, says: Saying): string => (says.metric ? undefined : fraction(mm)) ?? says.size(mm)

type Part = string | Run | readonly Run[]

/** Words put together of plain ones and of runs. */
export const say = (strings: TemplateStringsArray, ...parts: readonly Part[]): Words =>
  strings.flatMap((text, at): Run[] => {
    const part = parts[at]
    const runs: readonly Run[] =
      part === undefined ? [] : Array.isArray(part) ? (part as readonly Run[]) : [part as Run]
    return [text, ...runs].filter((run) => run !== '')
  })

export const bold = (text: string): Run => ({ bold: text })

/** Cells of go and no go. */
export const goCells = (says: Saying, { go, noGo }: GoNoGo): readonly [Cell, Cell] => [
  says.cell(says.limit(go, 'up'), go, 'bold'),
  // A size that is given exactly has no limits to go by.
  Math.abs(noGo - go) < 1e-9 ? '' : says.cell(says.limit(noGo, 'down'), noGo, 'bold'),
]

const few = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve']
/** `three`, `13`. */
export const counted = (count: number): string => few[count] ?? String(count)
export const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`

/** Degrees as they are set: `5°`, `2.5°`, `5.739°`. */
export const degrees = (angle: number, decimals = 1): string => `${Number(angle.toFixed(decimals))}°`
