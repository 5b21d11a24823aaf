import { isMapping } from './place.ts'
import { present, type Reading } from './reading.ts'
import type { IndexSpec } from './spec.ts'

/** How far a hole of an own plate is off its place where nobody has said, mm: marked out and drilled. Judgement. */
const usualHole = 0.05

/** How the work is turned from slot to slot, where the spec says. */
export function readIndex(reading: Reading): IndexSpec | undefined {
  const at = 'tooling.index'
  if (!isMapping(reading.raw(at))) return undefined
  const written = reading.raw(`${at}.circles`)
  const circles = Array.isArray(written) ? written.flatMap((_, n) => reading.number(`${at}.circles[${n}]`) ?? []) : []
  const radius = reading.length(`${at}.plate.radius`)
  const read: IndexSpec = present({
    by: reading.word(`${at}.by`, ['dividing head', 'gear', 'plate']),
    ratio: reading.number(`${at}.ratio`),
    circles: circles.length > 0 ? [...new Set(circles)].toSorted((a, b) => a - b) : undefined,
    gear: reading.number(`${at}.gear`),
    plate: radius === undefined ? undefined : { radius, hole: reading.length(`${at}.plate.hole`) ?? usualHole },
    eccentric: reading.length(`${at}.eccentric`),
    play: reading.length(`${at}.play`),
  })
  if (read.by === 'gear' && read.gear === undefined) reading.complain(`${at}.gear`, 'the number of its teeth: 48')
  if (read.by === 'plate' && !read.plate) reading.complain(`${at}.plate`, 'the radius of its holes: { radius: 60 }')
  return read
}
