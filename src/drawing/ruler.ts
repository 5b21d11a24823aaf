/** Lines and words of the sheet's furniture. */
import { lengthOf, shortened } from './letters.ts'
import { kept } from './plane.ts'
import type { Stroke, StrokeClass } from './sheet.ts'

/** A small pen: collects lines and words of one class. */
export function ruler(klass: StrokeClass = 'sheet') {
  const strokes: Stroke[] = []
  return {
    strokes,
    line(x1: number, y1: number, x2: number, y2: number, width: number): void {
      strokes.push({ stroke: 'line', class: klass, width, from: [kept(x1), kept(y1)], to: [kept(x2), kept(y2)] })
    },
    circle(x: number, y: number, radius: number, width: number): void {
      strokes.push({ stroke: 'arc', class: klass, width, centre: [kept(x), kept(y)], radius, from: 0, to: 360 })
    },
    /** Words from the left end of their baseline; `within` shortens them. */
    words(
      text: string,
      x: number,
      y: number,
      height: number,
      more: { bold?: boolean; turn?: 90; within?: number } = {},
    ): void {
      if (text === '') return
      const said = more.within === undefined ? text : shortened(text, height, more.within)
      strokes.push({
        stroke: 'text',
        class: klass === 'sheet' ? 'note' : klass,
        width: 0.25,
        at: [kept(x), kept(y)],
        height,
        length: kept(lengthOf(said, height, more.bold)),
        turn: more.turn ?? 0,
        text: said,
        ...(more.bold && { bold: true }),
      })
    },
  }
}
