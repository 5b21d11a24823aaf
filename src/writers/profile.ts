/** Flat shapes for a cutter, 1:1, through @jscad/dxf-serializer; and as SVG for looking at beside a ruler. */
import serializer from '@jscad/dxf-serializer'
import modeling from '@jscad/modeling'
import type { Profile } from '../drawing/profile.ts'
import { chords } from '../solid/chords.ts'
import { areaOf, boundsOf, edgesOf, type Outline, type Point, reversed } from '../solid/outline.ts'
import { decimal, oneLine } from './marks.ts'

/** Chords of an arc lie this near to it, mm: below what a cutter or a file can follow. */
const cutting = 0.002

/**
 * The serializer says the first point of a closed contour again at its end, an edge of no length that kerf compensation stumbles on: said once
 * it is the same contour.
 */
const saidOnce = (dxf: string): string =>
  dxf.replaceAll(
    /(AcDbPolyline\n {2}90\n)(\d+)(\n {2}70\n1\n)((?: {2}10\n.*\n {2}20\n.*\n)+)/g,
    (_all, head: string, count: string, closed: string, points: string) =>
      `${head}${Number(count) - 1}${closed}${points.replace(/ {2}10\n.*\n {2}20\n.*\n$/, '')}`,
  )

/** The profile as DXF: millimetres, layer 0, one closed LWPOLYLINE a contour, outside counter-clockwise, holes clockwise; no text. */
export function profileDxf(profile: Profile): string {
  const paths = oriented(profile).map((outline) =>
    modeling.geometries.path2.fromPoints(
      { closed: true },
      chords(outline, cutting).map(([x, y]): [number, number] => [x, y]),
    ),
  )
  return saidOnce(serializer.serialize({}, ...paths).join(''))
}

const mm = (value: number): string => decimal(value, 4)

/** The profile as SVG: width, height and units in mm, one path of all contours with true arcs, hairline black; no text is drawn. */
export function profileSvg(profile: Profile): string {
  const { x1, y1, x2, y2 } = extent(profile)
  const [width, height] = [mm(x2 - x1), mm(y2 - y1)]
  const place = ([x, y]: Point): string => `${mm(x - x1)} ${mm(y2 - y)}`
  const path = oriented(profile).map((outline) => {
    const drawn = edgesOf(outline).map(({ from, to, arc }) => {
      // Ends that meet on paper would be no arc at all.
      if (!arc || place(from) === place(to)) return `L${place(to)}`
      // Counter-clockwise in our plane is the sweep flag 0 where y runs down.
      const flags = `0 ${Math.abs(arc.sweep) > Math.PI ? 1 : 0} ${arc.sweep > 0 ? 0 : 1}`
      return `A${mm(arc.radius)} ${mm(arc.radius)} ${flags} ${place(to)}`
    })
    return `M${place(outline[0]?.at ?? [0, 0])}${drawn.join('')}Z`
  })
  const title = oneLine(profile.name).replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;')
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `<title>${title}</title>`,
    `<path d="${path.join('')}" fill="none" stroke="#000" stroke-width="0.01" fill-rule="evenodd"/>`,
    '</svg>\n',
  ].join('\n')
}

/** The outside counter-clockwise, holes clockwise, whatever way they came. */
function oriented(profile: Profile): readonly Outline[] {
  if (profile.contours.length === 0) throw new RangeError(`profile ${profile.name} has no contour`)
  return profile.contours.map((outline, index) => (areaOf(outline) > 0 === (index === 0) ? outline : reversed(outline)))
}

/** The box round all contours, arcs included. */
function extent(profile: Profile): { x1: number; y1: number; x2: number; y2: number } {
  const boxes = profile.contours.map(boundsOf)
  return {
    x1: Math.min(...boxes.map(({ min }) => min[0])),
    y1: Math.min(...boxes.map(({ min }) => min[1])),
    x2: Math.max(...boxes.map(({ max }) => max[0])),
    y2: Math.max(...boxes.map(({ max }) => max[1])),
  }
}
