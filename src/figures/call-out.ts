/** Sizes led out of a picture: words where there is room for them, numbered balls with a list under the picture where there is not. */
import type { Design } from '../design.ts'
import { circle, type Point } from '../solid/outline.ts'
import type { LineKind, Run } from './figure.ts'
import { bare, whole } from './saying.ts'
import { type Box, boxOf, chain, lengthOfRuns, type Sketch } from './sketch.ts'

export interface Spot {
  readonly at: Point
  readonly anchor: 'start' | 'middle' | 'end'
}

export interface Callout {
  readonly of: string
  readonly name: string
  readonly mm: number
  readonly runs: readonly Run[]
  /** Drawn as a line with heads. */
  readonly span?: readonly [Point, Point]
  /** Where the extension lines come from. */
  readonly from?: readonly [Point, Point]
  readonly kind?: 'mark'
  /** Where a leader ends. */
  readonly tip: Point
  readonly dot?: true
  /** Where its ball stands best. */
  readonly ball?: Point
  /** Number over the span, name under it. */
  readonly stacked?: boolean
  /** Where its words may stand, best first. */
  readonly spots: readonly Spot[]
  /** Drawn, but its words were said before. */
  readonly silent?: true
}

interface Sheet {
  readonly design: Design
  readonly width: number
  readonly height: number
  readonly narrow: boolean
  /** Lines without words: they are said beside the picture. */
  readonly mute?: boolean
}

/** Anywhere near, nearest first. */
const around = (tip: Point, em: number): readonly Spot[] =>
  [1.6, 2.6, 3.8, 5.2, 7, 9, 12].flatMap((away) =>
    [20, -20, 160, 200, 50, -50, 130, 230, 90, 270].map((turn): Spot => {
      const [c, s] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)]
      return {
        at: [tip[0] + away * em * c, tip[1] + away * em * s + 0.3 * em],
        anchor: Math.abs(c) < 0.1 ? 'middle' : c > 0 ? 'start' : 'end',
      }
    }),
  )

/** Nearest point of a box's rim to lead to. */
const leadTo = (box: Box, tip: Point, em: number): Point => {
  const middle = (box.top + box.bottom) / 2
  if (tip[0] < box.left) return [box.left - 0.25 * em, middle]
  if (tip[0] > box.right) return [box.right + 0.25 * em, middle]
  return [tip[0], tip[1] < middle ? box.top - 0.1 * em : box.bottom + 0.1 * em]
}

const clear = (on: Sketch, from: Point, to: Point): boolean => {
  for (let step = 1; step < 40; step++) {
    const [x, y] = [from[0] + ((to[0] - from[0]) * step) / 40, from[1] + ((to[1] - from[1]) * step) / 40]
    if (on.spoken.some((box) => x > box.left && x < box.right && y > box.top && y < box.bottom)) return false
  }
  return true
}

const drawSpan = (on: Sketch, { span, from, of, kind }: Callout): void => {
  if (!span) return
  const line: LineKind = kind === 'mark' ? 'mark' : 'thin'
  span.forEach((end, index) => {
    const start = from?.[index]
    if (!start) return
    const length = Math.hypot(end[0] - start[0], end[1] - start[1])
    if (length < 1e-6) return
    const [ux, uy] = [(end[0] - start[0]) / length, (end[1] - start[1]) / length]
    on.line(
      line,
      chain(
        [start[0] + ux * 0.2 * on.em, start[1] + uy * 0.2 * on.em],
        [end[0] + ux * 0.35 * on.em, end[1] + uy * 0.35 * on.em],
      ),
      of,
    )
  })
  on.span(span[0], span[1], of, line, kind === 'mark' ? 'flag' : 'ink')
}

const drawStacked = (on: Sketch, { span, runs, of }: Callout): boolean => {
  if (!span) return false
  const middle = (span[0][0] + span[1][0]) / 2
  const y = span[0][1]
  const [number, name] = runs
  if (!number || !name) return false
  on.words([middle, y - 0.5 * on.em], [number], { anchor: 'middle', of })
  const words = name.text.trim().split(' ')
  const room = Math.abs(span[1][0] - span[0][0]) - 0.5 * on.em
  const whole = [{ role: name.role, text: name.text.trim() }]
  const lines = lengthOfRuns(whole, 0.9 * on.em) <= room ? [name.text.trim()] : words
  lines.forEach((text, index) =>
    on.words([middle, y + (1.25 + 1.1 * index) * on.em], [{ role: 'note', text }], {
      anchor: 'middle',
      size: 0.9 * on.em,
      of,
    }),
  )
  return true
}

