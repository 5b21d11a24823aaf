/** How to tell that the feature is right: across by pin and plug or block, width, sides, both ends. All mm. */
import type { Reasoned } from '../dimensions/basis.ts'
import { either, roundDown, roundUp } from '../dimensions/makeable.ts'
import type { Section } from '../dimensions/types.ts'
import { band, type Size } from '../fits/size.ts'
import { playOf } from '../mechanics/key-play.ts'
import { asmeLeadLimit } from '../standards/asme-b17-1.ts'
import type { Spec, Units } from '../spec/spec.ts'
import { offsetAllowed, offsetBudget } from './centring.ts'
import type { AcrossBy, GoNoGo, Measuring, Plan } from './types.ts'

/** A quarter of what across may vary by; no finer than anybody measures it: 0.01 mm, .0005 in. */
export const quarterOfLimits = (section: Section, units: Units): number =>
  Math.max(band(section.acrossLimits) / 4, either(units, 0.01, 0.0005))

const limits = ({ lower, upper }: Size): GoNoGo => ({ go: lower, noGo: upper })

/**
 * How much more than across less pin a plug finds, since a pin narrower than the slot rolls aside until it lies against the wall:
 * R − q/2 + √((f − q/2)² + ((w − q)/2)²) less R + f − q.
 */
export const pinError = (floor: number, width: number, pin: number): number => {
  const arm = floor - pin / 2
  const aside = Math.max(0, (width - pin) / 2)
  return aside ** 2 / (Math.hypot(arm, aside) + arm)
}

/** A pin must show over the crown and lie on the floor between the corners; its error no more than a tenth of the limits, or than 0.002 mm. */
const pinServes = (section: Section, pin: number): boolean =>
  pin > section.crownDepthLimits.upper &&
  pin <= section.widthLimits.lower + 1e-9 &&
  pin >= 2 * section.cornerRadius &&
  pinError(section.floor, section.widthLimits.upper, pin) <= Math.max(band(section.acrossLimits) / 10, 0.002)

/** Two plugs on hand that lie within the limits, as far apart as there are; they must keep half of the limits. */
const plugsFrom = (plugs: readonly number[], wanted: GoNoGo): GoNoGo | undefined => {
  const within = plugs.filter((plug) => plug >= wanted.go - 5e-4 && plug <= wanted.noGo + 5e-4)
  const [go, noGo] = [within[0], within.at(-1)]
  if (go === undefined || noGo === undefined || noGo - go < (wanted.noGo - wanted.go) / 2 || noGo <= go)
    return undefined
  return { go, noGo }
}

const pinAndPlug = (spec: Spec, section: Section): AcrossBy | undefined => {
  const { lower, upper } = section.acrossLimits
  // A pin goes in with a little play.
  const turned = roundDown(section.widthLimits.lower - either(spec.units, 0.02, 0.001), either(spec.units, 0.1, 0.002))
  const onHand = (spec.shop.pins ?? []).filter((pin) => pinServes(section, pin)).toReversed()
  const wanted = (pin: number): GoNoGo => ({ go: lower - pin, noGo: upper - pin })
  const plugsOf = (pin: number) => plugsFrom(spec.shop.plugs ?? [], wanted(pin))
  const paired = onHand.find((pin) => plugsOf(pin) !== undefined)
  const pin = paired ?? onHand[0] ?? (pinServes(section, turned) ? turned : undefined)
  if (pin === undefined) return undefined
  const plugs = plugsOf(pin)
  return {
    by: 'pin and plug',
    pin,
    plug: plugs ?? wanted(pin),
    error: pinError(section.floor, section.widthLimits.upper, pin),
    pinOnHand: onHand.includes(pin),
    plugsOnHand: plugs !== undefined,
  }
}

/** A block that stands out of the mouth, so that an inside micrometer finds its top. */
const blockAndInside = (spec: Spec, section: Section): AcrossBy | undefined => {
  const block = roundUp(section.sideDepthLimits.upper + 0.2, either(spec.units, 1, 1 / 16))
  const { lower, upper } = section.acrossLimits
  // Smaller than this no inside micrometer goes: from memory.
  return lower - block < 5
    ? undefined
    : { by: 'block and inside reading', block, inside: { go: lower - block, noGo: upper - block } }
}

const plugAndBlocks = (section: Section): AcrossBy => ({
  by: 'plug and blocks',
  plug: section.bore.lower,
  blocks: limits(section.crownDepthLimits),
})

