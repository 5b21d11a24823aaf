import type { Size } from '../fits/size.ts'
import type { BarSpec, Spec } from '../spec/spec.ts'
import { workMaterial } from '../standards/materials.ts'
import type { Basis, Reasoned } from './basis.ts'
import { either, roundDown, roundUp, stepsOf } from './makeable.ts'
import { noseForm } from './engaged.ts'
import type { CutterBar, Section, ToolBit } from './types.ts'
import { heightOfV } from './v-nose.ts'

const tan = (degrees: number): number => Math.tan((degrees * Math.PI) / 180)
const cos = (degrees: number): number => Math.cos((degrees * Math.PI) / 180)
const atan = (slope: number): number => (Math.atan(slope) * 180) / Math.PI

/**
 * Taper of the sides along the raked face: grinding the rake after the sides narrows the nose toward the bar.
 * tan β_eff = tan β + tan α · tan γ. Degrees.
 */
export const effectiveTaper = (backTaper: number, rake: number, sideRelief: number): number =>
  atan(tan(backTaper) + tan(rake) * tan(sideRelief))

/** Width of the nose `back` behind the edge on the face, and `down` under it at the edge. */
export const noseWidthAt = (
  width: number,
  angles: { readonly backTaper: number; readonly rake: number; readonly sideRelief: number },
  back: number,
  down: number,
): number =>
  width -
  2 * back * tan(effectiveTaper(angles.backTaper, angles.rake, angles.sideRelief)) -
  2 * down * tan(angles.sideRelief)

/**
 * Height of the cutting edge over the blank's bottom. A square blank is cut at its top, or just so far under it that the nose is clear of the
 * broken corners. On a round one the face is ground down until the nose's width fits well inside the round there, and no higher than the
 * flat that the screw seats on.
 */
export const edgeHeightOf = (
  blank: {
    readonly shape: 'square' | 'round'
    readonly size: number
    readonly cornerBreak: number
    readonly flat: number
  },
  noseWidth: number,
): number => {
  const { shape, size, cornerBreak, flat } = blank
  if (shape === 'square') return size - Math.max(0, noseWidth / 2 - (size / 2 - cornerBreak))
  const within = Math.sqrt(Math.max(size ** 2 - noseWidth ** 2, 0)) / 2
  return Math.min(size - flat, size / 2 + 0.95 * within)
}

/**
 * What each flank of a V makes with the middle line, level on the blank: the raked face lengthens the V as it is seen along the stroke.
 * With half the included angle φ as it cuts, rake α and relief ε as ground, and the rake as it cuts α′ (that of the face to the stroke, where the bit leans):
 * tan = tan φ · cos ε · cos α′ / cos(α + ε). Degrees.
 */
export const flankSwing = (included: number, rake: number, endRelief: number, asItCuts = rake): number =>
  atan((tan(included / 2) * cos(endRelief) * cos(asItCuts)) / cos(rake + endRelief))

/** Angle of a V as its raked face shows it, in degrees: tan of its half is tan φ · cos α′, with φ and α′ as above. */
export const faceAngle = (included: number, asItCuts: number): number => 2 * atan(tan(included / 2) * cos(asItCuts))

/** Table tilt for a flank that makes `swing` with the middle line, so that the V's tip has the end's relief: tan τ = tan ε · sin swing. Degrees. */
export const flankTilt = (swing: number, endRelief: number): number =>
  atan(tan(endRelief) * Math.sin((swing * Math.PI) / 180))

/** How far a face that climbs from the edge to the shoulder (a rake under 0°) leaves the edge under the blank's top. */
export const underTop = (rake: number, noseLength: number): number => Math.max(0, -noseLength * tan(rake))

/** Table tilt at the grinder for a side relief `sideRelief` with the blank swung by `backTaper`: tan τ = tan γ · cos β. Degrees. */
export const tableTilt = (sideRelief: number, backTaper: number): number =>
  atan(tan(sideRelief) * Math.cos((backTaper * Math.PI) / 180))

/** What the wheel's rim hollows out: relief at the edge is larger by asin(b / 2R). Degrees. */
export const wheelHollow = (height: number, wheelRadius: number): number =>
  (Math.asin(height / (2 * wheelRadius)) * 180) / Math.PI

/** What two regrinds take off the end. */
const regrindStepOf = ({ units }: Spec): number => either(units, 0.25, 0.01)

interface Nose {
  readonly width: number
  readonly cornerRadius: number
}

/** What a nose must keep of its length, however often it is reground: what its shoulder needs, or the whole of its V or its round. */
const neededLength = (section: Section, nose: Nose, least: number): number => {
  const flanks = section.socket && heightOfV(section.socket.sides, nose.width, nose.cornerRadius)
  const shortest = flanks ?? (noseForm(section) === 'round' ? nose.cornerRadius : 0.5)
  return Number.isFinite(least) ? Math.max(least, shortest) : section.sideDepth
}

