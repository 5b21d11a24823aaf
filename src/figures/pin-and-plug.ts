/** How across is measured: a pin on the slot's floor, and a plug between it and the far wall. */
import type { Design } from '../design.ts'
import { circle } from '../solid/outline.ts'
import { contourOf } from './contour.ts'
import { type Figure, scaleFor, type Target } from './figure.ts'
import { bare, figured, whole } from './saying.ts'
import { chain, placing, sketch, lengthOfRuns } from './sketch.ts'

/** Undefined where across is not measured by pin and plug. */
export const pinAndPlug = (design: Design, target: Target): Figure | undefined => {
  const way = design.measuring?.ways.find((one) => one.by === 'pin and plug')
  if (way?.by !== 'pin and plug') return undefined
  const { section } = design
  const { em, width } = target
  const on = sketch(target)
  const plug = section.across - way.pin
  const r = section.boreRadius
  const most = target.height ?? width
  const scale = scaleFor(target, Math.min((width - 1.2 * em) / (r + section.floor), (most - 2.4 * em) / (2 * r)))
  const origin = [
    0.6 * em + r * scale + (width - 1.2 * em - (r + section.floor) * scale) / 2,
    0.6 * em + r * scale,
  ] as const
  const place = placing(scale, origin)
  on.line('slot', place.path(contourOf({ ...section, at: [0] })), undefined, true)
  const body = place.path(circle(plug, [plug / 2 - r, 0]))
  const pin = place.path(circle(way.pin, [section.floor - way.pin / 2, 0]))
  on.area('plug', [body])
  on.area('bit', [pin])
  on.line('edge', body, 'measuring.plug', true)
  on.line('edge', pin, 'measuring.pin', true)
  const middle = place.at([plug / 2 - r, 0])
  on.words([middle[0], middle[1] + 0.35 * em], [{ role: 'name', text: 'plug' }], {
    anchor: 'middle',
    of: 'measuring.plug',
  })
  const runs = figured(`pin ${bare(design, way.pin)}`, '').slice(0, 1)
  const tip = place.at([section.floor - way.pin / 2, 0])
  const aside = width - 0.2 * em - lengthOfRuns(runs, em) - place.at([0, 0])[0]
  // Below the bore's rim, where that comes so far over.
  const rim = Math.abs(aside) < r * scale ? place.at([0, 0])[1] + Math.sqrt((r * scale) ** 2 - aside ** 2) : -Infinity
  const y = Math.max(rim + 0.15 * em, Math.min(place.at([0, -r])[1], place.at([0, -section.width / 2])[1] + 2.6 * em))
  on.words([width - 0.2 * em, y + 0.9 * em], runs, { anchor: 'end', of: 'measuring.pin' })
  on.line('leader', chain(tip, [Math.min(tip[0], width - 1.5 * em), y]))
  on.say({
    of: 'measuring.pin',
    name: 'pin',
    said: whole(design, way.pin),
    mm: way.pin,
    span: [place.at([section.floor - way.pin, 0]), place.at([section.floor, 0])],
  })
  on.say({
    of: 'measuring.plug',
    name: 'plug at mid-limits',
    said: whole(design, plug),
    mm: plug,
    span: [place.at([-r, 0]), place.at([plug - r, 0])],
  })
  return {
    name: 'pin-and-plug',
    width,
    height: Math.max(place.at([0, -r])[1] + 0.6 * em, y + 1.3 * em),
    em,
    scale,
    marks: on.marks,
    title: 'Across by pin and plug',
    says: `A pin of ${whole(design, way.pin)} on the floor, and a plug against the far wall: ${bare(design, way.plug.go, true)} goes, ${whole(design, way.plug.noGo, true)} does not.`,
    sizes: on.sizes,
  }
}
