/** The stack in the press, upright: table, the spacer where the hub stands on one, hub, bushing with its collar, the broach before its stroke, and in broken line after it. */
import type { Design } from '../design.ts'
import { middle } from '../fits/size.ts'
import type { Corner, Point } from '../solid/outline.ts'
import { type Figure, type Run, scaleFor, type Target } from './figure.ts'
import { bare, figured, listed, whole } from './saying.ts'
import { chain, lengthOfRuns, placing, sketch } from './sketch.ts'
import { tornLine } from './torn-line.ts'

const box = (x1: number, y1: number, x2: number, y2: number): readonly Corner[] =>
  chain([x1, y1], [x2, y1], [x2, y2], [x1, y2])

/** Undefined for a job without a bushing. */
export const pressLengthwise = (design: Design, target: Target): Figure | undefined => {
  const { bushing, broach, pressSpacer, section, spec } = design
  if (!bushing || !broach) return undefined
  const { em, width } = target
  const on = sketch(target)
  const hub = spec.bore.length
  const r = section.boreRadius
  const rise = bushing.daylight
  const drop = bushing.below
  // The table's face, below the hub's.
  const base = -bushing.raised
  const hubHalf = Math.min(spec.hub.outside === undefined ? Infinity : spec.hub.outside / 2, 2.1 * r)
  const own = spec.hub.outside !== undefined && spec.hub.outside / 2 <= 2.1 * r
  const most = target.height ?? Math.min(1.25 * width, 40 * em)
  const words = 9.5 * em
  const scale = scaleFor(
    target,
    Math.min((most - 5 * em) / (rise + Math.max(drop, bushing.raised)), (width - 2 * words) / (2 * hubHalf + 4)),
    target.scales ? 1 : Infinity,
  )
  const letter = em / scale
  const top = 2.6 * em
  const place = placing(scale, [width / 2, top + rise * scale])
  const table = 1.5 * letter
  const hole = bushing.plateHoleRadius
  const reach = hubHalf + 1.6 * letter
  for (const side of [-1, 1]) {
    const torn = tornLine([side * reach, base], [side * reach, base - table], 0.15 * letter)
    on.area('no-room', [place.path(chain([side * hole, base], ...torn, [side * hole, base - table]))])
    on.line(
      'edge',
      place.path(
        chain(torn[0] ?? [0, base], [side * hole, base], [side * hole, base - table], torn.at(-1) ?? [0, base]),
      ),
    )
    if (pressSpacer && base < 0) {
      const ring = place.path(
        box((side * pressSpacer.opening) / 2, base, side * Math.min(pressSpacer.outside / 2, reach), 0),
      )
      on.area('bar', [ring], 'bushing.raised')
      on.line('edge', ring, 'bushing.raised', true)
    }
    on.line('torn', place.path(chain(...torn)))
    // The hub, cut through its slot on the right.
    const wall = r
    const inner = side < 0 ? -wall : wall
    const outer = own
      ? [[side * hubHalf, 0] as Point, [side * hubHalf, hub] as Point]
      : tornLine([side * hubHalf, 0], [side * hubHalf, hub], 0.15 * letter)
    on.area('hub', [place.path(chain([inner, 0], ...outer, [inner, hub]))])
    on.line(own ? 'edge' : 'torn', place.path(chain(...outer)))
    on.line('slot', place.path(chain([side * hubHalf, hub], [inner, hub], [inner, 0], [side * hubHalf, 0])))
  }
  on.area('still-to-cut', [place.path(box(r, 0, section.floor, hub))], 'cut.left')
  on.line('still', place.path(chain([section.floor, 0], [section.floor, hub])), 'cut.left')
  // The bushing hangs on its collar; its slot is open to the right.
  const outside = middle(bushing.outside) / 2
  const axis = outside - r
  const floor = bushing.floorFromBore
  const collar = bushing.collarDiameter / 2
  const body = chain(
    [axis - outside, hub - bushing.length],
    [floor, hub - bushing.length],
    [floor, hub + bushing.collarThickness],
    [axis - collar, hub + bushing.collarThickness],
    [axis - collar, hub],
    [axis - outside, hub],
  )
  on.area('bushing', [place.path(body)], 'bushing.collarThickness')
  on.line('edge', place.path(body), 'bushing.collarThickness', true)
  const start = hub - broach.pilotLength
  const tool = (foot: number): readonly Corner[] => {
    const head = foot + broach.overall
    const first = foot + broach.pilotLength
    const last = first + broach.toothedLength
    const root = broach.rootHeight ?? 0.9 * broach.firstTooth
    const teeth: Point[] = []
    const pitch = broach.toothedLength / (broach.teeth - 1)
    const rising = broach.teeth - (broach.finishingTeeth ?? 1)
    for (let tooth = 0; tooth < broach.teeth; tooth++) {
      const y = first + tooth * pitch
      const height =
        broach.firstTooth + ((broach.lastTooth - broach.firstTooth) * Math.min(tooth, rising)) / Math.max(1, rising)
      teeth.push([floor + height, y], [floor + Math.min(root, height), y + 0.45 * pitch])
    }
    const shank = floor + (broach.shoulder ?? broach.pilot)
    return chain(
      [floor, foot],
      [floor + broach.pilot, foot],
      [floor + broach.pilot, first - 0.4 * pitch],
      ...teeth,
      [floor + Math.min(root, broach.lastTooth), last + 0.45 * pitch],
      [shank, Math.min(head, last + pitch)],
      [shank, head],
      [floor, head],
    )
  }
  const before = place.path(tool(start))
  on.area('broach', [before], 'broach.overall')
  on.line('edge', before, 'broach.overall', true)
  const after = -drop
  on.line(
    'ghost',
    place.path(chain([floor, 0], [floor, after], [floor + broach.pilot, after], [floor + broach.pilot, 0])),
  )
  // The ram stands on the broach's end.
  const ram = place.path(
    chain(
      ...tornLine(
        [floor - 1.6 * letter, rise + 2.2 * letter],
        [floor + broach.pilot + 1.6 * letter, rise + 2.2 * letter],
        0.15 * letter,
      ),
      [floor + broach.pilot + 1.6 * letter, rise],
      [floor - 1.6 * letter, rise],
    ),
  )
  on.area('no-room', [ram])
  on.line('edge', ram, undefined, true)
  const x = (side: -1 | 1, row: number): number => width / 2 + side * (reach * scale + (0.9 + 1.5 * row) * em)
  const upright = (
    of: string,
    name: string,
    from: number,
    to: number,
    side: -1 | 1,
    row: number,
    runs: readonly Run[],
    at = (from + to) / 2,
  ): void => {
    const px = x(side, row)
    const [a, b]: [Point, Point] = [
      [px, place.at([0, from])[1]],
      [px, place.at([0, to])[1]],
    ]
    const inner = width / 2 + side * (hubHalf * scale + 0.3 * em)
    for (const end of [a, b]) on.line('leader', chain([inner, end[1]], [px + side * 0.3 * em, end[1]]), of)
    on.span(a, b, of)
    on.say({ of, name, said: whole(design, Math.abs(to - from)), mm: Math.abs(to - from), span: [a, b] })
    const anchor = side < 0 ? 'end' : 'start'
    const bx = px + side * 0.6 * em
    const room = side < 0 ? bx : width - bx
    const y = place.at([0, at])[1]
    if (lengthOfRuns(runs, em) <= room) on.words([bx, y + 0.33 * em], runs, { anchor, of })
    else {
      const [number, word] = runs
      if (number) on.words([bx, y - 0.15 * em], [number], { anchor, of })
      if (word)
        on.words([bx, y + 1 * em], [{ role: 'note', text: word.text.trim() }], {
          anchor,
          size: Math.min(
            0.92 * em,
            (0.92 * em * room) / lengthOfRuns([{ role: 'note', text: word.text.trim() }], 0.92 * em),
          ),
          of,
        })
    }
  }
  upright(
    'bushing.tableToRam',
    'daylight, table to ram',
    base,
    rise,
    -1,
    0,
    figured(bare(design, bushing.tableToRam), 'daylight'),
    rise / 2,
  )
  // Beside the line of the daylight, which goes down to the table.
  upright(
    'bushing.below',
    'clear under the hub',
    0,
    -drop,
    -1,
    base < 0 ? 1 : 0,
    figured(bare(design, drop), 'clear under'),
  )
  // Its words in two lines keep clear of the hub's.
  if (base < 0)
    upright(
      'bushing.raised',
      'spacer',
      0,
      base,
      1,
      1,
      figured(bare(design, bushing.raised), 'spacer'),
      Math.min(base / 2, hub / 2 - 2.8 * letter),
    )
  // The hub's stands outside, or the line of the stroke would run through its words.
  upright('spec.bore.length', 'hub', 0, hub, 1, 1, figured(bare(design, hub), 'hub'))
  upright(
    'bushing.stroke',
    'stroke',
    hub + broach.toothedLength,
    0,
    1,
    0,
    figured(bare(design, bushing.stroke), 'stroke'),
    hub + broach.toothedLength * 0.62,
  )
  const centre = place.at([floor + broach.pilot / 2, 0])[0]
  on.words([centre, place.at([0, rise])[1] - 0.75 * em], [{ role: 'note', text: 'ram' }], {
    anchor: 'middle',
    size: 0.92 * em,
  })
  return {
    name: 'press-lengthwise',
    width,
    height: place.at([0, Math.min(after, base - table)])[1] + 1 * em,
    em,
    scale,
    marks: on.marks,
    title: 'The stack in the press, before the stroke and, in broken line, after it',
    says: `${listed(on.sizes.map(({ name, said }) => `${name} ${said}`))}.`.replace(/^./, (c) => c.toUpperCase()),
    sizes: on.sizes,
  }
}
