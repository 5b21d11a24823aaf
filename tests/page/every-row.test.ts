import { describe, expect, it } from 'vitest'
import { allRows } from '../../src/page/rows/complaining.ts'
import type { Row } from '../../src/page/rows/row.ts'
import { statedShown } from '../../src/page/rows/shown.ts'
import { type InUnits, taken } from '../../src/page/rows/typed.ts'
import { readLength } from '../../src/spec/length.ts'
import { patchDocument } from '../../src/spec/patch.ts'
import { placeOf } from '../../src/spec/place.ts'
import { specSchema } from '../../src/spec/schema.ts'

const mm: InUnits = { job: 'mm', shown: 'mm' }
const inch: InUnits = { job: 'in', shown: 'in' }
const mmShownInInch: InUnits = { job: 'mm', shown: 'in' }
const inchShownInMm: InUnits = { job: 'in', shown: 'mm' }

/** What a hand may type into each kind of blank, in mm and in inches: the same, as near as the figures go. */
const typed = ({ kind, path }: Row): readonly (readonly [mm: string, inch: string])[] => {
  switch (kind.is) {
    case 'length':
      return [
        ['6.35', '1/4'],
        ['25.4', '1'],
        ['12,7', '.5'],
        ['38.1 mm', '1-1/2 in'],
      ]
    case 'limits':
      return [
        ['6.35', '1/4'],
        ['6.35 to 6.604', '1/4 to .26'],
      ]
    case 'tolerance':
      return [
        ['H7', 'H7'],
        ['0, +0.0254', '0, +.001'],
      ]
    case 'angle':
      return [['7.5', '7.5']]
    case 'angles':
      return [
        ['0', '0'],
        ['0, 90', '0, 90'],
      ]
    case 'torque':
      return [['90 N m', '800 lbf in']]
    case 'force':
      return [
        ['900', '200'],
        ['20 kN', '4500 lbf'],
      ]
    case 'area':
      return [['8', '0.012']]
    case 'stress':
      return [['400', '62000']]
    case 'stiffness':
      return [['5000', '28550']]
    case 'number':
      // A share is no more than the whole.
      return path.endsWith('efficiency') ? [['0.8', '0.8']] : [['4', '4']]
    case 'list':
      return kind.of === 'texts'
        ? [['M5, M6', '#10-32, 1/4-28']]
        : kind.of === 'counts'
          ? [['36, 60', '36, 60']]
          : [
              ['6, 8, 10', '1/4, 5/16, 3/8'],
              ['6.35 mm, 9 mm', '1/4 in, 3/8 in'],
            ]
    case 'text':
      return [['steel', 'steel']]
    case 'word':
    case 'branch':
      return Object.keys(kind.words).map((word) => [word, word] as const)
    case 'flag':
    case 'presence':
      return []
  }
}

/** Where the reader does not take what stands in a document: at this path, or under or over it. */
const refused = (document: unknown, path: string): readonly string[] => {
  const read = specSchema.safeParse(document)
  if (read.success) return []
  return read.error.issues
    .filter(({ path: at }) => placeOf(path).every((part, place) => at.length <= place || at[place] === part))
    .filter(({ path: at }) => at.length >= placeOf(path).length)
    .map(({ message }) => message)
}

const within = (row: Row, units: InUnits): unknown => {
  const feature = /^feature\.(\w+)/.exec(row.path)?.[1] ?? 'keyway'
  return { name: 'row', units: units.job, bore: { diameter: 24, length: 30 }, feature: { [feature]: {} } }
}

describe('every line of the form', () => {
  for (const row of allRows)
    it(`${row.path}: takes what is typed, in mm and in inches, and shows it again`, () => {
      const wrong: unknown[] = []
      for (const pair of typed(row))
        for (const units of [mm, inch, mmShownInInch, inchShownInMm]) {
          if (row.kind.is === 'branch') continue
          const text = pair[units.shown === 'mm' ? 0 : 1]
          const read = row.kind.is === 'word' ? { value: text } : taken(text, row.kind, units)
          if (!('value' in read)) {
            wrong.push([text, units, 'is not taken', read.accepted])
            continue
          }
          const document = patchDocument(within(row, units), { [row.path]: read.value as string })
          const complaints = refused(document, row.path)
          if (complaints.length > 0) wrong.push([text, units, read.value, complaints])
          // A bare length means what was typed, whatever units the job is in.
          if (row.kind.is === 'length') {
            const [as, meant] = [readLength(read.value, units.job), readLength(text, units.shown)]
            if (as === undefined || as !== meant) wrong.push([text, units, as, meant])
          }
          const shown = statedShown(read.value, row.kind, units)
          if (row.kind.is !== 'word' && shown === '') wrong.push([text, units, 'shows nothing'])
          // Shown again and taken again it is the same: looking changes nothing.
          const again = row.kind.is === 'word' ? read : taken(shown, row.kind, units)
          if (!('value' in again)) wrong.push([text, units, `${shown} is not taken again`])
        }
      expect(wrong).toEqual([])
    })

  it('what cannot be read is not taken, and says what is', () => {
    for (const row of allRows) {
      if (
        !['length', 'limits', 'force', 'torque', 'stress', 'area', 'stiffness', 'angle', 'number'].includes(row.kind.is)
      )
        continue
      const read = taken('abc', row.kind, mm)
      expect([row.path, 'accepted' in read && read.accepted.length > 3]).toEqual([row.path, true])
    }
  })
})
