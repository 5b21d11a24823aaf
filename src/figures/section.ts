/**
 * The bore end on: a piece of the hub torn out, the slot as far as it is cut, bar and bit where they stand, and at most seven sizes led out. Order
 * of paint: metal, void, still to cut, bar, bit, rim.
 */
import polygonClipping from 'polygon-clipping'
import type { Design } from '../design.ts'
import { circle, type Corner, type Outline, type Point } from '../solid/outline.ts'
import { bitOutline } from './bit.ts'
import { callOut, type Callout } from './call-out.ts'
import { contourOf, type Cut, notchOf, wholeSlot } from './contour.ts'
import { type Figure, isNarrow, type Target } from './figure.ts'
import { hubPiece } from './hub-piece.ts'
import { bare, boreNamed, figured, listed, whole } from './saying.ts'
import { arc, chain, flattened, type Placing, placing, type Sketch, sketch } from './sketch.ts'
import { type Stage, stageOf } from './stage.ts'
import { type Standing, standingOf, type Where } from './standing.ts'

/** How far each feature is cut: those before the one at the bar are done, those after it not begun. */
const cutsOf = (design: Design, standing: Standing | undefined): readonly (readonly Cut[])[] =>
  design.section.at.map((_, index) => {
    if (!standing || index < standing.keyway) return [wholeSlot(design.section)]
    return index === standing.keyway ? standing.cuts : []
  })

/** Parts of a body that stand in the hub's metal, mm; slivers of less than a hundredth are none. */
const inMetal = (body: readonly Point[], contour: Outline): readonly Point[][] => {
  const ring = (points: readonly Point[]): [number, number][][] => [points.map(([x, y]) => [x, y])]
  const rest = polygonClipping.difference(ring(body), ring(flattened(contour, true, 0.02)))
  return rest
    .flatMap((polygon) => polygon.slice(0, 1))
    .map((points) => points.map(([x, y]): Point => [x, y]))
    .filter((points) => {
      const area = points.reduce((sum, [x, y], i) => {
        const next = points[(i + 1) % points.length] ?? points[0]
        return next ? sum + (x * next[1] - next[0] * y) / 2 : sum
      }, 0)
      const round = points.reduce((sum, [x, y], i) => {
        const next = points[(i + 1) % points.length] ?? points[0]
        return next ? sum + Math.hypot(next[0] - x, next[1] - y) : sum
      }, 0)
      return Math.abs(area) > 0.01 * round
    })
}

interface Drawn {
  readonly design: Design
  readonly target: Target
  readonly stage: Stage
  readonly on: Sketch
  readonly place: Placing
  readonly contour: Outline
}

/** What is still to be cut: the whole notch less what is open, painted under the open part. */
const drawStill = ({ design, on, place }: Drawn, cuts: readonly (readonly Cut[])[], turn: number): void => {
  const { section } = design
  const whole = notchOf(section, [wholeSlot(section)])
  if (!whole) return
  section.at.forEach((angle, index) => {
    const deepest = Math.min(...(cuts[index] ?? []).map(({ x }) => x), Infinity)
    const lanes = cuts[index]?.length ?? 0
    if (lanes > 0 && deepest >= section.floor - 1e-6 && notchOf(section, cuts[index] ?? [])) return
    const outline = contourOf({ ...section, at: [angle] }, [[wholeSlot(section)]], turn)
    on.area('still-to-cut', [place.path(outline)], 'cut.left')
  })
}

const rotated = (path: readonly Corner[], degrees: number): readonly Corner[] => {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]
  return path.map((corner) => ({
    ...corner,
    at: [corner.at[0] * c - corner.at[1] * s, corner.at[0] * s + corner.at[1] * c],
  }))
}

