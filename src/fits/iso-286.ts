import { gradeWidth, type IsoGrade, isoDeviationTable, isoGrades } from '../standards/iso-286.ts'
import { bandHolding, type Deviations } from '../standards/table.ts'

/** Letters that the tables support: shafts d to p, holes D to P. */
const shaftLetters = ['d', 'e', 'f', 'g', 'h', 'js', 'k', 'm', 'n', 'p'] as const
const holeLetters = ['D', 'E', 'F', 'G', 'H', 'JS', 'K', 'M', 'N', 'P'] as const
type ShaftLetter = (typeof shaftLetters)[number]
type HoleLetter = (typeof holeLetters)[number]

/**
 * Deltas for holes K to N up to IT8 and P up to IT7: ITn − IT(n−1); 0 up to 3 mm. Needs the grade below, so not IT5.
 * ISO 286-1, the special rule that gives hole-basis and shaft-basis fits the same play.
 */
const delta = (nominal: number, grade: IsoGrade): number | undefined => {
  if (nominal <= 3) return 0
  const here = gradeWidth(nominal, grade)
  const below = isoGrades.find((g) => g === grade - 1)
  const under = below && gradeWidth(nominal, below)
  return here === undefined || under === undefined ? undefined : here - under
}

/** Fundamental deviation of a shaft, mm: the upper one for d to h, the lower one for k to p. */
const shaftDeviation = (nominal: number, letter: Exclude<ShaftLetter, 'js'>, grade: IsoGrade): number | undefined => {
  const row = bandHolding(isoDeviationTable.rows, nominal)
  if (!row) return undefined
  if (letter === 'h') return 0
  if (letter === 'k' && grade > 7) return 0
  return row[letter] / 1000
}

/** Upper deviation of a hole K to P, mm. */
const holeUpper = (nominal: number, letter: 'K' | 'M' | 'N' | 'P', grade: IsoGrade): number | undefined => {
  const row = bandHolding(isoDeviationTable.rows, nominal)
  if (!row) return undefined
  if (letter === 'K' && grade > 8) return undefined // the standard has none above IT8
  if (letter === 'N' && grade > 8 && nominal > 3) return 0
  // The one exception of the table, from memory: M6 over 250 to 315 mm is −9, not −11.
  if (letter === 'M' && grade === 6 && nominal > 250) return -0.009
  const mirrored = -row[letter === 'K' ? 'k' : letter === 'M' ? 'm' : letter === 'N' ? 'n' : 'p'] / 1000
  const shifted = letter === 'P' ? grade <= 7 : grade <= 8
  if (!shifted) return mirrored
  const by = delta(nominal, grade)
  return by === undefined ? undefined : mirrored + by
}

const whole = (deviation: number): number => Math.round(deviation * 1e4) / 1e4 + 0

const parse = (toleranceClass: string): { letters: string; grade: IsoGrade } | undefined => {
  const found = /^([A-Za-z]{1,2})(\d{1,2})$/.exec(toleranceClass)
  const grade = isoGrades.find((g) => g === Number(found?.[2]))
  return found?.[1] && grade ? { letters: found[1], grade } : undefined
}

/**
 * Deviations of a tolerance class (`H7`, `g6`, `JS9`) at a nominal size (mm), mm.
 * `undefined` for what the tables do not hold: sizes over 315 mm or not above 0, grades outside IT5 to IT11,
 * letters other than d to p and D to P, K above IT8, and K M N P of IT5 over 3 mm.
 * ISO 286-1:2010; the sources stand with the tables (standards/iso-286.ts).
 */
export const limitsOf = (nominal: number, toleranceClass: string): Deviations | undefined => {
  const read = parse(toleranceClass)
  if (!read) return undefined
  const { letters, grade } = read
  const width = gradeWidth(nominal, grade)
  if (width === undefined) return undefined
  const limits = (lower: number, upper: number): Deviations => ({ lower: whole(lower), upper: whole(upper) })
  if (letters === 'js' || letters === 'JS') return limits(-width / 2, width / 2)
  const isHole = holeLetters.includes(letters as HoleLetter)
  if (!isHole && !shaftLetters.includes(letters as ShaftLetter)) return undefined
  if (letters === 'K' || letters === 'M' || letters === 'N' || letters === 'P') {
    const upper = holeUpper(nominal, letters, grade)
    return upper === undefined ? undefined : limits(upper - width, upper)
  }
  const shaft = shaftDeviation(nominal, letters.toLowerCase() as Exclude<ShaftLetter, 'js'>, grade)
  if (shaft === undefined) return undefined
  if (isHole) return limits(-shaft, -shaft + width) // D to H mirror the shaft of the same letter
  return letters < 'i' ? limits(shaft - width, shaft) : limits(shaft, shaft + width)
}

/** Every class that the tables support at some size, letters by letter, finest grade first. */
export const isoClasses = (): readonly string[] =>
  [...holeLetters, ...shaftLetters].flatMap((letter) =>
    isoGrades.map((grade) => `${letter}${grade}`).filter((name) => limitsOf(20, name)),
  )

/** Whether a text names a tolerance class that `limitsOf` can answer. */
export const isToleranceClass = (text: string): boolean => isoClasses().includes(text)
