/** The press job end on: bore, guide bushing against its back, shims on the slot's floor, and the broach's last tooth where a pass ends. */
import type { Design } from '../design.ts'
import { middle } from '../fits/size.ts'
import type { Corner, Point } from '../solid/outline.ts'
import { callOut, type Callout } from './call-out.ts'
import { contourOf } from './contour.ts'
import { type Figure, isNarrow, type Target } from './figure.ts'
import { hubPiece } from './hub-piece.ts'
import { bare, boreNamed, figured, listed, whole } from './saying.ts'
import { chain, placing, sketch } from './sketch.ts'
import { stageOf } from './stage.ts'

const box = (x1: number, y1: number, x2: number, y2: number): readonly Corner[] =>
  chain([x1, y1], [x2, y1], [x2, y2], [x1, y2])

/** At the end of a pass, counted from 0; left out: the last. Undefined for a job without a bushing. */
export const pressSection = (design: Design, target: Target, pass?: number): Figure | undefined => {
  const { bushing, broach, section } = design
  if (!bushing || !broach) return undefined
  const { em } = target
  const stage = stageOf({ ...design, section: { ...section, at: [0] } }, target)
  const on = sketch(target)
  const place = placing(stage.scale, stage.origin)
  const { passes, shims } = bushing
  const which = passes[Math.min(pass ?? passes.length - 1, passes.length - 1)]
  if (!which) return undefined
  const r = section.boreRadius
  const x = which.over - r
  const half = section.width / 2
  const contour = contourOf({ ...section, at: [0] }, [
    x > 0 ? [{ x, low: -broach.toothWidth / 2, high: broach.toothWidth / 2, corner: 0 }] : [],
  ])
  const piece = hubPiece(design, stage, em)
  on.area('hub', [place.path(piece.outline)])
  if (x < section.floor - 0.005) on.area('still-to-cut', [place.path(contourOf({ ...section, at: [0] }))], 'cut.left')
  for (const { kind, path } of piece.lines) on.line(kind, place.path(path))
  on.area('void', [place.path(contour)])
  if (x < section.floor - 0.005) on.line('still', place.path(contourOf({ ...section, at: [0] })), 'cut.left', true)
  // The thrust holds the bushing against the far wall; its slot runs out at the front.
  const outside = middle(bushing.outside) / 2
  const axis = outside - r
  const slot = bushing.slotWidth.nominal / 2
  const floor = bushing.floorFromBore
  const mouth = axis + Math.sqrt(Math.max(0, outside ** 2 - slot ** 2))
  const turn = Math.asin(Math.min(1, slot / outside))
  const sweep = 2 * Math.PI - 2 * turn
  const body: readonly Corner[] = [
    { at: [mouth, slot], bulge: Math.tan(sweep / 8) },
    { at: [axis - outside, 0], bulge: Math.tan(sweep / 8) },
    { at: [mouth, -slot] },
    { at: [floor, -slot] },
    { at: [floor, slot] },
  ]
  on.area('bushing', [place.path(body)], 'bushing.outside')
  on.line('edge', place.path(body), 'bushing.outside', true)
  let at = floor
  for (const shim of shims.slice(0, which.shims)) {
    const leaf = place.path(box(at, -bushing.shim.width / 2, at + shim, bushing.shim.width / 2))
    on.area('plug', [leaf], 'bushing.shims')
    on.line('edge', leaf, 'bushing.shims', true)
    at += shim
  }
  const [wide, narrow] = [broach.toothWidth / 2, broach.bodyWidth / 2]
  const root = Math.min(x, at + (broach.rootHeight ?? broach.firstTooth))
  const tooth = chain(
    [at, -narrow],
    [root, -narrow],
    [root, -wide],
    [x, -wide],
    [x, wide],
    [root, wide],
    [root, narrow],
    [at, narrow],
  )
  on.area('broach', [place.path(tooth)], 'broach.lastTooth')
  on.line('edge', place.path(tooth), 'broach.lastTooth', true)
  on.line('slot', place.path(contour), undefined, true)
  const { origin, height, width } = stage
  on.line(
    'centre',
    chain(
      [origin[0] - r * stage.scale - 0.9 * em, origin[1]],
      [origin[0] + section.floor * stage.scale + 0.9 * em, origin[1]],
    ),
  )
  on.line(
    'centre',
    chain([origin[0], origin[1] - r * stage.scale - 0.9 * em], [origin[0], origin[1] + r * stage.scale + 0.9 * em]),
  )
  on.avoid(place.path(contour), true)
  const [rear, front] = [place.at([at, wide]), place.at([x, -wide])]
  on.claim({ left: rear[0], top: rear[1], right: front[0], bottom: front[1] })
  const onBore = (degrees: number, by: number, from = 0): Point =>
    place.at([from + by * Math.cos((degrees * Math.PI) / 180), by * Math.sin((degrees * Math.PI) / 180)])
  const left = (y: number): Callout['spots'][number] => ({ at: [0.2 * em, y], anchor: 'start' })
  const right = (y: number): Callout['spots'][number] => ({ at: [width - 0.2 * em, y], anchor: 'end' })
  const callouts: Callout[] = [
    {
      of: 'section.bore',
      name: 'bore',
      mm: 2 * r,
      runs: figured(boreNamed(design), 'bore'),
      tip: onBore(132, r),
      dot: true,
      spots: [left(1.1 * em), left(2.4 * em)],
    },
    {
      of: 'bushing.outside',
      name: 'bushing',
      mm: 2 * outside,
      runs: figured(`Ø${bare(design, 2 * outside, true)}`, 'bushing'),
      tip: onBore(236, outside * 0.86, axis),
      dot: true,
      spots: [left(height - 0.4 * em), left(height - 1.8 * em), right(height - 0.4 * em)],
    },
    {
      of: 'bushing.backWall',
      name: 'wall behind the slot',
      mm: floor + r,
      runs: figured(bare(design, floor + r), 'wall behind the slot'),
      span: [place.at([-r, 0]), place.at([floor, 0])],
      tip: place.at([(floor - r) / 2, 0]),
      spots: [
        left(height * 0.5 + 2 * em),
        left(height * 0.5 + 5 * em),
        left(height - 3.4 * em),
        left(height - 1.8 * em),
      ],
      ...((floor + r) * stage.scale > 6 * em && !isNarrow(target) && { stacked: true }),
    },
    ...(which.shims > 0
      ? [
          {
            of: 'bushing.shims',
            name: which.shims > 1 ? `${which.shims} shims, together` : 'shim',
            mm: at - floor,
            runs: figured(shimsSaid(design, shims.slice(0, which.shims)), which.shims > 1 ? 'shims' : 'shim'),
            tip: place.at([(floor + at) / 2, bushing.shim.width / 2]),
            spots: [right(1.1 * em), right(2.4 * em), right(3.7 * em)],
          } satisfies Callout,
        ]
      : []),
    {
      of: 'bushing.over',
      name: 'over bushing, shims and tooth',
      mm: which.over,
      runs: figured(bare(design, which.over, design.spec.units === 'in'), 'over'),
      tip: place.at([x, -wide * 0.7]),
      spots: [right(height - 0.4 * em), right(height - 1.8 * em)],
    },
    {
      of: 'broach.toothWidth',
      name: 'broach wide',
      mm: broach.toothWidth,
      runs: figured(bare(design, broach.toothWidth), 'wide'),
      span: [place.at([section.floor + em / stage.scale, -wide]), place.at([section.floor + em / stage.scale, wide])],
      from: [place.at([x, -wide]), place.at([x, wide])],
      tip: place.at([section.floor + em / stage.scale, 0]),
      spots: [
        { at: [place.at([section.floor, 0])[0] + 1.5 * em, origin[1] - 0.45 * em], anchor: 'start' },
        right(origin[1] - half * stage.scale - 2 * em),
      ],
    },
  ]
  const foot = callOut(on, callouts, { design, width, height, narrow: isNarrow(target) })
  return {
    name: 'press-section',
    width,
    height: foot,
    em,
    scale: stage.scale,
    marks: on.marks,
    title: 'Bore, guide bushing and broach at the end of a pass',
    says: `${which.shims === 0 ? 'Without shims' : `With ${which.shims === 1 ? 'one shim' : `${which.shims} shims`}`}: ${listed(on.sizes.map(({ name, said }) => `${name} ${said}`))}. The over is the across: ${whole(design, which.over, design.spec.units === 'in')} from the far wall to the slot’s floor.`,
    sizes: on.sizes,
  }
}

const shimsSaid = (design: Design, shims: readonly number[]): string => {
  const [first] = shims
  if (first === undefined) return ''
  const alike = shims.every((shim) => Math.abs(shim - first) < 0.002)
  const one = bare(design, first, true)
  if (shims.length === 1) return one
  return alike
    ? `${shims.length} × ${one}`
    : bare(
        design,
        shims.reduce((sum, shim) => sum + shim, 0),
        true,
      )
}