const drawRim = ({ design, on, place, contour }: Drawn, cuts: readonly (readonly Cut[])[], turn: number): void => {
  const { section } = design
  const radius = section.boreRadius
  section.at.forEach((angle, index) => {
    const done = notchOf(section, cuts[index] ?? [])
    const whole = notchOf(section, [wholeSlot(section)])
    const turned = (path: readonly Corner[]) => place.path(rotated(path, angle + turn))
    const deep = Math.max(...(cuts[index] ?? []).map(({ x }) => x), -Infinity)
    if (whole && deep < section.floor - 1e-6) on.line('still', turned(whole), 'cut.left')
    const half = (Math.asin(Math.min(1, section.width / 2 / radius)) * 180) / Math.PI
    if (done && deep >= radius)
      on.line(
        'crown',
        turned(arc([0, 0], radius, (-half * Math.PI) / 180, (half * Math.PI) / 180)),
        'section.crownDepth',
      )
  })
  on.line('slot', place.path(contour), undefined, true)
}

const drawBar = ({ on, place, design }: Drawn, { bar, bit, cutter, axis, nose }: Standing): void => {
  const rho = bar.diameter.nominal / 2
  const [x, y] = axis
  on.area('bar', [place.path(circle(2 * rho, axis))], 'bar.diameter')
  const blank = bitOutline(design.section, bar, bit, nose, y)
  // The bar's rim: whole but for where the nose comes out of it, dashed there.
  const half = bit.size / 2
  const shoulder = x + Math.sqrt(Math.max(0, rho ** 2 - half ** 2))
  const width = nose - bit.noseLength >= shoulder ? half : Math.min(half, bit.neck / 2)
  const gap = Math.asin(Math.min(1, width / rho))
  on.line('edge', place.path(arc(axis, rho, gap, 2 * Math.PI - gap)), 'bar.diameter')
  const tick = Math.min(0.18 * rho, (0.7 * on.em) / place.scale)
  if (cutter) {
    const hole = cutter.crossHole.nominal / 2
    const reach = Math.sqrt(Math.max(0, rho ** 2 - hole ** 2))
    for (const side of [-1, 1])
      on.line('hidden', place.path(chain([x - reach, y + side * hole], [x + reach, y + side * hole])))
    on.area('bit', [place.path(blank)], 'bar.projection')
    on.line('edge', place.path(blank), 'bar.projection', true)
    on.line('hidden', place.path(arc(axis, rho, -gap, gap)))
    if (cutter.form === 'end screw') on.line('hidden', place.path(arc(axis, cutter.screw.major / 2, 0, 2 * Math.PI)))
  } else {
    // One piece with its bar: only the part that stands out has a rim of its own.
    on.area('bar', [place.path(blank)], 'bar.projection')
    const out = blank.filter(({ at }) => at[0] > x + 1e-9)
    const rim = x + rho * Math.cos(gap)
    const start = blank.length / 2
    const path = [...blank.slice(start), ...blank.slice(0, start)].filter((corner) => out.includes(corner))
    on.line(
      'edge',
      place.path([{ at: [rim, y - width] }, ...path.filter(({ at }) => at[0] > rim), { at: [rim, y + width] }]),
      'bar.projection',
    )
  }
  on.line('tick', place.path(chain([x - tick, y], [x + tick, y])))
  on.line('tick', place.path(chain([x, y - tick], [x, y + tick])))
}

const drawCentre = ({ on, place, design, stage }: Drawn): void => {
  const { origin, width, height } = stage
  const over = 0.5 * on.em
  const { boreRadius, floor } = design.section
  const left = Math.max(over, origin[0] - boreRadius * place.scale - 1.4 * on.em)
  const right = Math.min(width - over, origin[0] + floor * place.scale + 1.4 * on.em)
  const up = Math.max(0.2 * on.em, origin[1] - boreRadius * place.scale - 0.9 * on.em)
  const down = Math.min(height - 0.2 * on.em, origin[1] + boreRadius * place.scale + 0.9 * on.em)
  on.line('centre', chain([left, origin[1]], [right, origin[1]]))
  on.line('centre', chain([origin[0], up], [origin[0], down]))
}

