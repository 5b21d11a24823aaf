import { mouthX } from '../dimensions/bore.ts'
import { sectionOf } from '../dimensions/section.ts'
import { middle, type Size } from '../fits/size.ts'
import { fraction, rounded } from '../spec/figures.ts'
import { inch } from '../standards/inch.ts'
import type { Spec, Units } from '../spec/spec.ts'
import type { Paint } from './desk.ts'
import { table, wrap } from './lines.ts'
import { sayingIn } from './sizes.ts'

/** The key for a shaft and both its grooves, mm. `borewright key --json` prints this. */
export interface KeyFor {
  readonly format: 'borewright-key/1'
  readonly shaft: number
  readonly standard: string
  readonly source: string
  readonly designation: string
  readonly key: { readonly width?: Size; readonly height?: Size; readonly chamfer?: Size }
  /** In the hub, for a bore of the shaft's nominal size, H7. Depths by their three names. */
  readonly hub: Groove & { readonly bore: Size; readonly infeed: number; readonly corner?: Size }
  /** In the shaft, taken as exactly its nominal size. */
  readonly seat?: Groove
  /** What the gap over the key can be, across the shaft's axis. */
  readonly topClearance?: Size
}

interface Groove {
  readonly width: Size
  /** Floor to the opposite side. */
  readonly across: Size
  /** From the crown of bore or shaft, which the groove has cut away. */
  readonly crownDepth: Size
  /** Along the side wall. */
  readonly sideDepth: Size
}

/** The sizes for a spec that names a standard. */
export const keyFor = (spec: Spec): KeyFor => {
  const { sizes: section } = sectionOf(spec)
  const { key } = section
  const { feature } = spec
  if (!key || feature.kind !== 'keyway') throw new Error('a key is asked for')
  const diameter = spec.bore.diameter.nominal
  return {
    format: 'borewright-key/1',
    shaft: diameter,
    standard: feature.standard ?? 'by hand',
    source: key.source,
    designation: key.designation,
    key: {
      ...(key.width && { width: key.width }),
      ...(key.height && { height: key.height }),
      ...(key.chamfer && { chamfer: key.chamfer }),
    },
    hub: {
      bore: section.bore,
      width: section.widthLimits,
      across: section.acrossLimits,
      crownDepth: section.crownDepthLimits,
      sideDepth: section.sideDepthLimits,
      infeed: section.sideDepth,
      ...(section.cornerLimits && { corner: section.cornerLimits }),
    },
    ...(key.shaft && { seat: seatOf(diameter, key.shaft.width, key.shaft.across) }),
    ...(key.topClearance && { topClearance: key.topClearance }),
  }
}

/** Depths of a keyseat from its across; the side wall starts at the mouth of the seat. */
const seatOf = (diameter: number, width: Size, across: Size): Groove => {
  const side = (width: number, across: number): number => mouthX(diameter / 2, width / 2) - (across - diameter / 2)
  return {
    width,
    across,
    crownDepth: {
      nominal: diameter - across.nominal,
      lower: diameter - across.upper,
      upper: diameter - across.lower,
    },
    sideDepth: {
      nominal: side(middle(width), across.nominal),
      lower: side(width.upper, across.upper),
      upper: side(width.lower, across.lower),
    },
  }
}

/** The same for reading, in `units`. `note` is said beside the heading. */
export const keyTelling = (
  sizes: KeyFor,
  units: Units,
  note: string | undefined,
  width: number,
  paint: Paint,
): string => {
  const says = sayingIn(units)
  const { key, hub, seat } = sizes
  const least = (size: Size, less = 0): string =>
    says.size('', { ...size, lower: size.lower + less }).limits?.[0] ?? says.number(size.lower + less)
  const most = (size: Size, less = 0): string =>
    says.size('', { ...size, upper: size.upper + less }).limits?.[1] ?? says.number(size.upper + less)
  const block = key.height?.nominal ?? 0
  const moved = (size: Size, by: number): Size => ({
    nominal: size.nominal + by,
    lower: size.lower + by,
    upper: size.upper + by,
  })
  const groove = ({ width, across, crownDepth, sideDepth }: Groove, what: 'bore' | 'shaft') => [
    says.size('width', width),
    says.size(
      'across',
      across,
      what === 'bore' ? 'floor to the opposite wall of the bore' : 'floor to the opposite side of the shaft',
    ),
    says.size(
      'depth at the crown',
      crownDepth,
      `${what === 'bore' ? 'across less bore' : 'shaft less across'}: the crown is cut away`,
    ),
    says.size('depth at the side', sideDepth, 'along the side wall'),
  ]
  const range = (size: Size): string => `${least(size)} to ${most(size)} ${units}`
  return [
    paint.strong(
      `key ${sizes.designation} for a shaft of ${(units === 'in' ? fraction(sizes.shaft) : undefined) ?? says.number(sizes.shaft)} ${units}`,
    ),
    wrap(`${sizes.source}${note === undefined ? '' : ` (${note})`}`, width),
    '',
    paint.strong(`key, ${units}`),
    ...table([
      ...(key.width ? [says.size('width', key.width)] : []),
      ...(key.height ? [says.size('height', key.height)] : []),
      ...(key.chamfer ? [says.size('chamfer', key.chamfer)] : []),
    ]),
    '',
    paint.strong(`keyway in the hub, ${units}`),
    ...table([
      says.size('bore', hub.bore, 'H7'),
      ...groove(hub, 'bore'),
      ...(hub.corner ? [says.size('corner radius', hub.corner)] : []),
    ]),
    ...(seat ? ['', paint.strong(`keyseat in the shaft, ${units}`), ...table(groove(seat, 'shaft'))] : []),
    ...(sizes.topClearance ? ['', ...table([says.size('gap over the key', sizes.topClearance)])] : []),
    '',
    paint.strong('how to measure'),
    wrap(
      `Hub: lay the key or a block of ${exactly(block, units)} on the floor and measure inside from it to the opposite wall: ${range(moved(hub.across, -block))}. With another block take its own height off.`,
      width,
      '  ',
    ),
    ...(seat
      ? [
          wrap(
            `Shaft: put the same block in the seat and mike over block and shaft: ${range(moved(seat.across, block))}.`,
            width,
            '  ',
          ),
        ]
      : []),
    wrap(
      `The crown depth cannot be measured on the work, since the crown is gone; a depth gauge bridged on the bore reads neither depth. The dial goes by the side depth (about ${says.number(hub.infeed)} with a sharp, full-width nose), never by the crown depth.`,
      width,
      '  ',
    ),
  ].join('\n')
}

/** A size to be made or looked out, with every decimal that the sums beside it were done with: `7`, `3/32 (.09375)`. */
const exactly = (mm: number, units: Units): string => {
  const trimmed = (value: number, decimals: number): string =>
    rounded(value, decimals)
      .replace(/\.?0+$/, '')
      .replace(/^0(?=\.)/, units === 'in' ? '' : '0')
  if (units === 'mm') return trimmed(mm, 4)
  const parts = fraction(mm)
  // A 64th has six decimals.
  if (parts !== undefined) return parts.includes('/') ? `${parts} (${trimmed(mm / inch, 6)})` : parts
  return `${rounded(mm / inch, 4).replace(/^0/, '')} (${trimmed(mm, 4)} mm)`
}
