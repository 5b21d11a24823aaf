/** The bit seen end on: nose with its corners, back taper, neck, and the blank behind it. */
import type { CutterBar, Section, ToolBit } from '../dimensions/types.ts'
import type { Corner, Outline, Point } from '../solid/outline.ts'

/** Upper half of a V with a rounded tip: from the axis to where it is as wide as its nose. */
const vee = (half: number, tip: number, x: number, nose: number): readonly Corner[] => {
  const centre = x - tip
  const [from, up]: Point = [centre + tip * Math.sin(half), tip * Math.cos(half)]
  return [
    ...(tip > 0 ? [{ at: [x, 0] as Point, bulge: Math.tan((Math.PI / 2 - half) / 4) }] : []),
    { at: [from, up] },
    ...(nose > up ? [{ at: [from - (nose - up) / Math.tan(half), nose] as Point }] : []),
  ]
}

/** Nose flat at `x`, middle at `y`; counter-clockwise in the section's plane, mm. */
export const bitOutline = (section: Section, bar: CutterBar, bit: ToolBit, x: number, y: number): Outline => {
  const r = bar.cornerRadius
  const nose = bar.noseWidth / 2
  const neck = Math.min(nose, bit.widthAtNeck.nominal / 2)
  const blank = bit.size / 2
  const tail = x - bit.length
  const shoulder = Math.max(x - bit.noseLength, tail)
  const stepped = blank > nose + 1e-6 || blank > neck + 1e-6
  const broken = Math.min(bit.cornerBreak, blank / 2)
  const bend = Math.tan(Math.PI / 8)
  const upper: Corner[] = [
    ...(section.socket
      ? vee((section.socket.includedAngle * Math.PI) / 360, r, x, nose)
      : [
          { at: [x, nose - r] as Point, ...(r > 0 && { bulge: bend }) },
          ...(r > 0 ? [{ at: [x - r, nose] as Point }] : []),
        ]),
    { at: [shoulder, neck] },
    ...(stepped ? [{ at: [shoulder, blank] as Point }] : []),
    { at: [tail + broken, stepped ? blank : neck] },
    { at: [tail, (stepped ? blank : neck) - broken] },
  ]
  const lower = upper.toReversed().map(({ at: [cx, cy] }, index, all): Corner => {
    const bulge = upper[all.length - 2 - index]?.bulge
    return bulge ? { at: [cx, -cy], bulge } : { at: [cx, -cy] }
  })
  return [...upper, ...lower].map((corner) => ({ ...corner, at: [corner.at[0], corner.at[1] + y] }))
}