/** Where two bodies share space: filled, ringed, its size written. */
const drawBroken = (drawn: Drawn, standing: Standing): readonly Callout[] => {
  const { on, place, contour, design, stage } = drawn
  const { bar, bit, axis, nose, back, front } = standing
  const rho = bar.diameter.nominal / 2
  const shoulder = nose - bit.noseLength
  const half = bit.size / 2
  const blank: readonly Point[] =
    bar.noseWidth < bit.size - 1e-6 && shoulder > axis[0]
      ? [
          [axis[0], axis[1] - half],
          [shoulder, axis[1] - half],
          [shoulder, axis[1] + half],
          [axis[0], axis[1] + half],
        ]
      : []
  const corner = Math.hypot(shoulder, Math.abs(axis[1]) + half) - design.section.boreRadius
  const depth = ([x, y]: Point): number => Math.hypot(x, y)
  const bodies = [
    { points: flattened(circle(2 * rho, axis), true, 0.02), by: Math.max(-back.length, -(front?.length ?? 0)) },
    ...(blank.length > 0 ? [{ points: blank, by: corner }] : []),
  ]
  return bodies.flatMap(({ points, by }) => {
    const pieces = by > 1e-6 ? inMetal(points, contour) : []
    if (pieces.length === 0) return []
    for (const piece of pieces) {
      const path = place.path(piece.map((at) => ({ at })))
      on.area('broken', [path], 'broken')
      on.line('edge', path, 'broken', true)
    }
    // The ring stands where one body is deepest in the other.
    const deepest = pieces.flat().toSorted((p, q) => depth(q) - depth(p))[0]
    if (!deepest) return []
    const [cx, cy] = place.at(deepest)
    const ring = 0.9 * on.em
    on.line('ring', circle(2 * ring, [cx, cy]), 'broken', true)
    on.claim({ left: cx - ring, right: cx + ring, top: cy - ring, bottom: cy + ring })
    const runs: Callout['runs'] = [
      { role: 'broken', text: 'in the metal by ' },
      { role: 'broken', text: bare(design, by) },
    ]
    return [
      {
        of: 'broken',
        name: 'in the metal by',
        mm: by,
        runs,
        tip: [cx, cy - ring],
        spots: [
          { at: [cx - ring, cy - ring - 0.6 * on.em], anchor: 'start' },
          { at: [0.2 * on.em, cy - ring - 1.4 * on.em], anchor: 'start' },
          { at: [0.2 * on.em, cy + ring + 1.8 * on.em], anchor: 'start' },
          { at: [0.2 * on.em, 2.6 * on.em], anchor: 'start' },
          { at: [stage.width - 0.2 * on.em, 1.1 * on.em], anchor: 'end' },
          { at: [stage.width - 0.2 * on.em, stage.height - 0.4 * on.em], anchor: 'end' },
          { at: [0.2 * on.em, stage.height - 1.8 * on.em], anchor: 'start' },
        ],
      },
    ]
  })
}

