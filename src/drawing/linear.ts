/** Linear dimensions: every way of drawing one at a given distance from the outline. */
import { type Label, labelOfWorth } from './label.ts'
import type { Manner } from './numbers.ts'
import { is, type Piece } from './piece.ts'
import type { Style } from './style.ts'
import type { Linear } from './view.ts'
import { drawDatum, drawFrame, type Frame, frameOf, write } from './writing.ts'

/** One way of drawing: how it reads, where along the line, and what that costs. */
export interface Form {
  readonly kind: 'over' | 'beside' | 'shelf' | 'in' | 'between' | 'beyond' | 'shoulder'
  /** Place of the text over the line, 0 to 1. */
  readonly place: number
  /** Which end the text goes beyond: 1 the upper or right one. */
  readonly end: 1 | -1
  /** Shelf or shoulder: towards +x or -x. */
  readonly run: 1 | -1
  readonly rise: number
  /** The end that the datum stands on; 0 under the text. */
  readonly datum: 1 | -1 | 0
  readonly cost: number
}

export interface Prepared {
  readonly callout: Linear
  readonly label: Label
  readonly axis: 'x' | 'y'
  /** Ends on paper, t1 < t2, and where their extension lines start. */
  readonly t1: number
  readonly t2: number
  readonly foot1: number
  readonly foot2: number
  readonly out: 1 | -1
  /** The outline's extreme on that side. */
  readonly base: number
  readonly under: readonly Frame[]
  readonly pointing?: { readonly frame: Frame; readonly end: 1 | -1 }
  readonly datum?: string
  /** Filled by drawing: extent along the line of arrows, tails and text. */
  extent: [number, number]
  /** A point of the dimension line and of the text. */
  text: [number, number]
}

const shelfRises = [4, 7, 10, 14]

/** The ways in which a dimension may be drawn. */
export function formsOf(style: Style, prepared: Prepared): Form[] {
  const { label, axis, t1, t2, out } = prepared
  const span = t2 - t1
  const forms: Form[] = []
  const put = (kind: Form['kind'], cost: number, place = 0.5, end: 1 | -1 = 1, run: 1 | -1 = 1, rise = 0): void => {
    forms.push({ kind, place, end, run, rise, datum: 0, cost })
  }
  const threePlaces = (kind: 'over' | 'in'): void => {
    put(kind, 0, 0.5)
    put(kind, 1.2, 0.68)
    put(kind, 2 * 1.2, 0.32)
  }
  const eitherEnd = (kind: 'beside' | 'beyond'): void => {
    put(kind, 3.6, 0.5, 1)
    put(kind, 3.6 + 1.2, 0.5, -1)
  }
  /** Text led out of an upright dimension line, from either end to either side, the farther the dearer; `each` the cost of a mm of rise. */
  const turnedOut = (kind: 'shelf' | 'shoulder', cost: number, each: number): void => {
    for (const end of [1, -1] as const)
      for (const turnOut of [1, -1])
        for (const rise of shelfRises)
          put(kind, cost + each * rise + (turnOut < 0 ? 0.8 : 0), 0.5, end, (turnOut * out) as 1 | -1, rise)
  }
  const framed = prepared.under.length > 0
  const frameWidth = Math.max(0, ...prepared.under.map((frame) => frame.width))
  const width = Math.max(label.width, frameWidth)
  const high = label.up + label.down + prepared.under.reduce((sum, frame) => sum + frame.height + 1.2, 0)
  const inside = span >= 2 * style.arrow + 1.5
  if (style.reading === 'above') {
    if ((axis === 'x' || !framed) && span >= label.width + 2) threePlaces('over')
    if (axis === 'y') turnedOut('shelf', 2.4, 0.1)
    if (axis === 'x' || !framed) eitherEnd('beside')
  } else {
    const along = axis === 'x' ? width : high
    if (span >= 2 * style.arrow + 3.5 + along) threePlaces('in')
    if (span >= along + 2 && !inside) put('between', 2.4)
    eitherEnd('beyond')
    if (axis === 'y') turnedOut('shoulder', 4.2, 0.15)
  }
  if (prepared.datum === undefined) return forms
  return forms.flatMap((form): Form[] => {
    const free = ([-1, 1] as const).filter(
      (end) => inside && !(end === form.end && ['beside', 'shelf', 'beyond', 'shoulder'].includes(form.kind)),
    )
    return free.length > 0
      ? free.map((datum, index) => ({ ...form, datum, cost: form.cost + 0.3 * index }))
      : [{ ...form, datum: 0 as const, cost: form.cost + 1 }]
  })
}

