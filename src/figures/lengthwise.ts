/**
 * The bore cut lengthwise through its slot: the bar at the start of its stroke drawn full, at the end in broken line, and what must be open behind
 * the hub. Along the bore to the right from the near face, the nose up. Bar and slot stand where the cut stands.
 */
import type { Design } from '../design.ts'
import type { Corner, Point } from '../solid/outline.ts'
import { type Figure, type Run, scaleFor, type Target } from './figure.ts'
import { bare, figured, listed, whole } from './saying.ts'
import { chain, lengthOfRuns, type Placing, placing, type Sketch, sketch } from './sketch.ts'
import { type Standing, standingOf, type Where } from './standing.ts'
import { tornLine } from './torn-line.ts'

interface Cutaway {
  readonly design: Design
  readonly standing: Standing
  readonly on: Sketch
  readonly place: Placing
  /** One letter, in mm of the part. */
  readonly letter: number
  readonly start: number
  readonly end: number
  readonly holder: number
}

/** Cutting edge at the start and the end of the stroke, from the near face. */
const strokeOf = (
  { plan, spec }: Design,
  { bar, asked }: Standing,
): { readonly start: number; readonly end: number } => {
  const before = -(plan?.stroke.before ?? bar.overtravel)
  const past = spec.bore.length + (plan?.stroke.past ?? bar.overtravel)
  return asked.stroke === 'push' ? { start: before, end: past } : { start: past, end: before }
}

const rectangle = (x1: number, y1: number, x2: number, y2: number): readonly Corner[] =>
  chain([x1, y1], [x2, y1], [x2, y2], [x1, y2])

const drawHub = ({ design, standing, on, place, letter }: Cutaway): void => {
  const { spec, section } = design
  const { length, blind } = spec.bore
  const r = section.boreRadius
  const roof = section.floor + 1.5 * letter
  const foot = -r - 1.6 * letter
  const through = blind ? length + blind.beyond + 1.6 * letter : length
  const cut = Math.max(standing.nose, r)
  const groove = blind?.relief
  // Metal over the bore, as it stands: the slot is open up to the nose.
  const top = tornLine([0, roof], [through, roof], 0.18 * letter)
  const bottom = tornLine([0, foot], [through, foot], 0.18 * letter)
  const end = blind ? length + blind.beyond : length
  const grooveTop = groove ? groove.diameter / 2 : r
  const grooveEnd = groove ? length + groove.length : length
  const upper: Point[] = blind
    ? [
        [0, cut],
        [length, cut],
        ...(groove
          ? ([
              [length, grooveTop],
              [grooveEnd, grooveTop],
              [grooveEnd, r],
            ] as Point[])
          : ([[length, r]] as Point[])),
        [end, r],
      ]
    : [
        [0, cut],
        [length, cut],
      ]
  const lower: Point[] = blind
    ? [
        [end, -r],
        ...(groove
          ? ([
              [grooveEnd, -r],
              [grooveEnd, -grooveTop],
              [length, -grooveTop],
              [length, -r],
            ] as Point[])
          : []),
        [0, -r],
      ]
    : []
  const metal = blind
    ? [
        [
          ...upper,
          ...lower,
          ...bottom,
          ...tornLine([through, foot], [through, roof], 0.18 * letter).slice(1),
          ...top.toReversed().slice(1),
        ],
      ]
    : [
        [...upper, ...top.toReversed()],
        [[length, -r] as Point, [0, -r] as Point, ...bottom],
      ]
  for (const points of metal) on.area('hub', [place.path(chain(...points))])
  if (standing.nose < section.floor - 0.005) {
    on.area('still-to-cut', [place.path(rectangle(0, cut, length, section.floor))], 'cut.left')
    on.line('still', place.path(chain([0, section.floor], [length, section.floor])), 'cut.left')
  }
  on.line('torn', place.path(chain(...top)))
  on.line('torn', place.path(chain(...bottom)))
  if (blind) {
    on.line('torn', place.path(tornLine([through, foot], [through, roof], 0.18 * letter).map((at) => ({ at }))))
    on.line('slot', place.path(chain([0, roof], ...upper, ...lower, [0, foot])))
  } else {
    on.line('slot', place.path(chain([0, roof], ...upper, [length, roof])))
    on.line('slot', place.path(chain([0, foot], [0, -r], [length, -r], [length, foot])))
  }
  // Where the slot's side meets the bore.
  if (standing.nose > section.mouth)
    on.line('thin', place.path(chain([0, section.mouth], [length, section.mouth])), 'section.mouth')
}