const calloutsOf = (drawn: Drawn, standing: Standing | undefined): readonly Callout[] => {
  const { design, on, place, stage, target } = drawn
  const { section } = design
  const { em } = on
  const radius = section.boreRadius
  const narrow = isNarrow(target)
  const at = (x: number, y: number): Point => place.at([x, y])
  const onBore = (degrees: number): Point =>
    at(radius * Math.cos((degrees * Math.PI) / 180), radius * Math.sin((degrees * Math.PI) / 180))
  const callouts: Callout[] = [
    {
      of: 'section.bore',
      name: 'bore',
      mm: 2 * radius,
      runs: figured(boreNamed(design), 'bore'),
      tip: onBore(132),
      dot: true,
      spots: [
        { at: [0.2 * em, 1.1 * em], anchor: 'start' },
        { at: [0.2 * em, 2.4 * em], anchor: 'start' },
        { at: [0.2 * em, stage.height - 0.4 * em], anchor: 'start' },
      ],
    },
  ]
  const half = section.width / 2
  const blankHalf = standing ? Math.abs(standing.axis[1]) + standing.bit.size / 2 : half
  const beside = Math.max(half, blankHalf) + (1.3 * em) / place.scale
  const floor = section.floor
  const nose = standing?.nose ?? floor
  if (standing) {
    const { bar, axis, projection, back, front } = standing
    const rho = bar.diameter.nominal / 2
    const rear = back.span.map(place.at) as unknown as readonly [Point, Point]
    const long = Math.abs(back.length) * place.scale
    const onLevel = Math.abs(rear[0][1] - rear[1][1]) < 0.5
    // The bore's centre line would run through the number, or through the name under it.
    const below = (place.at([0, 0])[1] - rear[0][1]) / em
    const struck = (below > 0.3 && below < 2.7) || (below > -1.5 && below < -0.2)
    if (back.length > 0)
      callouts.push({
        of: 'bar.gaps.back',
        name: 'back gap',
        mm: back.length,
        runs: figured(bare(design, back.length), 'back gap'),
        span: rear,
        ball: [rear[1][0] - 0.85 * em, rear[1][1]],
        tip: [(rear[0][0] + rear[1][0]) / 2, (rear[0][1] + rear[1][1]) / 2],
        ...(long > 4.2 * em && onLevel && !struck && !narrow && { stacked: true }),
        spots: [
          { at: [rear[1][0] - 1.6 * em, rear[1][1] - 0.5 * em], anchor: 'end' },
          { at: [rear[1][0] + 0.6 * em, rear[1][1] + 3.2 * em], anchor: 'start' },
          { at: [rear[1][0] + 0.6 * em, rear[1][1] - 3.2 * em], anchor: 'start' },
          ...[2.6, 4, 5.5, 7, 9, 11, -3, -5, -7].map((down) => ({
            at: [0.2 * em, rear[1][1] + down * em] as Point,
            anchor: 'start' as const,
          })),
        ],
      })
    const above = axis[1] + beside
    callouts.push({
      of: 'bar.projection',
      name: 'projection',
      mm: projection,
      runs: figured(bare(design, projection), 'projection'),
      span: [at(nose - projection, above), at(nose, above)],
      from: [at(nose - projection, axis[1]), at(nose, axis[1] + bar.noseWidth / 2)],
      tip: at(nose - projection / 2, above),
      spots: beyond(at(nose - projection, above), at(nose, above), em),
    })
    if (floor - nose > 0.005) {
      const below = -half - (1.3 * em) / place.scale
      callouts.push({
        of: 'cut.left',
        name: 'still to cut',
        mm: floor - nose,
        runs: [
          { role: 'mark', text: bare(design, floor - nose) },
          { role: 'word', text: ' still to cut' },
        ],
        span: [at(nose, below), at(floor, below)],
        from: [at(nose, -half), at(floor, -half)],
        kind: 'mark',
        tip: at((nose + floor) / 2, below),
        spots: beyond(at(nose, below), at(floor, below), em, true),
      })
    }
    if (front && front.length > 0 && front.at !== 'crown or floor') {
      const ends = front.span.map(place.at) as unknown as readonly [Point, Point]
      const tip: Point = [(ends[0][0] + ends[1][0]) / 2, (ends[0][1] + ends[1][1]) / 2]
      const side = front.span[1][1] < 0 ? 1 : -1
      callouts.push({
        of: 'bar.gaps.front',
        name: 'front gap',
        mm: front.length,
        runs: figured(bare(design, front.length), 'front gap'),
        span: ends,
        tip,
        spots: [3.4, 4.6, 2.4, 6].flatMap((down) =>
          [2.4, 1, 4, -1].map((along) => ({
            at: [tip[0] + along * em, tip[1] + side * down * em] as Point,
            anchor: 'start' as const,
          })),
        ),
      })
    }
    const low = (231 * Math.PI) / 180
    callouts.push({
      of: 'bar.diameter',
      name: 'bar',
      mm: 2 * rho,
      runs: figured(`Ø${bare(design, 2 * rho)}`, 'bar'),
      tip: at(axis[0] + rho * Math.cos(low), axis[1] + rho * Math.sin(low)),
      dot: true,
      spots: [
        { at: [0.2 * em, stage.height - 0.4 * em], anchor: 'start' },
        { at: [0.2 * em, stage.height - 1.8 * em], anchor: 'start' },
        { at: [stage.width - 0.2 * em, stage.height - 0.4 * em], anchor: 'end' },
      ],
    })
  }
  const right = floor + (1 * em) / place.scale
  callouts.push({
    of: 'section.width',
    name: 'slot width',
    mm: section.width,
    runs: figured(bare(design, section.width), 'wide'),
    span: [at(right, -half), at(right, half)],
    from: [at(floor, -half), at(floor, half)],
    tip: at(right, 0),
    spots: [
      { at: [at(right, 0)[0] + 0.5 * em, at(right, 0)[1] - 0.45 * em], anchor: 'start' },
      { at: [at(right, 0)[0] + 0.5 * em, at(right, half)[1] - 0.8 * em], anchor: 'start' },
      { at: [at(right, 0)[0] + 0.5 * em, at(right, -half)[1] + 1.4 * em], anchor: 'start' },
      { at: [stage.width - 0.2 * em, at(right, half)[1] - 2.2 * em], anchor: 'end' },
      { at: [stage.width - 0.2 * em, at(right, -half)[1] + 2.8 * em], anchor: 'end' },
    ],
  })
  return callouts
}