/** Length of the nose: what it needs, and two steps of a regrind. */
export const noseLengthOf = (spec: Spec, section: Section, nose: Nose, least: number): number =>
  roundUp(neededLength(section, nose, least) + 2 * regrindStepOf(spec), stepsOf(spec.units).half)

/** What is ground when the edge is dull: both flanks of a V, a round nose's face, a flat one's end, or nothing, where no width is left to lose. */
export const regrindOf = ({
  form,
  lanes,
  regrinds,
}: Pick<ToolBit, 'form' | 'lanes' | 'regrinds'>): 'flanks' | 'face' | 'end' | 'nothing' => {
  if (form === 'vee') return 'flanks'
  if (form === 'round') return 'face'
  return lanes > 1 || regrinds > 0 ? 'end' : 'nothing'
}

/** The nose's width as it is ground, mm: where the slot leaves it no limits, what a careful hand loses. Never wider than the blank. */
const groundWidthOf = (units: Spec['units'], noseWidth: Size, blank: number): Size => {
  const upper = Math.min(noseWidth.upper, Math.max(noseWidth.nominal, blank))
  const lower = upper - noseWidth.lower > 1e-9 ? noseWidth.lower : upper - either(units, 0.02, 0.001)
  return { nominal: noseWidth.nominal, lower, upper }
}

/**
 * Edge over the back of a round blank, mm: up and down as far as the nose at its least width still fits in the round, and no higher than the
 * screw's flat; in round figures, so that whoever says it says the same.
 */
const edgeLimitsOf = (
  units: Spec['units'],
  { size, flat }: { readonly size: number; readonly flat: number },
  edgeHeight: number,
  leastWidth: number,
): Size => {
  const within = Math.sqrt(Math.max(size ** 2 - leastWidth ** 2, 0)) / 2
  const careful = either(units, 0.05, 0.002)
  const step = either(units, 0.01, 0.0005)
  const lower = roundUp(Math.max(edgeHeight - careful, size / 2 - within), step)
  const upper = roundDown(Math.min(edgeHeight + careful, size / 2 + within, size - flat), step)
  return { nominal: edgeHeight, lower: Math.min(edgeHeight, lower), upper: Math.max(edgeHeight, upper) }
}

/** Why a nose is as long as it is, by the regrinds that it has in it. */
const whyNoseLength = (units: Spec['units'], form: string, regrinds: number, lanes: number): string => {
  const least =
    form === 'vee'
      ? 'the whole V, or what keeps the shoulder in the bore'
      : form === 'round'
        ? 'the whole round, or what keeps the shoulder in the bore'
        : 'the least that keeps the shoulder in the bore'
  const spare =
    form !== 'round' && (regrinds > 1 || lanes > 1)
      ? 'two regrinds'
      : form !== 'round' && regrinds === 1
        ? 'a regrind, with as much to spare'
        : `${units === 'mm' ? '0.5 mm' : '.020 in'} to spare`
  return `${least}, and ${spare}`
}

/** The least rake that a slim bar's bit cuts with: what is asked for, or the material's, no more than 10°. */
export const leastRake = (spec: Spec, bar: BarSpec): number =>
  bar.rake ?? Math.min(workMaterial(spec.hub.material)?.rake[2] ?? 8, 10)

const anglesFor = (spec: Spec, bar: BarSpec, cutter: CutterBar) => {
  const material = workMaterial(spec.hub.material)
  const slim = cutter.overhang / cutter.diameter.nominal > 3 || cutter.diameter.nominal < 8
  const usual = material?.rake[2] ?? 8
  const rake = bar.rake ?? (slim ? Math.min(usual, 10) : usual)
  const endRelief = material?.endRelief[2] ?? 5
  return {
    // A bit that leans forward gains rake and loses relief: it is ground with less of the one and more of the other.
    rake: rake - cutter.incline,
    endRelief: endRelief + cutter.incline,
    ...(cutter.incline > 0 && { leaning: { rake, endRelief } }),
    sideRelief: 3,
    backTaper: 1,
    why:
      bar.rake !== undefined
        ? spec.stated.includes('tooling.bar.rake')
          ? 'given in the spec'
          : `less than the usual ${usual}° for ${spec.hub.material}, so that bar and bit bear the cut`
        : slim && usual > 10
          ? `${spec.hub.material} likes ${usual}°, a slim bar bears no more than 10°`
          : `for ${spec.hub.material}`,
  }
}

