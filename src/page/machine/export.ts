import { gateAt, type Job, measuredAs } from './job.ts'
import type { AtGate } from './order.ts'
import { record, type Value } from './record.ts'
import { outcome } from '../answers.ts'
import { handOver } from '../coming-and-going.ts'
import { expectedOf } from '../../plan/standing.ts'
import { document } from '../job.ts'
import { overAt } from './screen-bit.tsx'
import { overOf } from './screen-push.tsx'

/** One value as it goes out: what it is of, what was expected, what was found, in the job's unit. */
interface Reading {
  readonly what: string
  readonly dial: string
  readonly expected: string
  readonly measured: string
  readonly when: string
  readonly note: string
}

const names: Readonly<Record<string, string>> = {
  'bore-near-one': 'bore, near end, one way',
  'bore-near-square': 'bore, near end, square to it',
  'bore-far-one': 'bore, far end, one way',
  'bore-far-square': 'bore, far end, square to it',
  'mark-first': 'first touch, first mark',
  'mark-second': 'first touch, second mark',
  add: 'after what was added',
  'add-from': 'before what was added',
}

const gateOfKey = (now: Job, key: string) =>
  now.order.find((screen): screen is AtGate => screen.is === 'gate' && screen.key === key)

const whatOf = (now: Job, key: string): { readonly what: string; readonly expected?: number | undefined } => {
  const gate = gateOfKey(now, key)
  const at = gate && gateAt(now, gate.cut, gate.gate)
  if (at && now.plan) {
    const expected = expectedOf(at, now.plan.gateBy)
    return {
      what: `gate at ${now.says.dial(at.reading)}, ${measuredAs(now)}`,
      expected: expected.expected ?? expected.byDial,
    }
  }
  const setting = /^over-(\d+)$/.exec(key)?.[1]
  if (setting !== undefined) return { what: 'over bar and nose', expected: overAt(now, Number(setting))?.middle }
  const push = /^over-pass-(\d+)-(\d+)$/.exec(key)
  if (push)
    return {
      what: `pass ${Number(push[2]) + 1}, over bushing, shims and last tooth`,
      expected: overOf(now, Number(push[2]))?.over,
    }
  return { what: names[key] ?? key.replace(/^(?:seen|measured)-/, '').replace(/-(near|far)$/, ', $1 end') }
}

/** Every value that was measured, in the order in which they were; then what was gone past without. */
export const readingsOf = (now: Job): readonly Reading[] => {
  const { values, noted } = record.peek()
  const measured = Object.entries(values)
    .toSorted(([, a], [, b]) => (a.when < b.when ? -1 : 1))
    .map(([key, value]: [string, Value]): Reading => {
      const { what, expected } = whatOf(now, key)
      return {
        what,
        dial: value.dial === undefined ? '' : now.says.dial(value.dial),
        expected: expected === undefined ? '' : now.says.read(expected),
        measured: now.says.fine(value.mm),
        when: value.when,
        note: noted[key] ?? '',
      }
    })
  const without = Object.entries(noted)
    .filter(([key]) => values[key] === undefined)
    .map(
      ([key, why]): Reading => ({
        what: whatOf(now, key).what,
        dial: '',
        expected: '',
        measured: '',
        when: '',
        note: why,
      }),
    )
  return [...measured, ...without]
}

const columns = ['what', 'dial', 'expected', 'measured', 'when', 'note'] as const

/** A field that begins like a sum would be worked out by the program that opens it. */
const field = (text: string): string => {
  const safe = /^[=+@]/.test(text) ? `'${text}` : text
  return /[",\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}

export const csvOf = (now: Job): string =>
  [
    [...columns, 'unit'].join(','),
    ...readingsOf(now).map((reading) => [...columns.map((column) => field(reading[column])), now.unit].join(',')),
  ]
    .map((line) => `${line}\r\n`)
    .join('')

/** The spec as it stands with the readings as notes under it: still a spec that can be opened. */
export const yamlOf = (now: Job): string => {
  const text = outcome.peek()?.text ?? ''
  const lines = readingsOf(now).map(({ what, dial, expected, measured, when, note }) =>
    [
      `#   ${what}: ${measured === '' ? 'not measured' : `${measured} ${now.unit}`}`,
      ...(expected === '' ? [] : [`expected ${expected}`]),
      ...(dial === '' ? [] : [`dial ${dial}`]),
      ...(when === '' ? [] : [when]),
      ...(note === '' || note === 'not measured' ? [] : [note]),
    ].join('; '),
  )
  return `${text.endsWith('\n') ? text : `${text}\n`}\n# Readings at the machine\n${lines.join('\n')}\n`
}

export const jsonOf = (now: Job): string =>
  `${JSON.stringify({ format: 'borewright-readings/1', name: now.design.spec.name, unit: now.unit, strokes: record.peek().strokes, readings: readingsOf(now), job: document.peek() }, undefined, 2)}\n`

const named = (now: Job, ending: string): string => `${now.design.spec.name}${ending}`
export const exportCsv = (now: Job): void => handOver(named(now, '-readings.csv'), csvOf(now), 'text/csv')
export const exportYaml = (now: Job): void =>
  handOver(named(now, '-with-readings.yaml'), yamlOf(now), 'application/yaml')
export const exportJson = (now: Job): void =>
  handOver(named(now, '-with-readings.json'), jsonOf(now), 'application/json')