/** Spots for words beyond the right end of a level span, then over its middle, then left of it. */
const beyond = (a: Point, b: Point, em: number, below = false): Callout['spots'] => [
  { at: [b[0] + 0.5 * em, b[1] + 0.33 * em], anchor: 'start' },
  { at: [b[0] + 1.6 * em, b[1] + 0.33 * em], anchor: 'start' },
  ...[1.25, 2.5, 3.7].flatMap((off) =>
    [(a[0] + b[0]) / 2, b[0] + 2 * em, a[0] - 2 * em].map((x) => ({
      at: [x, a[1] + (below ? off + 0.1 : -off + 0.7) * em] as Point,
      anchor: 'middle' as const,
    })),
  ),
  { at: [a[0] - 1.6 * em, b[1] + 0.33 * em], anchor: 'end' },
]

/** The land between the cut feature and its neighbour, where several are cut. */
const landCallout = ({ design, on, place, stage }: Drawn): readonly Callout[] => {
  const { section } = design
  const [first, ...others] = section.at
  if (first === undefined || others.length === 0 || section.land === undefined) return []
  const turns = others.map((angle) => (((angle - first) % 360) + 360) % 360)
  const next = Math.min(...turns)
  const r = section.boreRadius
  const half = (Math.asin(Math.min(1, section.width / 2 / r)) * 180) / Math.PI
  const middle = (next / 2) * (Math.PI / 180)
  if (next <= 2 * half) return []
  const along = arc([0, 0], r + (0.55 * on.em) / place.scale, (half * Math.PI) / 180, ((next - half) * Math.PI) / 180)
  on.line('thin', place.path(along), 'section.land')
  const tip = place.at([
    (r + (0.55 * on.em) / place.scale) * Math.cos(middle),
    (r + (0.55 * on.em) / place.scale) * Math.sin(middle),
  ])
  return [
    {
      of: 'section.land',
      name: 'least land',
      mm: section.land,
      runs: figured(bare(design, section.land), 'land'),
      tip,
      spots: [
        { at: [stage.width - 0.2 * on.em, 1.1 * on.em], anchor: 'end' },
        { at: [stage.width - 0.2 * on.em, 2.4 * on.em], anchor: 'end' },
        { at: [stage.width - 0.2 * on.em, stage.height - 0.4 * on.em], anchor: 'end' },
      ],
    },
  ]
}

