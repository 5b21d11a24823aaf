/** The section in plain characters, for a terminal: to scale, characters taken as twice as high as wide. */
import type { Design } from '../design.ts'
import type { Point } from '../solid/outline.ts'
import { bitOutline } from './bit.ts'
import { contourOf, wholeSlot } from './contour.ts'
import { bare } from './saying.ts'
import { flattened } from './sketch.ts'
import { standingOf, type Where } from './standing.ts'

const within = (polygon: readonly Point[], x: number, y: number): boolean =>
  polygon.reduce((inside, [ax, ay], index) => {
    const [bx, by] = polygon[(index + 1) % polygon.length] ?? [ax, ay]
    return ay > y !== by > y && x < ax + ((bx - ax) * (y - ay)) / (by - ay) ? !inside : inside
  }, false)

/**
 * Lines of plain ASCII, no longer than `columns`: `/` hub, blank what is open, `.` still to cut, `o` bar, `#` bit; a line of sizes under it.
 */
export const plainSection = (design: Design, columns: number, at: Where = 'floor'): readonly string[] => {
  const { section } = design
  const standing = standingOf(design, at)
  const several = section.at.length > 1
  const margin = 0.22 * section.boreRadius
  const left = (several ? section.cornerReach : section.boreRadius) + margin
  const right = section.floor + margin
  const high = left
  const wide = Math.min(columns, 61)
  const cell = (left + right) / wide
  const rows = Math.ceil((2 * high) / (2 * cell))
  const turn = -(section.at[standing?.keyway ?? 0] ?? 0)
  const cuts = section.at.map((_, index) => {
    if (!standing || index < standing.keyway) return [wholeSlot(section)]
    return index === standing.keyway ? standing.cuts : []
  })
  const open = flattened(contourOf(section, cuts, turn), true, 0.05)
  const done = flattened(contourOf(section, undefined, turn), true, 0.05)
  const bit = standing
    ? flattened(bitOutline(section, standing.bar, standing.bit, standing.nose, standing.axis[1]), true)
    : []
  const rho = standing ? standing.bar.diameter.nominal / 2 : 0
  const letter = (x: number, y: number): string => {
    if (standing) {
      if (within(bit, x, y)) return '#'
      if (Math.hypot(x - standing.axis[0], y - standing.axis[1]) < rho) return 'o'
    }
    if (within(open, x, y)) return ' '
    return within(done, x, y) ? '.' : '/'
  }
  const drawn = Array.from({ length: rows }, (_, row) => {
    const y = (rows / 2 - row - 0.5) * 2 * cell
    return Array.from({ length: wide }, (__, column) => letter(-left + (column + 0.5) * cell, y)).join('')
  })
  const sizes = [
    `bore ${bare(design, 2 * section.boreRadius)}`,
    ...(standing
      ? [
          `bar ${bare(design, 2 * rho)}`,
          `projection ${bare(design, standing.projection)}`,
          `behind ${bare(design, standing.back.length)}`,
          ...(standing.front ? [`in front ${bare(design, standing.front.length)}`] : []),
        ]
      : []),
    `across ${bare(design, section.across)}`,
  ]
  const said: string[] = []
  for (const size of sizes) {
    const line = said.at(-1)
    if (line !== undefined && line.length + 2 + size.length <= columns) said[said.length - 1] = `${line}, ${size}`
    else said.push(size)
  }
  return [...drawn, ...said]
}
