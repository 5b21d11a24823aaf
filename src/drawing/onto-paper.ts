/** Part to paper: the scale, and the plain stretches that a long part is cut short by. */
import type { Point } from '../solid/outline.ts'
import type { View } from './view.ts'

/** What is left of a broken stretch on paper, and the gap between the two break lines in it, mm. */
const left = 30
const gap = 4

export interface Cut {
  /** On the part: what is left out. */
  readonly from: number
  readonly to: number
  /** On paper: the two break lines. */
  readonly x1: number
  readonly x2: number
}

export class OntoPaper {
  readonly cuts: readonly Cut[]
  readonly scale: number

  constructor(scale: number, breaks: NonNullable<View['breaks']> = []) {
    this.scale = scale
    const cuts: Cut[] = []
    let lost = 0
    for (const stretch of breaks.toSorted((a, b) => a.from - b.from)) {
      if ((stretch.to - stretch.from) * scale < left + 6) continue
      const stay = (left - gap) / 2 / scale
      const from = stretch.from + stay
      const to = stretch.to - stay
      const x1 = from * scale - lost
      cuts.push({ from, to, x1, x2: x1 + gap })
      lost += (to - from) * scale - gap
    }
    this.cuts = cuts
  }

  readonly x = (value: number): number => {
    let lost = 0
    for (const cut of this.cuts) {
      if (value <= cut.from) break
      if (value < cut.to) return cut.x1 + (gap * (value - cut.from)) / (cut.to - cut.from)
      lost = cut.to * this.scale - cut.x2
    }
    return value * this.scale - lost
  }

  readonly y = (value: number): number => value * this.scale

  at(point: Point): [number, number] {
    return [this.x(point[0]), this.y(point[1])]
  }
}