/**
 * The section of a job at a moment of its cut. A job without a bar is drawn with its slot finished. `only` names the dimensions that are drawn, without
 * words; left out, all are led out, on narrow pictures by numbered balls.
 */
export const sectionFigure = (design: Design, at: Where, target: Target, only?: readonly string[]): Figure => {
  const standing = standingOf(design, at)
  const { section } = design
  const turn = -(section.at[standing?.keyway ?? 0] ?? 0)
  const stage = stageOf(design, target)
  const on = sketch(target)
  const place = placing(stage.scale, stage.origin)
  const cuts = cutsOf(design, standing)
  const contour = contourOf(section, cuts, turn)
  const drawn: Drawn = { design, target, stage, on, place, contour }
  drawHub(drawn, cuts, turn)
  if (standing) drawBar(drawn, standing)
  drawRim(drawn, cuts, turn)
  drawCentre(drawn)
  if (standing && standing.dial > standing.nose + 0.002) {
    const [low, high] = [standing.axis[1] - standing.bar.noseWidth / 2, standing.axis[1] + standing.bar.noseWidth / 2]
    const out = (0.35 * on.em) / stage.scale
    on.line('dots', place.path(chain([standing.dial, low - out], [standing.dial, high + out])), 'loads.lag')
  }
  const broken = standing ? drawBroken(drawn, standing) : []
  on.avoid(place.path(contour), true)
  if (standing) {
    const { bar, bit, axis, nose } = standing
    on.avoid(place.path(circle(bar.diameter.nominal, axis)), true)
    const [rear, front] = [
      place.at([nose - bit.length, axis[1] + bit.size / 2]),
      place.at([nose, axis[1] - bit.size / 2]),
    ]
    on.claim({ left: rear[0], top: rear[1], right: front[0], bottom: front[1] })
  }
  const callouts = [...calloutsOf(drawn, standing), ...broken, ...(only ? [] : landCallout(drawn))].filter(
    ({ of }) => of === 'broken' || (only?.includes(of) ?? true),
  )
  const height = callOut(on, callouts, {
    design,
    width: stage.width,
    height: stage.height,
    narrow: isNarrow(target),
    mute: only !== undefined,
  })
  const facts = on.sizes.map(({ name, said }) => `${name} ${said}`)
  return {
    name: 'section',
    width: stage.width,
    height,
    em: target.em,
    scale: stage.scale,
    marks: on.marks,
    title: standing ? 'The bore end on, with bar and bit' : 'The bore end on',
    says: `${standing ? momentOf(design, standing) : 'The slot finished'}: ${listed(facts)}.`,
    sizes: on.sizes,
  }
}

const drawHub = (drawn: Drawn, cuts: readonly (readonly Cut[])[], turn: number): void => {
  const { on, place, contour, design, stage } = drawn
  const piece = hubPiece(design, stage, on.em)
  on.area('hub', [place.path(piece.outline)])
  drawStill(drawn, cuts, turn)
  for (const { kind, path } of piece.lines) on.line(kind, place.path(path))
  on.area('void', [place.path(contour)])
}

const momentOf = (design: Design, { infeed, nose, bar, lane }: Standing): string => {
  const which = bar.lanes.length > 1 ? `, lane ${lane + 1} of ${bar.lanes.length}` : ''
  if (infeed < 0) return `Withdrawn by ${whole(design, -infeed)}${which}`
  if (nose >= design.section.floor - 1e-6) return `At full depth${which}`
  return `Dial at ${whole(design, infeed)}${which}`
}
