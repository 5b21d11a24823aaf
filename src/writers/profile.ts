/**
 * Flat shapes for a cutter, 1:1. The arcs stay arcs: a LWPOLYLINE with bulges of our own, since @jscad/dxf-serializer chords them and writes
 * the first point twice in a closed contour, an edge of no length that kerf compensation stumbles on.
 */
import type { Profile } from '../drawing/profile.ts'
import { areaOf, boundsOf, edgesOf, type Outline, type Point, reversed } from '../solid/outline.ts'
import { at, dxfFile, type Entity, real, type Tag } from './dxf-file.ts'
import { decimal, oneLine } from './marks.ts'

/** The profile as DXF: millimetres, layer 0, one closed LWPOLYLINE a contour, outside counter-clockwise, holes clockwise; no text. */
export function profileDxf(profile: Profile): string {
  const box = extent(profile)
  return dxfFile({
    layers: [],
    entities: oriented(profile).map(
      (outline): Entity => ({
        type: 'LWPOLYLINE',
        layer: '0',
        tags: [
          [100, 'AcDbPolyline'],
          [90, String(outline.length)],
          [70, '1'],
          ...outline.flatMap(({ at: corner, bulge }): Tag[] => [
            ...at(10, corner),
            ...(bulge ? ([[42, real(bulge, 9)]] satisfies Tag[]) : []),
          ]),
        ],
      }),
    ),
    area: { from: [box.x1, box.y1], to: [box.x2, box.y2] },
  })
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