/** Measures a linear callout. `at` maps part to paper along its axis and across it; `base` is the outline's extreme on its side. */
export function prepareLinear(
  callout: Linear,
  style: Style,
  manner: Manner,
  along: (value: number) => number,
  across: (value: number) => number,
  base: number,
  label: Label = labelOfWorth(callout.worth, manner, style.text),
): Prepared {
  const swapped = callout.a > callout.b
  const hangs = callout.hangs ?? []
  const frames = hangs.filter((hung) => hung.hang === 'frame')
  const under = frames.filter((hung) => !hung.at).map((hung) => frameOf(hung, manner, style.small))
  const pointed = frames.find((hung) => hung.at)
  const datum = hangs.find((hung) => hung.hang === 'datum')
  return {
    callout,
    label,
    axis: callout.axis,
    t1: along(Math.min(callout.a, callout.b)),
    t2: along(Math.max(callout.a, callout.b)),
    foot1: across(swapped ? callout.fromB : callout.fromA),
    foot2: across(swapped ? callout.fromA : callout.fromB),
    out: (callout.side === 'top' || callout.side === 'right' ? 1 : -1) as 1 | -1,
    base,
    under,
    ...(pointed && {
      pointing: {
        frame: frameOf(pointed, manner, style.small),
        end: ((pointed.at === 'b') !== swapped ? 1 : -1) as 1 | -1,
      },
    }),
    ...(datum && { datum: datum.letter }),
    extent: [0, 0],
    text: [0, 0],
  }
}

