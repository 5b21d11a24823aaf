/** The nose at first touch, near to: the two corners that mark the blue. */
import type { Design } from '../design.ts'
import { touchOffX } from '../dimensions/bore.ts'
import { circle, type Point } from '../solid/outline.ts'
import { bitOutline } from './bit.ts'
import type { Figure, Target } from './figure.ts'
import { edgeOf } from './standing.ts'
import { arc, chain, placing, sketch } from './sketch.ts'
import { tornLine } from './torn-line.ts'
import { whole } from './saying.ts'

/** Undefined for a job without a bar. */
export const firstTouch = (design: Design, target: Target): Figure | undefined => {
  const { section } = design
  const made = edgeOf(design)
  if (!made) return undefined
  const { bar, bit } = made
  const { em, width } = target
  const on = sketch(target)
  const half = bar.noseWidth / 2
  const r = section.boreRadius
  const pointed = section.socket !== undefined || section.groove !== undefined
  // Centred by its two corners, whatever lane it goes to after.
  const x = pointed ? section.touchOff : touchOffX(r, bar.noseWidth, bar.cornerRadius)
  const scale = Math.min(
    (0.42 * width) / half,
    target.height === undefined ? Infinity : (target.height / 2 - 0.9 * em) / half,
    width / (0.3 * r),
  )
  const high = half + (0.9 * em) / scale
  const back = half * 1.1
  const place = placing(scale, [(back - x) * scale, high * scale])
  const turn = Math.asin(Math.min(0.98, high / r))
  const wall = arc([0, 0], r, -turn, turn)
  const end = r + (2.6 * em) / scale
  const torn = tornLine([end, high], [end, -high], (0.16 * em) / scale)
  on.area('hub', [place.path([...wall, ...torn.map((at) => ({ at }))])])
  // Only the front of the nose is shown: it is torn off behind.
  const nose = bitOutline(
    section,
    bar,
    {
      ...bit,
      length: back * 0.98,
      noseLength: back * 2,
      size: bar.noseWidth,
      cornerBreak: 0,
    },
    x,
    0,
  )
  on.area('bit', [place.path(nose)])
  on.line('slot', place.path(nose), undefined, true)
  on.line('slot', place.path(wall))
  on.line('centre', place.path(chain([x - back * 0.9, 0], [end - (0.4 * em) / scale, 0])))
  const across = half - bar.cornerRadius
  const centre: Point = [x - bar.cornerRadius, across]
  const away = Math.hypot(centre[0], centre[1])
  const marks: readonly { readonly at: Point; readonly words: string }[] = pointed
    ? [{ at: [r, 0], words: 'first mark' }]
    : [
        { at: [(centre[0] / away) * r, (centre[1] / away) * r], words: 'first mark' },
        { at: [(centre[0] / away) * r, (-centre[1] / away) * r], words: 'second mark' },
      ]
  for (const { at, words } of marks) {
    const [cx, cy] = place.at(at)
    on.line('thin', circle(1.3 * em, [cx, cy]), 'section.touchOff', true)
    // A mark on the middle has its words off the centre line.
    const up = at[1] === 0 ? -0.75 * em : 0.33 * em
    on.words([cx + 1.1 * em, cy + up], [{ role: 'name', text: words }], { of: 'section.touchOff' })
  }
  return {
    name: 'first-touch',
    width,
    height: 2 * high * scale,
    em,
    scale,
    marks: on.marks,
    title: 'First touch',
    says: pointed
      ? `The nose touches at its tip, ${whole(design, x)} from the bore’s axis: the dial’s nought.`
      : `The nose touches with its two corners, its end ${whole(design, x)} from the bore’s axis; one marks before the other where it is off the middle.`,
    sizes: on.sizes,
  }
}