/** Draws them all, words last so that none stands in another's way; gives the height with the list under the picture. */
export const callOut = (on: Sketch, callouts: readonly Callout[], sheet: Sheet): number => {
  const { em } = on
  const within: Box = { left: 0, top: 0, right: sheet.width, bottom: sheet.height }
  for (const callout of callouts) drawSpan(on, callout)
  const said = callouts.filter(({ silent }) => !silent)
  for (const { of, name, mm, span } of said)
    on.say({ of, name, said: whole(sheet.design, mm), mm, ...(span && { span }) })
  if (sheet.mute) return sheet.height
  if (sheet.narrow) return balls(on, said, sheet)
  for (const callout of said) {
    if (callout.stacked && drawStacked(on, callout)) continue
    const { of, runs, tip, span, spots, dot } = callout
    const find = (words: readonly Run[]) =>
      [...spots, ...around(tip, em)].find(({ at, anchor }) => {
        if (!on.fits(at, words, { anchor }, within)) return false
        const box = boxOf({ mark: 'text', at, anchor, size: em, turn: 0, runs: words })
        return clear(on, tip, leadTo(box, tip, em))
      })
    // The number alone where its word has no room.
    const alone = runs.filter(({ text }) => /\d/.test(text))
    const full = find(runs)
    const room = full ?? find(alone)
    if (!room) continue
    const box = on.words(room.at, full ? runs : alone, { anchor: room.anchor, of })
    const to = leadTo(box, tip, em)
    const near =
      span &&
      Math.hypot(to[0] - tip[0], to[1] - tip[1]) <
        Math.hypot(span[1][0] - span[0][0], span[1][1] - span[0][1]) / 2 + 1.9 * em
    if (!near) on.line('leader', chain(tip, to), of)
    if (dot) on.area('ink', [circle(0.3 * em, tip)], of)
  }
  return sheet.height
}

/** Numbered balls in the picture, and what they stand for in two columns under it. */
const balls = (on: Sketch, callouts: readonly Callout[], sheet: Sheet): number => {
  const { em } = on
  const radius = 0.68 * em
  const placed: { readonly number: number; readonly callout: Callout }[] = []
  for (const callout of callouts) {
    const { tip, spots, of, dot, span, ball } = callout
    const near = [1.1, 1.7, 2.4, 3.2, 4.2, 5.4, 7].flatMap((away) =>
      [0, 45, -45, 90, -90, 135, -135, 180].map((turn): Point => {
        const angle = (turn * Math.PI) / 180
        return [tip[0] + away * em * Math.cos(angle), tip[1] + away * em * Math.sin(angle)]
      }),
    )
    const wanted = spots
      .slice(0, dot ? 1 : 0)
      .map(({ at, anchor }): Point => [at[0] + (anchor === 'end' ? -radius : radius), at[1] - 0.3 * em])
    const centre = [...(ball ? [ball] : []), ...wanted, ...near].find(([x, y]) => {
      const box = { left: x - radius, right: x + radius, top: y - radius, bottom: y + radius }
      return (
        box.left >= 0 &&
        box.top >= 0 &&
        box.right <= sheet.width &&
        box.bottom <= sheet.height &&
        on.taken.every(
          (other) =>
            !(
              box.left < other.right + 1 &&
              other.left < box.right + 1 &&
              box.top < other.bottom + 1 &&
              other.top < box.bottom + 1
            ),
        )
      )
    })
    const number = placed.length + 1
    placed.push({ number, callout })
    if (!centre) continue
    const away = Math.hypot(tip[0] - centre[0], tip[1] - centre[1])
    if (away > radius + (span ? 1.2 : 0.6) * em)
      on.line(
        'leader',
        chain(
          [centre[0] + ((tip[0] - centre[0]) * radius) / away, centre[1] + ((tip[1] - centre[1]) * radius) / away],
          tip,
        ),
        of,
      )
    on.area('ball', [circle(2 * radius, centre)], of)
    on.ball(centre, String(number), of)
  }
  const row = ({ name, mm }: Callout): readonly Run[] => [
    { role: 'word', text: `${name} ` },
    { role: 'figure', text: bare(sheet.design, mm) },
  ]
  const longest = Math.max(0, ...placed.map(({ callout }) => lengthOfRuns(row(callout), em)))
  const columns = 2 * (longest + 2 * em) <= sheet.width ? 2 : 1
  const rows = Math.ceil(placed.length / columns)
  placed.forEach(({ number, callout }, index) => {
    const column = Math.floor(index / rows)
    const y = sheet.height + (1.3 + 1.55 * (index % rows)) * em
    const x = 0.1 * em + (column * sheet.width) / columns
    on.area('ball', [circle(2 * 0.62 * em, [x + 0.62 * em, y - 0.33 * em])], callout.of)
    on.ball([x + 0.62 * em, y - 0.33 * em], String(number), callout.of, 0.78)
    on.words([x + 1.6 * em, y], row(callout), { of: callout.of })
  })
  return sheet.height + (0.9 + 1.55 * rows) * em
}
