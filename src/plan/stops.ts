/** Where to stop and measure, as readings of the dial. All mm. */
import { type Dial, downTo, nearTo, upTo } from './dial.ts'

export interface Stops {
  /** On the way, ascending; none before across can be measured. */
  readonly parts: readonly number[]
  /** The last 0.08 mm begin, or the web of a slit; absent where the whole infeed is hardly more. */
  readonly edge?: number
  readonly web: boolean
  readonly last: number
}

/** What is taken last, with a stoned edge. Source: common practice, no source. */
export const lastOfAll = 0.08

/** A whole reading is easier to stop at: of ten marks, five or two, as long as no more than 0.05 mm of infeed is left over by it. */
const wholeReading = (dial: Dial, least: number, middle: number): number => {
  const spare = 0.05 * dial.perInfeed
  const whole = [10, 5, 2, 1].map((marks) => downTo(least, marks * dial.mark))
  return Math.max(0, whole.find((reading) => middle - reading <= spare + 1e-9) ?? downTo(least, dial.mark))
}

/**
 * Quarters of the way, 0.08 mm before the end, and the end: a whole reading that no bore within its limits makes too deep. `least` and
 * `middle`: readings at the floor of the largest bore and of the one worked for; `crown`: reading from which the crown is surely cut away;
 * `web`: where the web of a slit begins.
 */
export const stopsOf = (dial: Dial, least: number, middle: number, crown: number, web?: number): Stops => {
  const last = wholeReading(dial, least, middle)
  const step = last >= 40 * dial.mark ? 5 * dial.mark : dial.mark
  const measurable = upTo(crown, dial.mark)
  const edge = web === undefined ? downTo(last - lastOfAll * dial.perInfeed, step) : downTo(web, dial.mark)
  const hasEdge = edge >= measurable && edge > 0 && edge < last
  const end = hasEdge ? edge : last
  const quarters = [0.25, 0.5, 0.75].map((part) => nearTo(part * last, step))
  // A quarter that comes before the crown is cut away moves up to it.
  const parts = [...new Set(quarters.map((reading) => (reading < measurable ? upTo(measurable, step) : reading)))]
  const apart = Math.max(2 * dial.mark, 0.08 * last)
  return {
    parts: parts.filter((reading) => reading > 0 && reading <= end - apart),
    ...(hasEdge && { edge }),
    web: web !== undefined,
    last,
  }
}
