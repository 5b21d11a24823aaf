/**
 * A figure as SVG: classes only, so that one drawing serves every light and paper; lengths of strokes are in em in figures.css. Hatch
 * patterns are named after the figure.
 */
import { type Corner, edgesOf, type Point } from '../solid/outline.ts'
import { bodies } from './bodies.ts'
import type { Body, Figure, Mark } from './figure.ts'

/** Fixed decimals, no minus nought, no closing noughts. */
const written = (value: number): string => {
  const text = value.toFixed(2).replace(/\.?0+$/, '')
  return text === '-0' ? '0' : text
}

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')

const point = ([x, y]: Point): string => `${written(x)} ${written(y)}`

const pathOf = (corners: readonly Corner[], closed: boolean): string => {
  const [first] = corners
  if (!first) return ''
  const edges = edgesOf(corners).slice(0, closed ? corners.length : corners.length - 1)
  const drawn = edges.map(({ to, arc }, index) => {
    if (!arc) return closed && index === edges.length - 1 ? '' : `L${point(to)}`
    const r = written(arc.radius)
    if (r === '0') return `L${point(to)}`
    return `A${r} ${r} 0 ${Math.abs(arc.sweep) > Math.PI ? 1 : 0} ${arc.sweep > 0 ? 1 : 0} ${point(to)}`
  })
  return `M${point(first.at)}${drawn.join('')}${closed ? 'Z' : ''}`
}

const named = (of: string | undefined): string => (of === undefined ? '' : ` data-of="${escaped(of)}"`)

const drawn = (mark: Mark, { em }: Figure, prefix: string): string => {
  switch (mark.mark) {
    case 'area': {
      const d = mark.outlines.map((outline) => pathOf(outline, true)).join('')
      const hatched = bodies[mark.body]
        ? `<path class="hatched" fill="url(#${prefix}-${mark.body})" fill-rule="evenodd" d="${d}"/>`
        : ''
      return `<path class="area ${mark.body}" fill-rule="evenodd" d="${d}"${named(mark.of)}/>${hatched}`
    }
    case 'line':
      return `<path class="line ${mark.line}" d="${pathOf(mark.path, mark.closed ?? false)}"${named(mark.of)}/>`
    case 'text': {
      const [x, y] = [written(mark.at[0]), written(mark.at[1])]
      const turn = mark.turn === 90 ? ` transform="rotate(-90 ${x} ${y})"` : ''
      const size = Math.abs(mark.size - em) < 1e-9 ? '' : ` font-size="${written(mark.size)}"`
      const [one] = mark.runs
      const said =
        mark.runs.length === 1 && one
          ? escaped(one.text)
          : mark.runs.map(({ role, text }) => `<tspan class="is-${role}">${escaped(text)}</tspan>`).join('')
      const role = mark.runs.length === 1 && one ? ` is-${one.role}` : ''
      return `<text class="say${role}" x="${x}" y="${y}" text-anchor="${mark.anchor}"${size}${turn}${named(mark.of)} xml:space="preserve">${said}</text>`
    }
  }
}

const patternOf = (body: Body, em: number, prefix: string): string => {
  const hatch = bodies[body]
  if (!hatch) return ''
  const pitch = written(hatch.pitch * em)
  return `<pattern id="${prefix}-${body}" width="${pitch}" height="${pitch}" patternUnits="userSpaceOnUse" patternTransform="rotate(${hatch.angle})"><path class="hatch ${body}-hatch" d="M0 0V${pitch}"/></pattern>`
}

/**
 * A whole `<svg>` element. `id` makes its patterns and titles its own where several figures stand in one document. On paper it carries its size in
 * mm; on the page it takes its width from what it stands in.
 */
export const svgOf = (figure: Figure, id = figure.name.replaceAll(' ', '-'), unit: 'px' | 'mm' = 'px'): string => {
  const used = [...new Set(figure.marks.flatMap((mark) => (mark.mark === 'area' ? [mark.body] : [])))]
  const patterns = used.map((body) => patternOf(body, figure.em, id)).join('')
  const [w, h] = [written(figure.width), written(figure.height)]
  const size = unit === 'mm' ? ` width="${w}mm" height="${h}mm"` : ` width="${w}" height="${h}"`
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" class="figure ${figure.name}"${size} viewBox="0 0 ${w} ${h}" font-size="${written(figure.em)}" role="img" aria-labelledby="${id}-title ${id}-desc">`,
    `<title id="${id}-title">${escaped(figure.title)}</title><desc id="${id}-desc">${escaped(figure.says)}</desc>`,
    patterns === '' ? '' : `<defs>${patterns}</defs>`,
    ...figure.marks.map((mark) => drawn(mark, figure, id)),
    '</svg>',
  ].join('\n')
}
