import type { Finding } from '../../src/checks/rule.ts'

/** How each unit is printed in a reason. */
const written: Readonly<Record<string, RegExp>> = {
  mm: /(-?[\d.]+) (?:mm|in)(?![²\w/])/g,
  mm2: /(-?[\d.]+) (?:mm|in)²/g,
  N: /(-?[\d.]+) (?:N|lbf)(?![\w/]| in| m)/g,
  'N mm': /(-?[\d.]+) (?:N m|lbf in)/g,
  'N/mm2': /(-?[\d.]+) (?:N\/mm²|ksi)/g,
  ratio: /(-?\d+\.\d{3})(?![\d ]*(?:mm|in)\b)/g,
  HRC: /(-?[\d.]+) HRC/g,
  degrees: /(-?[\d.]+)°/g,
}

/** What a reader sees measured and asked for, where the reason says both; which is which follows the sentence: measured first. */
export const printed = ({ reason, unit }: Finding): readonly [measured: number, limit: number] | undefined => {
  const pattern = written[unit]
  const found = pattern ? [...reason.matchAll(pattern)].map(([, number]) => Number(number)) : []
  const [measured, limit] = found
  return found.length === 2 && measured !== undefined && limit !== undefined ? [measured, limit] : undefined
}
