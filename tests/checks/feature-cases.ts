import type { Between, Three } from './cases.ts'
import type { Document } from './jobs.ts'

type Json = Readonly<Record<string, unknown>>

/** A bore without tolerance, a feature by hand; everything of the bar fixed where there is one. */
const job = (bore: number, feature: Json, bar?: Json): Document => ({
  units: 'mm',
  bore: { diameter: bore, tolerance: [0, 0], length: 30 },
  hub: { outside: 90 },
  feature,
  tooling: { bar: { infeed: 0.02, ...bar } },
})

const square = (bore: number, bar: Json = {}): Document => job(bore, { socket: { sides: 4, across: 16 } }, bar)
const splined = (bar: Json): Document => job(23, { spline: { count: 6, width: 6, major: 26.1 } }, bar)

/** Cases of the rules that keyways have nothing to do with. */
export const featureCases: Readonly<Record<string, Three | Between>> = {
  'nose-clears-tooth': {
    holds: 0.2,
    breaks: 0.8,
    at: (cornerRadius) => splined({ diameter: 14, bit: { size: 6 }, nose: { cornerRadius } }),
  },
  'slots-have-limits': {
    holds: 0.02,
    breaks: 0.001,
    at: (zone) => job(23, { spline: { count: 6, width: [6, 6 + zone], major: [26, 26.1] } }, { diameter: 14 }),
  },
  'bore-holds-flats': { holds: 17, breaks: 15.5, at: (bore) => square(bore) },
  'flats-are-left': { holds: 17, breaks: 20, at: (bore) => square(bore) },
  'nose-fills-corner': {
    holds: 7.5,
    breaks: 3,
    at: (width) => square(17.4, { diameter: 13, bit: { size: 8 }, nose: { width } }),
  },
  // Ø12 in Ø16, 1 mm wide: 8 − √(64 − 0.25) of web.
  'web-is-cut': {
    holds: 0.02,
    breaks: 0.06,
    at: (infeed) => job(12, { slit: { width: 1, count: 3, outside: 16 } }, { diameter: 8, bit: { size: 2 }, infeed }),
  },
}
