/**
 * How it stands on the machine: work, bar and holder to scale, the rest as blocks. A lathe from above, a mill from the front; which way the stroke
 * goes and which way the infeed.
 */
import type { Design } from '../design.ts'
import type { Corner, Point } from '../solid/outline.ts'
import { type Figure, type Role, type Target } from './figure.ts'
import { pressLengthwise } from './press-lengthwise.ts'
import { bare, whole } from './saying.ts'
import { chain, lengthOfRuns, sketch } from './sketch.ts'
import { standingOf } from './standing.ts'

interface Words {
  readonly holder: string
  readonly back: string
  readonly stroke: string
  readonly infeed: string
}

const wordsFor = (machine: 'lathe' | 'mill'): Words =>
  machine === 'lathe'
    ? { holder: 'toolpost', back: 'chuck', stroke: 'stroke: carriage', infeed: 'infeed: cross slide' }
    : { holder: 'spindle, locked', back: 'table', stroke: 'stroke: quill', infeed: 'infeed: table to the left' }

/** Undefined for a job that has neither a bar nor a bushing. A press is drawn as its stack. */
export const setUp = (design: Design, target: Target): Figure | undefined => {
  const standing = standingOf(design, 'withdrawn')
  if (!standing) return pressLengthwise(design, target)
  const { bar, asked, axis, bit, nose } = standing
  const { spec, section, plan } = design
  const { em, width } = target
  const on = sketch(target)
  const lathe = asked.machine === 'lathe'
  const words = wordsFor(asked.machine)
  const length = spec.bore.length
  const hubHalf = Math.min(
    Math.max((spec.hub.outside ?? Infinity) / 2, section.cornerReach * 1.05),
    2.2 * section.boreRadius,
  )
  const start = -(plan?.stroke.before ?? bar.overtravel)
  const holder = start - bar.overhang
  const open = Math.max(bar.tipBeyond, asked.behind ?? 0)
  const far = length + open
  const along = far - holder
  // Room for blocks at both ends, and beside the hub for words.
  const ends = 5.4 * em
  const beside = lathe ? 4.4 * em : 9.5 * em
  const most = target.height ?? (lathe ? 0.7 * width : 1.3 * width)
  const scale = lathe
    ? Math.min((width - ends) / along, (most - 2 * beside) / (2 * hubHalf))
    : Math.min((most - ends) / along, (width - 2 * beside) / (2 * hubHalf))
  const letter = em / scale
  const way = lathe && asked.points === 'front' ? -1 : 1
  const spare = lathe ? (width - ends - along * scale) / 2 : 0
  const height = lathe ? 2 * beside + 2 * hubHalf * scale : ends + along * scale
  const middle: Point = lathe
    ? [width - 2.7 * em - spare + holder * scale, height / 2]
    : [width / 2, 2.7 * em - holder * scale]
  /** From along the bore and across it, nose to the plus. */
  const at = (z: number, x: number): Point =>
    lathe ? [middle[0] - z * scale, middle[1] - way * x * scale] : [middle[0] + x * scale, middle[1] + z * scale]
  const box = (z1: number, x1: number, z2: number, x2: number): readonly Corner[] =>
    chain(at(z1, x1), at(z2, x1), at(z2, x2), at(z1, x2))
  const block = (body: 'hub' | 'no-room' | 'bar' | 'bit', path: readonly Corner[], of?: string): void => {
    on.area(body, [path], of)
    on.line('edge', path, of, true)
  }
  const r = section.boreRadius
  for (const side of [-1, 1]) {
    block('hub', box(0, side * r, length, side * hubHalf))
    // Jaws, or what the work stands on.
    if (lathe) block('no-room', box(0.35 * length, side * hubHalf, far, side * (hubHalf + 1.3 * letter)))
    else
      block(
        'no-room',
        box(length, side * Math.max(section.cornerReach + 0.4 * letter, hubHalf - 1.3 * letter), far, side * hubHalf),
      )
  }
  block('no-room', box(far, -(hubHalf + 1.9 * letter), far + 2.2 * letter, hubHalf + 1.9 * letter))
  const [x] = axis
  const rho = bar.diameter.nominal / 2
  const tip = start + bar.tipBeyond - bar.overtravel
  block('bar', box(holder, x - rho, tip, x + rho), 'bar.diameter')
  const back = asked.stroke === 'push' ? -1 : 1
  block(
    bit.is === 'bit' ? 'bit' : 'bar',
    box(start, nose, start + back * bit.along, nose - (bit.is === 'bit' ? bit.length : standing.projection)),
    'bar.projection',
  )
  const grip = Math.max(rho, bar.shank.nominal / 2) + 1.1 * letter
  block('no-room', box(holder - 2.2 * letter, x - grip, holder, x + grip))
  on.line('centre', chain(at(holder - 0.4 * letter, 0), at(far + 1.2 * letter, 0)))
  const say = (where: Point, text: string, anchor: 'start' | 'middle' | 'end', role: Role = 'word'): void => {
    const run = [{ role, text }]
    const long = lengthOfRuns(run, 0.95 * em)
    const before = anchor === 'start' ? 0 : anchor === 'middle' ? long / 2 : long
    const left = Math.min(Math.max(where[0] - before, 0.1 * em), width - long - 0.1 * em)
    if (
      left >= 0 &&
      on.fits([left, where[1]], run, { size: 0.95 * em }, { left: 0, top: 0, right: width, bottom: height }, 0)
    )
      on.words([left, where[1]], run, { size: 0.95 * em })
  }
  const arrow = (from: Point, to: Point): void => {
    const long = Math.hypot(to[0] - from[0], to[1] - from[1])
    on.line('dial', chain(from, to))
    on.head(to, [(to[0] - from[0]) / long, (to[1] - from[1]) / long], undefined, 'flag')
  }
  const push = asked.stroke === 'push' ? 1 : -1
  if (lathe) {
    const y = height - 2.9 * em
    const from = at(start - 0.55 * bar.overhang, 0)[0]
    const end = from - push * 4 * em
    arrow([from, y], [end, y])
    say([Math.min(from, end), y + 1.5 * em], words.stroke, 'start', 'mark')
    const grips = at(holder, x + way * grip)
    const fx = grips[0] + 1.1 * em
    const fy = middle[1] - way * (x * scale + grip * scale + 0.5 * em)
    arrow([fx, fy], [fx, fy - way * 2.2 * em])
    say([fx + 0.7 * em, fy - way * 3.1 * em + 0.33 * em], words.infeed, 'end', 'mark')
    say([at(far + 1.1 * letter, 0)[0], 1.1 * em], words.back, 'middle')
    say([at(length / 2, 0)[0], height - 0.8 * em], `hub, ${bare(design, length)} long`, 'middle')
    say(
      [at(holder - 1.1 * letter, 0)[0], middle[1] + way * ((grip - x * way) * scale + 1.4 * em) + 0.33 * em],
      words.holder,
      'middle',
    )
  } else {
    const px = middle[0] - hubHalf * scale - 1.6 * em
    const from = at(start - 0.5 * bar.overhang, 0)[1]
    arrow([px, from], [px, from + push * 3.4 * em])
    say([px - 0.6 * em, from + 1.9 * em], words.stroke, 'end', 'mark')
    const fy = at(holder + 0.25 * bar.overhang, 0)[1]
    const fx = middle[0] + (x + grip) * scale + 0.6 * em
    arrow([fx, fy], [fx + 2.4 * em, fy])
    const [first = '', rest = ''] = words.infeed.split(': ')
    say([fx, fy + 1.5 * em], `${first}:`, 'start', 'mark')
    say([fx, fy + 2.8 * em], rest, 'start', 'mark')
    say([middle[0] + (hubHalf + 1.9 * letter) * scale + 0.5 * em, at(far, 0)[1] + 1.4 * em], words.back, 'start')
    say([middle[0] + hubHalf * scale + 0.5 * em, at(length / 2, 0)[1]], `hub, ${bare(design, length)} long`, 'start')
    say([middle[0] + (x + grip) * scale + 0.5 * em, 1.6 * em], words.holder, 'start')
  }
  const [a, b] = [at(length, 0), at(length + bar.tipBeyond, 0)]
  on.span(a, b, 'bar.tipBeyond')
  on.say({
    of: 'bar.tipBeyond',
    name: 'open behind the hub',
    said: whole(design, bar.tipBeyond),
    mm: bar.tipBeyond,
    span: [a, b],
  })
  const openSaid = `${bare(design, bar.tipBeyond)} open`
  const long = lengthOfRuns([{ role: 'figure', text: openSaid }], 0.95 * em)
  const mid: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
  if (lathe)
    say([Math.max(mid[0] - long / 2, at(far, 0)[0] + 0.4 * em), mid[1] - 0.6 * em], openSaid, 'start', 'figure')
  else {
    const inside = r * scale > long + 0.8 * em
    say(
      [
        mid[0] + (inside ? 0.5 * em : hubHalf * scale + 0.5 * em),
        Math.min(mid[1] + 0.33 * em, at(far, 0)[1] - 0.4 * em),
      ],
      openSaid,
      'start',
      'figure',
    )
  }
  return {
    name: 'set-up',
    width,
    height,
    em,
    scale,
    marks: on.marks,
    title: lathe ? 'Set up on the lathe, seen from above' : 'Set up on the mill, seen from the front',
    says: `The ${lathe ? 'hub in the chuck, the bar in the toolpost' : 'hub on the table, the bar in the locked spindle'}; nose to the ${lathe ? asked.points : 'right'}; ${whole(design, bar.tipBeyond)} open behind the hub.`,
    sizes: on.sizes,
  }
}