/** The bit from the side: edge at `z`, nose up; leaning where the bar is made so. */
const bitFrom = ({ standing }: Cutaway, z: number): readonly Corner[] => {
  const { bit, asked, nose, projection } = standing
  // A head is one piece with its neck: it shows where it stands out.
  const depth = bit.is === 'bit' ? bit.length : projection
  const way = asked.stroke === 'push' ? -1 : 1
  const lean = (bit.incline * Math.PI * way) / -180
  const [c, s] = [Math.cos(lean), Math.sin(lean)]
  const points: Point[] = [
    [0, 0],
    [way * bit.along, -bit.setBack],
    [way * bit.along, -depth],
    [0, -depth],
  ]
  return points.map(([x, y]) => ({ at: [z + x * c + y * s, nose - x * s + y * c] }))
}

const barAt = (drawn: Cutaway, z: number): readonly Corner[] => {
  const { bar, axis, cutter } = drawn.standing
  const rho = bar.diameter.nominal / 2
  const tip = z + bar.tipBeyond - bar.overtravel
  const chamfer = Math.min(cutter?.endChamfer ?? 0, rho / 2)
  const [y] = axis
  return chain(
    [z - bar.overhang, y - rho],
    [tip - chamfer, y - rho],
    [tip, y - rho + chamfer],
    [tip, y + rho - chamfer],
    [tip - chamfer, y + rho],
    [z - bar.overhang, y + rho],
  )
}

const drawBar = (drawn: Cutaway): void => {
  const { on, place, standing, start, end, letter, holder } = drawn
  const { bar, axis, asked, bit, cutter } = standing
  const [y] = axis
  const rho = bar.diameter.nominal / 2
  const body = place.path(barAt(drawn, start))
  on.area('bar', [body], 'bar.diameter')
  on.line('edge', body, 'bar.diameter', true)
  if (cutter?.form === 'end screw') {
    const face = start + (asked.stroke === 'push' ? 0 : bit.along)
    const half = cutter.screw.major / 2
    on.line('hidden', place.path(rectangle(face, y - half, face + cutter.screw.length, y + half)), undefined, true)
  }
  const blank = place.path(bitFrom(drawn, start))
  on.area(bit.is === 'bit' ? 'bit' : 'bar', [blank], 'bar.projection')
  on.line('edge', blank, 'bar.projection', true)
  const ghost = barAt(drawn, end)
  // Seen only past the bar that is drawn full.
  const seen = Math.max(holder, asked.stroke === 'push' ? start + bar.tipBeyond - bar.overtravel : holder)
  const gone = ghost.map(({ at: [x, v] }): Corner => ({ at: [Math.max(x, seen), v] }))
  on.line('ghost', place.path(gone))
  on.line('ghost', place.path(bitFrom(drawn, end)), undefined, true)
  // The holder grips from here on.
  const grip = Math.max(rho, bar.shank.nominal / 2) + 0.8 * letter
  const torn = tornLine([holder - 1.5 * letter, y - grip], [holder - 1.5 * letter, y + grip], 0.18 * letter)
  on.area('no-room', [place.path(chain(...torn, [holder, y + grip], [holder, y - grip]))])
  on.line('torn', place.path(chain(...torn)))
  on.line(
    'edge',
    place.path(
      chain(torn.at(-1) ?? [holder, y + grip], [holder, y + grip], [holder, y - grip], torn[0] ?? [holder, y - grip]),
    ),
  )
}

