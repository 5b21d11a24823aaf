/** What carries the edge: a bit in its hole, or the head of a bar of one piece. Lengths from the nose's flat inwards, mm. */
import type { BarInBore, CutterBar, GroundBar, Section, ToolBit } from '../dimensions/types.ts'
import type { Corner, Outline, Point } from '../solid/outline.ts'

export interface Nose {
  readonly is: 'bit' | 'head'
  readonly noseLength: number
  /** Of the nose where it ends, seen end on. */
  readonly neck: number
  /** Of what carries it, sideways. */
  readonly size: number
  readonly length: number
  readonly cornerBreak: number
  /** Along the bar, from the cutting edge. */
  readonly along: number
  /** At its far end it is ground back by so much. */
  readonly setBack: number
  /** Leaning with the nose leading, degrees. */
  readonly incline: number
}

export const noseOfBit = (bar: CutterBar, bit: ToolBit): Nose => ({
  is: 'bit',
  noseLength: bit.noseLength,
  neck: Math.min(bar.noseWidth, bit.widthAtNeck.nominal),
  size: bit.size,
  length: bit.length,
  cornerBreak: bit.cornerBreak,
  along: bit.size,
  setBack: bit.endSetBack.nominal,
  incline: bar.incline,
})

export const noseOfHead = (bar: GroundBar): Nose => {
  const length = bar.projection + bar.diameter.nominal / 2
  return {
    is: 'head',
    noseLength: length,
    neck: bar.noseWidth,
    size: bar.noseWidth,
    length,
    cornerBreak: 0,
    along: bar.headLength,
    setBack: bar.endSetBack,
    incline: 0,
  }
}

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

/** Seen end on, its flat at `x`, middle at `y`: nose with its corners, back taper, neck, and what is behind it; counter-clockwise, mm. */
export const bitOutline = (section: Section, bar: BarInBore, bit: Nose, x: number, y: number): Outline => {
  const r = bar.cornerRadius
  const nose = bar.noseWidth / 2
  const neck = Math.min(nose, bit.neck / 2)
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