/** Draws `prepared` into `piece`, its line `offset` mm from the outline, in the given form. False where the form does not go there. */
export function drawLinear(piece: Piece, prepared: Prepared, style: Style, offset: number, form: Form): boolean {
  const { axis, t1, t2, out, label, under } = prepared
  const level = axis === 'x'
  const line = prepared.base + out * offset
  const arrow = style.arrow
  const span = t2 - t1
  const segment = (kind: 5 | 4 | 8, ta: number, oa: number, tb: number, ob: number): void =>
    level ? piece.segment(kind, ta, oa, tb, ob) : piece.segment(kind, oa, ta, ob, tb)
  const arrowAt = (t: number, way: 1 | -1): void =>
    level ? piece.arrow(t, line, way, 0) : piece.arrow(line, t, 0, way)

  const inside = form.kind === 'in' || (form.kind !== 'between' && span >= 2 * arrow + 1.5)
  let low = inside ? t1 : t1 - arrow - 5
  let high = inside ? t2 : t2 + arrow + 5
  if (inside) {
    arrowAt(t1, -1)
    arrowAt(t2, 1)
  } else {
    arrowAt(t1, 1)
    arrowAt(t2, -1)
  }
  const tail = inside ? 0 : arrow + 1
  const lift = label.down > 0 ? label.down + 0.6 : style.underText
  const width = Math.max(label.width, ...under.map((frame) => frame.width))
  // Frames stand under the text: their left ends at x, the first one's top at y.
  const hang = (x: number, top: number): void => {
    let y = top
    for (const frame of under) {
      drawFrame(piece, frame, x, y - frame.height)
      y -= frame.height + 1.2
    }
  }
  const hung = under.reduce((sum, frame) => sum + frame.height + 1.2, 0)
  let textAt = 0

  switch (form.kind) {
    case 'over': {
      const half = label.width / 2
      const middle = Math.min(Math.max(t1 + span * form.place, t1 + half + 1), t2 - half - 1)
      segment(is.dimension, low, line, high, line)
      if (level) {
        write(piece, label, middle - half, line + lift, 0, 0.7)
        hang(middle - Math.max(...under.map((frame) => frame.width), 0) / 2, line - 1.5)
      } else write(piece, label, line - lift, middle - half, 90, 0.7)
      textAt = middle
      break
    }
    case 'beside': {
      const near = form.end > 0 ? t2 + Math.max(style.past - 1, tail) : t1 - Math.max(style.past - 1, tail)
      const start = form.end > 0 ? near : near - label.width
      if (form.end > 0) high = Math.max(high, start + label.width)
      else low = Math.min(low, start)
      segment(is.dimension, low, line, high, line)
      if (level) {
        write(piece, label, start, line + lift, 0, 0.7)
        hang(form.end > 0 ? start : start + label.width - width, line - 1.5)
      } else write(piece, label, line - lift, start, 90, 0.7)
      textAt = start + label.width / 2
      break
    }
    case 'shelf': {
      const clear = form.end < 0 ? label.up + lift + 1.4 : under.length > 0 ? hung + 1.8 : 0
      const rise = Math.max(form.rise + (inside ? 0 : arrow), tail + clear)
      const t = form.end > 0 ? t2 + rise : t1 - rise
      if (form.end > 0) high = t
      else low = t
      segment(is.dimension, low, line, high, line)
      segment(is.shelf, t, line, t, line + form.run * (width + 1.8))
      const x = form.run > 0 ? line + 1.6 : line - 1.6 - label.width
      write(piece, label, x, t + lift, 0, 0.7)
      hang(form.run > 0 ? line + 1.6 : line - 1.6 - width, t - 1.5)
      textAt = t
      break
    }
    case 'in':
    case 'between': {
      const along = level ? width : label.up + label.down + hung
      const middle =
        form.kind === 'between'
          ? (t1 + t2) / 2
          : Math.min(Math.max(t1 + span * form.place, t1 + along / 2 + arrow + 1.5), t2 - along / 2 - arrow - 1.5)
      const from = middle - along / 2 - 1
      const to = middle + along / 2 + 1
      if (form.kind === 'in') {
        segment(is.dimension, t1, line, from, line)
        segment(is.dimension, to, line, t2, line)
      } else {
        segment(is.dimension, low, line, t1, line)
        segment(is.dimension, t2, line, high, line)
      }
      if (level) {
        write(piece, label, middle - label.width / 2, line - (label.up - label.down) / 2, 0, 0.7)
        hang(middle - width / 2, line - (label.up + label.down) / 2 - 1.2)
      } else {
        const top = middle + along / 2
        write(piece, label, line - label.width / 2, top - label.up, 0, 0.7)
        hang(line - width / 2, top - label.up - label.down - 1.2)
      }
      textAt = middle
      break
    }
    case 'beyond': {
      const shaft = Math.max(tail, style.past) + 1
      if (form.end > 0) high = Math.max(inside ? t2 : t2 + tail, t2 + shaft)
      else low = Math.min(inside ? t1 : t1 - tail, t1 - shaft)
      if (inside) segment(is.dimension, low, line, high, line)
      else {
        segment(is.dimension, low, line, t1, line)
        segment(is.dimension, t2, line, high, line)
      }
      const near = form.end > 0 ? high + 1 : low - 1
      if (level) {
        const x = form.end > 0 ? near : near - width
        write(piece, label, form.end > 0 ? x : near - label.width, line - (label.up - label.down) / 2, 0, 0.7)
        hang(x, line - (label.up + label.down) / 2 - 1.2)
        if (form.end > 0) high = near + width
        else low = near - width
      } else {
        const whole = label.up + label.down + hung
        const top = form.end > 0 ? near + whole : near
        write(piece, label, line - label.width / 2, top - label.up, 0, 0.7)
        hang(line - width / 2, top - label.up - label.down - 1.2)
        if (form.end > 0) high = near + whole
        else low = near - whole
      }
      textAt = near
      break
    }
    case 'shoulder': {
      const clear = form.end < 0 ? (label.up + label.down) / 2 : (label.up + label.down) / 2 + hung
      const rise = Math.max(form.rise + (inside ? 0 : arrow), tail + clear + 1)
      const t = form.end > 0 ? t2 + rise : t1 - rise
      if (form.end > 0) high = t
      else low = t
      if (inside) segment(is.dimension, low, line, high, line)
      else {
        segment(is.dimension, low, line, t1, line)
        segment(is.dimension, t2, line, high, line)
      }
      segment(is.shelf, t, line, t, line + form.run * 3)
      const x = form.run > 0 ? line + 4 : line - 4 - label.width
      write(piece, label, x, t - (label.up - label.down) / 2, 0, 0.7)
      hang(form.run > 0 ? line + 4 : line - 4 - width, t - (label.up + label.down) / 2 - 1.2)
      textAt = t
    }
  }

  for (const [t, foot] of [
    [t1, prepared.foot1],
    [t2, prepared.foot2],
  ] as const) {
    const from = foot + out * style.gap
    const to = line + out * style.past
    if ((to - from) * out > 0.2) segment(is.extension, t, from, t, to)
  }
  if (prepared.datum !== undefined) {
    const letters = style.small
    if (form.datum !== 0) {
      const t = form.datum > 0 ? t2 : t1
      if (level) drawDatum(piece, prepared.datum, t, line, form.datum, 0, letters)
      else drawDatum(piece, prepared.datum, line, t, 0, form.datum, letters)
      if (form.datum > 0) high = Math.max(high, t2 + 6)
      else low = Math.min(low, t1 - 6)
    } else {
      // Under the text: on the shelf, or under the line beside the arrows.
      const box = piece.boxes
      const x = (box[0]! + box[2]!) / 2
      const y =
        form.kind === 'shelf'
          ? textAt
          : level && form.kind !== 'in' && form.kind !== 'between' && form.kind !== 'beyond'
            ? line
            : box[1]! - 0.8
      drawDatum(piece, prepared.datum, x, y - (under.length > 0 ? hung + 0.3 : 0), 0, -1, letters)
    }
  }
  if (prepared.pointing) {
    const { frame, end } = prepared.pointing
    const t = end > 0 ? t2 : t1
    const along = prepared.base + out * 5
    if (level) {
      if ((line - along) * out < frame.height / 2 + 2) return false
      piece.arrow(t, along, -end, 0)
      piece.segment(is.symbol, t, along, t + end * 6, along)
      drawFrame(piece, frame, end > 0 ? t + 6 : t - 6 - frame.width, along - frame.height / 2)
    } else {
      if ((line - along) * out < 4) return false
      piece.arrow(along, t, 0, -end)
      piece.segment(is.symbol, along, t, along, t + end * 6)
      drawFrame(piece, frame, out > 0 ? along - 2 : along + 2 - frame.width, end > 0 ? t + 6 : t - 6 - frame.height)
    }
  }
  prepared.extent = [low, high]
  prepared.text = level ? [textAt, line] : [line, textAt]
  return true
}