/** What stands behind the hub where that is told, and how far the bar's end runs into it. */
const drawBehind = ({ design, standing, on, place, letter, end }: Cutaway): void => {
  const { spec, section } = design
  const { bar, asked, axis } = standing
  const open = spec.bore.blind?.beyond ?? asked.behind
  if (open === undefined) return
  const wall = spec.bore.length + open
  const tip = Math.max(end, 0) + bar.tipBeyond - bar.overtravel
  const far = spec.bore.length + bar.tipBeyond
  const by = far - wall
  const r = section.boreRadius
  if (!spec.bore.blind) {
    const [low, high] = [-r - 0.9 * letter, section.floor + 0.9 * letter]
    const torn = tornLine([wall + 1.1 * letter, low], [wall + 1.1 * letter, high], 0.18 * letter)
    on.area('no-room', [place.path(chain([wall, low], ...torn, [wall, high]))])
    on.line('edge', place.path(chain([wall, low], [wall, high])), 'tooling.bar.behind')
    on.line('torn', place.path(chain(...torn)))
  }
  if (by <= 1e-6) return
  const rho = bar.diameter.nominal / 2
  const broken = place.path(rectangle(wall, axis[0] - rho, Math.max(tip, far), axis[0] + rho))
  on.area('broken', [broken], 'bar.tipBeyond')
  const at = place.at([(wall + far) / 2, axis[0]])
  on.say({ of: 'broken', name: 'in the metal by', said: whole(design, by), mm: by })
  const runs: Run[] = [{ role: 'broken', text: `in the metal by ${bare(design, by)}` }]
  const half = lengthOfRuns(runs, on.em) / 2
  const right = place.at([far, 0])[0] + 3 * on.em
  const x = Math.min(at[0], Math.max(right - half, half))
  on.words([x, place.at([0, axis[0] - rho])[1] + 1.2 * on.em], runs, { anchor: 'middle', of: 'broken' })
}

interface Along {
  readonly of: string
  readonly name: string
  readonly from: number
  readonly to: number
  readonly words: readonly (readonly Run[])[]
}

/** Along the bore, under the picture: words where they fit, shorter ones where they do not. */
const drawLengths = ({ on, place, design, holder, standing }: Cutaway, y: number, width: number): number => {
  const { bar } = standing
  const { length } = design.spec.bore
  const edge = holder + bar.overhang
  const said = (mm: number, ...words: readonly string[]): readonly (readonly Run[])[] => [
    ...words.map((word) => figured(bare(design, mm), word)),
    [{ role: 'figure', text: bare(design, mm) }],
  ]
  const lengths: readonly Along[] = [
    {
      of: 'bar.overhang',
      name: 'holder to edge',
      from: holder,
      to: edge,
      words: said(bar.overhang, 'holder to edge', 'to edge'),
    },
    { of: 'spec.bore.length', name: 'hub', from: 0, to: length, words: said(length, 'hub') },
    {
      of: 'bar.tipBeyond',
      name: 'the bar runs out behind',
      from: length,
      to: length + bar.tipBeyond,
      words: said(bar.tipBeyond, 'runs out behind', 'runs out'),
    },
  ]
  const rows: number[] = []
  let deepest = 0
  for (const { of, name, from, to, words } of lengths) {
    const [a, b] = [place.at([from, 0])[0], place.at([to, 0])[0]]
    on.line('leader', chain([a, y - 0.5 * on.em], [a, y + 0.3 * on.em]), of)
    on.line('leader', chain([b, y - 0.5 * on.em], [b, y + 0.3 * on.em]), of)
    on.span([a, y], [b, y], of)
    on.say({
      of,
      name,
      said: whole(design, to - from),
      mm: to - from,
      span: [
        [a, y],
        [b, y],
      ],
    })
    // Words under their span; a row lower where the neighbour's are in the way. Nothing stands right of the last, so its words may shift.
    const last = from > 0
    const centre = (runs: readonly Run[]): number => {
      const half = lengthOfRuns(runs, on.em) / 2
      const clear = last ? (rows[0] ?? 0) + 0.6 * on.em + half : 0
      return Math.max((a + b) / 2, half + 0.1 * on.em, clear)
    }
    const inside = (runs: readonly Run[]): boolean =>
      centre(runs) + lengthOfRuns(runs, on.em) / 2 <= width - 0.1 * on.em
    const runs =
      words.find((one) => inside(one) && (last || lengthOfRuns(one, on.em) <= b - a + 0.5 * on.em)) ??
      words.at(-2) ??
      []
    const half = lengthOfRuns(runs, on.em) / 2
    const x = inside(runs) ? centre(runs) : width - half - 0.1 * on.em
    const row = rows.findIndex((right) => right < x - half - 0.4 * on.em)
    const at = row < 0 ? rows.length : row
    rows[at] = x + half
    on.words([x, y + (1.3 + 1.3 * at) * on.em], runs, { anchor: 'middle', of })
    deepest = Math.max(deepest, at)
  }
  return y + (1.3 + 1.3 * deepest + 0.4) * on.em
}