/** Slots that stand right opposite each other, counted from 1 in the order of their angles. */
const opposed = (section: Section): readonly (readonly [number, number])[] => {
  const all = section.measurable ?? []
  const first = section.at[0] ?? 0
  const order = all.toSorted((a, b) => ((a.at - first + 720) % 360) - ((b.at - first + 720) % 360))
  return order.flatMap((one, i) =>
    order.flatMap((other, k): readonly (readonly [number, number])[] => {
      if (k <= i || one.to !== 'floor' || other.to !== 'floor') return []
      const off = Math.abs(((((other.at - one.at) % 360) + 360) % 360) - 180)
      return off < 0.5 ? [[i + 1, k + 1]] : []
    }),
  )
}

const floorToFloor = (section: Section): Measuring['floorToFloor'] => {
  const pairs = opposed(section)
  if (pairs.length === 0) return undefined
  const by = section.spline?.floorToFloor
  const twice = (across: number) => 2 * (across - section.boreRadius)
  return {
    pairs,
    least: by?.lower ?? twice(section.acrossLimits.lower),
    middle: 2 * section.floor,
    most: by?.upper ?? twice(section.acrossLimits.upper),
  }
}

/** How the floor is got at, on the way and in the end. */
export const gateByOf = (section: Section): Plan['gateBy'] => {
  const to = section.measurable?.map((each) => each.to) ?? []
  if (section.kind === 'slit' || section.kind === 'socket') return 'nothing'
  if (to.includes('nothing')) return 'plug and blocks'
  return to.includes('floor') ? 'floor to floor' : 'across'
}

const insteadOf = (section: Section): string | undefined => {
  const by = gateByOf(section)
  if (section.kind === 'slit') return 'A slit has no floor. Look through it from end to end: no web may be left.'
  if (section.kind === 'socket')
    return 'Measure across flats, at every pair of flats and at both ends; try the square or hexagon in it.'
  if (section.kind === 'groove')
    return `Measure with ball ends: deepest point to ${by === 'floor to floor' ? 'that of the groove opposite' : 'the wall opposite'}.`
  if (by === 'floor to floor') return 'A slot stands right opposite: measure floor to floor.'
  if (by === 'plug and blocks')
    return 'A slot takes away part of the wall opposite: fill the bore with a plug, and measure from it to the floor with blocks.'
  return undefined
}

/** What to measure, with what, and between which limits; for every feature, however it is cut. */
export const measuringOf = (spec: Spec, section: Section): Reasoned<Measuring> => {
  const { lower, upper } = section.acrossLimits
  const flat = section.kind === 'keyway' || section.kind === 'spline'
  const by = gateByOf(section)
  const toBore = flat && by === 'across'
  const instead = insteadOf(section)
  const pairs = floorToFloor(section)
  const ways: readonly (AcrossBy | undefined)[] = toBore
    ? [pinAndPlug(spec, section), blockAndInside(spec, section)]
    : flat
      ? [plugAndBlocks(section)]
      : []
  // Half of the key's play for the place of the slot, half for its lead: together they leave the key its way in.
  const sideToSide =
    section.spline?.symmetryTolerance ?? Math.min(offsetAllowed, (offsetBudget(section) ?? 2 * offsetAllowed) / 2)
  const play = section.key?.width ? playOf(section.widthLimits, section.key.width) : 0
  const lead = Math.min(asmeLeadLimit(spec.bore.length), play > 0 ? play / 2 : Infinity)
  return {
    sizes: {
      across: { least: lower, middle: section.across, most: upper },
      toBore: toBore || (section.kind === 'groove' && by === 'across'),
      ways: ways.filter((way) => way !== undefined),
      ...(instead !== undefined && { instead }),
      ...((flat || section.kind === 'groove') && pairs && { floorToFloor: pairs }),
      width: section.socket ? limits(section.socket.acrossFlats) : limits(section.widthLimits),
      ...(flat && { sideToSide }),
      ...(section.kind === 'keyway' && { lead }),
      endToEnd: quarterOfLimits(section, spec.units),
      key: section.key !== undefined,
    },
    basis: {
      across: 'see section.across',
      toBore: 'the wall opposite must be whole where the gauge rests',
      ways: 'a pin on the floor and a plug: across less pin; narrower pins roll aside, by no more than a tenth of the limits. A block and an inside reading: across less block',
      instead: 'where across cannot be measured to the bore',
      floorToFloor: 'twice the floor, for slots that stand right opposite',
      width: section.socket ? 'see section.socket' : 'see section.widthLimits',
      sideToSide: section.spline?.symmetryTolerance
        ? section.spline.source
        : 'what half of the key’s play allows, no more than .010 in (ASME B17.1)',
      lead: 'half of the key’s play, no more than .002 in up to 4 in, .0005 an inch to 10 in (ASME B17.1)',
      endToEnd: 'a quarter of the limits of across, no less than 0.01 mm (.0005 in)',
      key: 'a key in the hand tells what no gauge does',
    },
  }
}