/** The bit that goes with the bar: sizes at edge, neck and heel, and what the grinder sets. */
export const toolBitOf = (spec: Spec, bar: BarSpec, section: Section, cutter: CutterBar): Reasoned<ToolBit> => {
  const { why, ...angles } = anglesFor(spec, bar, cutter)
  const { size, flat } = cutter.bit
  const single = cutter.lanes.length === 1
  const form = noseForm(section)
  const band = angleBand(angles)
  const width = cutter.noseWidth
  const start = section.widthLimits.lower + 0.75 * (section.widthLimits.upper - section.widthLimits.lower)
  const noseTolerance = either(spec.units, 0.02, 0.001)
  const noseWidth: Size =
    form === 'vee'
      ? {
          nominal: width,
          lower: Math.min(width, section.widthLimits.upper),
          upper: Math.max(width, section.widthLimits.upper),
        }
      : form === 'round'
        ? { nominal: width, lower: width - noseTolerance, upper: width + noseTolerance }
        : single
          ? {
              nominal: width,
              lower: Math.min(section.widthLimits.lower, width),
              upper: Math.max(width, Math.min(start, size - 0.01)),
            }
          : { nominal: width, lower: width - noseTolerance, upper: width + noseTolerance }
  const groundWidth = groundWidthOf(spec.units, noseWidth, size)
  const regrindStep = regrindStepOf(spec)
  const flankLength = section.socket && heightOfV(section.socket.sides, width, cutter.cornerRadius)
  const nose = { width, cornerRadius: cutter.cornerRadius }
  const noseLength = noseLengthOf(spec, section, nose, cutter.noseLengthMin)
  /** Regrinds that the nose's length has room for, two or more. */
  const inLength = Math.floor((noseLength - neededLength(section, nose, cutter.noseLengthMin)) / regrindStep + 1e-9)
  const widthPerRegrind = 2 * regrindStep * tan(effectiveTaper(angles.backTaper, angles.rake, angles.sideRelief))
  const over = (ask: (angles: Angles) => number, nominal: Angles = angles): Size => {
    const all = band.map(ask)
    return { nominal: ask(nominal), lower: Math.min(...all), upper: Math.max(...all) }
  }
  const height = edgeHeightOf({ ...cutter.bit, flat }, width) - underTop(angles.rake, noseLength)
  // A V and a round nose are widest behind their end; the sides run back from there.
  const widest = flankLength ?? (form === 'round' ? cutter.cornerRadius : 0)
  // One that is ground narrower is widest nearer to its end: its sides run back so much longer.
  const widestOf = (made: number): number =>
    section.socket
      ? heightOfV(section.socket.sides, made, cutter.cornerRadius)
      : form === 'round'
        ? cutter.cornerRadius - (width - made) / 2
        : 0
  const under = [groundWidth.lower, groundWidth.upper].map((made) =>
    over((angle) => made - noseWidthAt(made, angle, noseLength - widestOf(made), 0)),
  )
  const neckUnder: Size = {
    nominal: width - noseWidthAt(width, angles, noseLength - widest, 0),
    lower: Math.max(...under.map(({ lower }) => lower)),
    upper: Math.min(...under.map(({ upper }) => upper)),
  }
  const regrinds =
    form === 'vee'
      ? 2
      : form === 'flat' && single
        ? Math.min(inLength, Math.max(0, Math.floor((noseWidth.upper - noseWidth.lower) / widthPerRegrind + 1e-9)))
        : 0
  const swing =
    section.socket && flankSwing(section.socket.includedAngle, angles.rake, angles.endRelief, angles.leaning?.rake)
  const convex = form === 'flat' && single ? section.spline?.noseEndRadius : undefined
  return {
    sizes: {
      shape: cutter.bit.shape,
      size,
      cornerBreak: cutter.bit.cornerBreak,
      ...(form !== 'flat' && { form, tipRadius: cutter.cornerRadius }),
      ...(section.socket && {
        includedAngle: section.socket.includedAngle,
        faceAngle: faceAngle(section.socket.includedAngle, angles.leaning?.rake ?? angles.rake),
      }),
      ...(flankLength !== undefined && { flankLength }),
      ...(swing !== undefined && { flankSwing: swing, flankTilt: flankTilt(swing, angles.endRelief) }),
      ...(convex !== undefined && { noseEndRadius: convex }),
      noseWidth,
      groundWidth,
      noseLength,
      noseLengthMin: cutter.noseLengthMin,
      cornerRadius: cutter.cornerRadius,
      ...angles,
      backTaperEffective: effectiveTaper(angles.backTaper, angles.rake, angles.sideRelief),
      neckRadius: noseLength < 3 ? either(spec.units, 0.2, 0.01) : either(spec.units, 0.5, 0.02),
      widthAtHeel: over((angle) => noseWidthAt(width, angle, 0, height - widest * tan(angle.rake))),
      widthAtNeck: {
        nominal: width - neckUnder.nominal,
        lower: groundWidth.lower - neckUnder.upper,
        upper: groundWidth.upper - neckUnder.lower,
      },
      neckUnder,
      endSetBack: over((angle) => height * tan(angle.endRelief)),
      faceDrop: over((angle) => noseLength * tan(angle.rake)),
      length: cutter.bitLength,
      lengthMin: cutter.bitLengthMin,
      lengthMax: cutter.bitLengthMax,
      angleTolerance,
      regrinds,
      regrindStep,
      widthPerRegrind,
      lanes: cutter.lanes.length,
      edgeHeight: height,
      ...(cutter.bit.shape === 'round' && {
        flat,
        edgeLimits: edgeLimitsOf(spec.units, { size, flat }, height, groundWidth.lower),
      }),
    },
    get basis(): Basis<ToolBit> {
      return {
        shape: 'see bar.bit',
        size: 'see bar.bit',
        cornerBreak: 'a fortieth of the blank, as bought: measure it',
        form: 'a socket is cut with a V, an oil groove with a round nose, all else with a flat one',
        includedAngle: 'the angle between two flats: 180° less 360°/N',
        faceAngle: 'half of it: tan of the included angle’s half, by cos of the rake as it cuts',
        tipRadius: 'see section.cornerRadius',
        flankLength: 'half the nose’s width by tan π/N, less the tip’s set-back',
        flankSwing:
          'half the included angle, and what the raked face takes from it: level on the blank the V is blunter',
        flankTilt: 'the end’s relief, square to a flank',
        noseEndRadius: 'see section.spline: a flat floor bears the tooth in its middle alone',
        noseWidth:
          form === 'vee'
            ? 'no narrower than the V’s mouth, so that both flats are cut to their ends'
            : form === 'round'
              ? 'twice the round'
              : single
                ? 'starts three quarters up the slot’s limits (or what the blank gives) and is done at the least width; a slot comes out a little wider than its nose: cut a test slot'
                : 'measured as ground: the sideways step follows from it',
        groundWidth:
          'the nose’s width, no wider than the blank; 0.02 mm (.001 in) where the slot leaves it no limits: judgement',
        noseLength: whyNoseLength(spec.units, form, regrinds, cutter.lanes.length),
        noseLengthMin: 'see bar.noseLengthMin',
        cornerRadius: 'see section.cornerRadius',
        rake: cutter.incline > 0 ? `${why}; less the ${cutter.incline}° that the bit leans` : why,
        endRelief: `for ${spec.hub.material}${cutter.incline > 0 ? `; and the ${cutter.incline}° that the bit leans` : ''}`,
        leaning: 'as ground, and what the bit leans',
        sideRelief: 'workshop texts, from memory: 1.5 to 3° a side',
        backTaper: 'judgement: 1° of swing',
        backTaperEffective: 'swing, and what the raked face adds',
        neckRadius: 'judgement',
        widthAtHeel: 'nose width less the side relief over the edge’s height; limits by the angle tolerance',
        widthAtNeck:
          'nose width less the effective taper over the nose; limits by those of the nose’s width and the angle tolerance',
        neckUnder:
          'twice the nose behind its widest place by the effective taper, as it is measured on one nose; limits by the angle tolerance, whatever the width within its own',
        endSetBack: 'end relief over the edge’s height; limits by the angle tolerance',
        faceDrop: 'rake over the nose length; limits by the angle tolerance',
        length: 'see bar.bitLength',
        lengthMin: 'see bar.bitLengthMin',
        lengthMax: 'see bar.bitLengthMax',
        angleTolerance: 'what a careful hand holds: judgement',
        regrinds:
          form === 'vee'
            ? 'both flanks alike: the nose’s length has room for two'
            : form === 'round'
              ? 'a round nose is stoned on its face'
              : 'width to lose over what one end regrind takes, no more than the nose’s length has room for',
        regrindStep: 'judgement',
        widthPerRegrind: 'twice the step by the effective taper',
        lanes: 'see bar.lanes',
        edgeHeight:
          'the blank’s top, or as far under it as clears its broken corners and a face that climbs; a round one as high as the nose’s width fits',
        flat: 'a tenth of the round: what the screw seats on',
        edgeLimits:
          'what a careful hand holds (judgement), as far as the least width still fits in the round, and under the screw’s flat',
      }
    },
  }
}

const angleTolerance = 0.5

type Angles = Readonly<Record<'rake' | 'endRelief' | 'sideRelief' | 'backTaper', number>>

/** All corners of the angle limits. */
const angleBand = (angles: Angles): readonly Angles[] =>
  Array.from({ length: 16 }, (_, corner) => ({
    rake: angles.rake + (corner & 1 ? angleTolerance : -angleTolerance),
    endRelief: angles.endRelief + (corner & 2 ? angleTolerance : -angleTolerance),
    sideRelief: angles.sideRelief + (corner & 4 ? angleTolerance : -angleTolerance),
    backTaper: angles.backTaper + (corner & 8 ? angleTolerance : -angleTolerance),
  }))