/** Undefined for a job without a bar. */
export const lengthwise = (design: Design, target: Target, at: Where = 'withdrawn'): Figure | undefined => {
  const standing = standingOf(design, at)
  if (!standing) return undefined
  const { bar } = standing
  const { em, width } = target
  const on = sketch(target)
  const { start, end } = strokeOf(design, standing)
  const { spec, section } = design
  const holder = start - bar.overhang
  const first = Math.min(holder, end - bar.overhang)
  const far = Math.max(start, end) + bar.tipBeyond - bar.overtravel
  const behind = spec.bore.blind ? 1.8 : standing.asked.behind !== undefined ? 1.4 : 0.6
  const reach = Math.max(far, spec.bore.length + (spec.bore.blind?.beyond ?? standing.asked.behind ?? 0))
  const room = width - (1.7 + behind) * em
  const high = Math.max(section.floor, standing.nose) + section.boreRadius
  const most = target.height === undefined ? Infinity : (target.height - 8 * em) / high
  const scale = scaleFor(target, Math.min(room / (reach - first), most), target.scales ? 1 : Infinity)
  const letter = em / scale
  const spare = (room - scale * (reach - first)) / 2
  const roof = section.floor + 1.5 * letter
  const top = 1.9 * em
  const place = placing(scale, [1.6 * em + spare - first * scale, top + roof * scale])
  const drawn: Cutaway = { design, standing, on, place, letter, start, end, holder: first }
  drawHub(drawn)
  drawBehind(drawn)
  drawBar({ ...drawn, holder })
  const axisY = place.at([0, standing.axis[0]])[1]
  on.line(
    'centre',
    chain([place.at([holder, 0])[0] - 1.2 * em, axisY], [Math.min(width, place.at([far, 0])[0] + 0.6 * em), axisY]),
  )
  drawStrokeWords(drawn, width)
  const foot = place.at([0, -section.boreRadius - 1.6 * letter])[1]
  const grip = place.at([0, standing.axis[0] - Math.max(bar.diameter.nominal, bar.shank.nominal) / 2 - 0.8 * letter])[1]
  const height = drawLengths({ ...drawn, holder }, Math.max(foot, grip) + 1.3 * em, width)
  return {
    name: 'lengthwise',
    width,
    height,
    em,
    scale,
    marks: on.marks,
    title: 'The bore cut lengthwise, the bar at the start of its stroke and, in broken line, at its end',
    says: `${listed(on.sizes.map(({ name, said }) => `${name} ${said}`))}.`.replace(/^./, (c) => c.toUpperCase()),
    sizes: on.sizes,
  }
}

/** Over the picture, left and right of it: how far clear at the start, how far past at the end. */
const drawStrokeWords = ({ on, place, design, start, end, standing }: Cutaway, width: number): void => {
  const { length } = design.spec.bore
  const push = standing.asked.stroke === 'push'
  const [clear, past] = push ? [-start, end - length] : [start - length, -end]
  const words = (word: string, mm: number, tail: string): Run[] => [
    { role: 'note', text: `${word} ` },
    { role: 'figure', text: bare(design, mm) },
    { role: 'note', text: ` ${tail}` },
  ]
  const size = 0.92 * on.em
  const first = words('start:', clear, 'clear')
  const last = words('end:', past, 'past')
  const y = 1.05 * on.em
  const [near, away] = push ? [first, last] : [last, first]
  const left = Math.max(place.at([0, 0])[0] - 0.3 * on.em, lengthOfRuns(near, size) + 0.1 * on.em)
  on.words([left, y], near, { anchor: 'end', size, of: 'plan.stroke' })
  const right = Math.min(
    Math.max(place.at([length, 0])[0] + 0.3 * on.em, left + on.em),
    width - lengthOfRuns(away, size) - 0.1 * on.em,
  )
  if (right > left + 0.5 * on.em) on.words([right, y], away, { size, of: 'plan.stroke' })
  on.say({ of: 'plan.stroke', name: 'clear at the start', said: whole(design, clear), mm: clear })
  on.say({ of: 'plan.stroke', name: 'past at the end', said: whole(design, past), mm: past })
}
