import { arc, bisected, least, line, type Piece, type Point } from './curves.ts'

/** A strip cut through the bore's wall: its middle sideways, half its width, how far out its floor stands. */
export interface Strip {
  readonly offset: number
  readonly half: number
  readonly floor: number
}

/** What bounds the free space of a bore with one strip cut so far. Walls and floor only where they lie in metal. */
export const wallsOf = (radius: number, strip?: Strip): readonly Piece[] => {
  if (!strip) return [arc([0, 0], radius, 0, 2 * Math.PI)]
  const { offset, half, floor } = strip
  // Where the arc runs into the strip, found by walking: the strip's upper and lower side.
  const angleAt = (y: number) => bisected(-Math.PI / 2, Math.PI / 2, (angle) => radius * Math.sin(angle) < y)
  const meets = [offset - half, offset + half].map((y) => ({ y, angle: angleAt(y) }))
  const pieces: Piece[] = []
  const [lower, upper] = meets as [{ y: number; angle: number }, { y: number; angle: number }]
  pieces.push(arc([0, 0], radius, upper.angle, lower.angle + 2 * Math.PI))
  for (const { y, angle } of meets) {
    const mouth: Point = [radius * Math.cos(angle), y]
    if (floor > mouth[0]) pieces.push(line(mouth, [floor, y]))
  }
  // The floor, as far as it is outside the bore; where it is not, the arc still stands.
  const [bottom, top] = [offset - half, offset + half]
  const inside = (y: number) => Math.hypot(floor, y) < radius
  const middle = Math.min(Math.max(0, bottom), top)
  if (!inside(middle)) return [...pieces, line([floor, bottom], [floor, top])]
  const low = inside(bottom) ? bottom : -bisected(-middle, -bottom, (y) => inside(-y))
  const high = inside(top) ? top : bisected(middle, top, inside)
  if (bottom < low) pieces.push(line([floor, bottom], [floor, low]))
  if (high < top) pieces.push(line([floor, high], [floor, top]))
  pieces.push(arc([0, 0], radius, angleAt(low), angleAt(high)))
  return pieces
}

/** How far a round bar at `centre` is from metal; negative where it is in it. `ahead`: only metal within 60° of +x. */
export const gap = (walls: readonly Piece[], centre: Point, bar: number, ahead = false): number => {
  const [x, y] = centre
  const away = ([px, py]: Point): number => {
    const distance = Math.hypot(px - x, py - y)
    return ahead && px - x < 0.5 * distance ? Infinity : distance
  }
  return Math.min(...walls.map((piece, n) => least(piece, away, n === 0 ? 48 : 8))) - bar / 2
}

/** Outline of a nose with rounded corners, its flat at `x`, its middle at `offset`: flat, corners, and a piece of its sides, which never go first. */
export const noseOutline = (x: number, width: number, corner: number, offset: number): readonly Piece[] => {
  const half = width / 2
  const in_ = x - corner
  return [
    line([x, offset - half + corner], [x, offset + half - corner]),
    arc([in_, offset + half - corner], corner, 0, Math.PI / 2),
    arc([in_, offset - half + corner], corner, -Math.PI / 2, 0),
    line([in_, offset + half], [in_ - half, offset + half]),
    line([in_, offset - half], [in_ - half, offset - half]),
  ]
}

/** x of the nose flat when it first touches the bore, by moving it out until a point of its outline does. */
export const touchOff = (radius: number, width: number, corner: number, offset: number): number =>
  bisected(
    0,
    radius + corner,
    (x) =>
      noseOutline(x, width, corner, offset)
        .slice(0, 3)
        .every((piece) => least(piece, ([px, py]) => -Math.hypot(px, py), 12) > -radius),
    42,
  )

/** One lane of a job at one corner of its limits, as the brute force walks it. */
export interface Walk {
  readonly radius: number
  readonly floor: number
  readonly noseWidth: number
  readonly corner: number
  readonly offset: number
  readonly bar: number
  readonly projection: number
  readonly withdrawn: number
  /** x of the floor of a slot that runs right through already; left out, the bore is whole. */
  readonly cut?: number
  /** By so much the far end of a hub tilted for a taper key stands nearer to the nose's side: its bore, not its floor. */
  readonly tilted?: number
}

const barAt = ({ projection, bar, offset }: Walk, x: number): Point => [x - projection - bar / 2, offset]

/** Gap all round the bar, drawn back from first touch in the uncut bore. */
export const withdrawnGap = (walk: Walk): number => {
  const touch = touchOff(walk.radius, walk.noseWidth, walk.corner, walk.offset)
  return Math.min(
    ...[0, walk.tilted ?? 0].map((off) =>
      gap(wallsOf(walk.radius), barAt(walk, touch - walk.withdrawn - off), walk.bar),
    ),
  )
}

/**
 * Least gaps of the bar: drawn back from first touch in the uncut bore, or from the floor of the slot that is there already; and all the way
 * from there to the floor, all round and ahead. In a tilted hub at both of its ends.
 */
export const gapsWalked = (walk: Walk, steps = 8): { withdrawn: number; cutting: number; ahead: number } => {
  const { radius, floor, noseWidth, corner, offset, bar, cut, tilted = 0 } = walk
  const touch = Math.max(cut ?? -Infinity, touchOff(radius, noseWidth, corner, offset))
  const slot = (to: number) => wallsOf(radius, { offset, half: noseWidth / 2, floor: to })
  let [withdrawn, cutting, ahead] = [Infinity, Infinity, Infinity]
  for (const off of tilted > 0 ? [0, tilted] : [0]) {
    const open = cut === undefined ? wallsOf(radius) : slot(cut - off)
    withdrawn = Math.min(withdrawn, gap(open, barAt(walk, touch - walk.withdrawn - off), bar))
    for (let step = 0; step <= steps; step++) {
      const x = touch + ((floor - touch) * step) / steps - off
      const walls = slot(x)
      cutting = Math.min(cutting, gap(walls, barAt(walk, x), bar))
      ahead = Math.min(ahead, gap(walls, barAt(walk, x), bar, true))
    }
  }
  return { withdrawn, cutting, ahead }
}
