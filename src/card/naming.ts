/** What the job is, in one sentence and in a few signs. */
import type { Design } from '../design.ts'
import type { Words } from './document.ts'
import { bold, capital, counted, degrees, say, type Saying } from './saying.ts'

/** `a`, or `an` before 8, 11, 18 and 80. */
const article = (what: string): string => (/^(8|11\b|18\b|[aeiou])/.test(what) ? 'an' : 'a')

/** `24 H7`, `0.875 +0.0005/0`; as measured where it was. */
export const boreSaid = ({ spec }: Design, says: Saying): string => {
  const { bore } = spec
  if (bore.measured !== undefined) return says.fine(bore.measured)
  const { tolerance } = bore
  return `${says.size(bore.diameter.nominal)}${/^[A-Z]{1,2}\d/.test(tolerance) ? ` ${tolerance}` : ''}`
}

const standards = {
  'iso-773': 'ISO 773',
  'asme-b17.1': 'ASME B17.1',
  'iso-14': 'ISO 14',
  'sae-j499': 'SAE J499',
} as const

/** `at 0° and 90°` */
const angles = (at: readonly number[]): string =>
  `at ${at
    .slice(0, -1)
    .map((angle) => degrees(angle, 2))
    .join(', ')} and ${degrees(at.at(-1) ?? 0, 2)}`

/** Evenly round the bore, or where they stand. */
const placed = (at: readonly number[]): string => {
  const even = at.every((angle, n) => Math.abs(angle - (at[0] ?? 0) - (360 * n) / at.length) < 1e-6)
  return even ? 'evenly spaced' : angles(at)
}

const socketName = (sides: number): string =>
  ({ 3: 'three-cornered', 4: 'square', 6: 'hexagon', 8: 'octagon' })[sides] ?? `${sides}-sided`

/** `8 × 7`, `6x23x26`, `16.05 square`: what is cut, short. */
const featureSaid = ({ spec, section }: Design, says: Saying): string => {
  const { feature } = spec
  switch (feature.kind) {
    case 'keyway':
      return feature.standard === undefined || !section.key
        ? `keyway ${says.size(section.width)} wide`
        : section.key.designation
    case 'spline':
      return section.spline?.designation ?? `${feature.count} splines`
    case 'socket':
      return `${socketName(feature.sides)} ${says.size(section.socket?.acrossFlats.nominal ?? section.width)}`
    case 'slit':
      return `${feature.at.length > 1 ? `${feature.at.length} slits` : 'slit'} ${says.size(section.width)}`
    case 'groove':
      return `${feature.at.length > 1 ? `${feature.at.length} oil grooves` : 'oil groove'} ${says.size(section.width)}`
  }
}

/** `8 × 7 in 24 H7 × 38` */
export const aboutOf = (design: Design, says: Saying): string =>
  `${featureSaid(design, says)} in ${boreSaid(design, says)} × ${says.size(design.spec.bore.length)}`

const cutSaid = (design: Design, says: Saying): Words => {
  const { spec, section } = design
  const { feature } = spec
  const many = feature.at.length
  const several = many > 1 ? `${capital(counted(many))} ` : ''
  switch (feature.kind) {
    case 'keyway': {
      const { key } = section
      const what = many > 1 ? `${several}keyways` : 'Keyway'
      const where = many > 1 ? `, ${angles(feature.at)}` : ''
      if (!key || feature.standard === undefined)
        return say`${what} ${bold(says.between(section.widthLimits.lower, section.widthLimits.upper))} wide${where}`
      const name = key.designation
      const taper = feature.taper ? ` taper ${feature.taper}` : ''
      const whose = `${standards[feature.standard]} ${feature.fit}`
      return many > 1
        ? say`${what} for ${bold(name)}${taper} keys, ${whose}${where}`
        : say`${what} for ${article(name)} ${bold(name)}${taper} key, ${whose}`
    }
    case 'spline':
      if (feature.standard === 'sae-j499') return say`${bold(section.spline?.designation ?? '')}, SAE J499`
      return say`${several}splines, ${bold(section.spline?.designation ?? '')}${feature.standard === 'iso-14' ? ', ISO 14' : ''}`
    case 'socket':
      return say`${capital(socketName(feature.sides))} socket, ${bold(says.between(feature.across[0], feature.across[1]))} across flats`
    case 'slit':
      return say`${several === '' ? 'Slit' : `${several}slits`} ${bold(says.between(section.widthLimits.lower, section.widthLimits.upper))} wide right through the wall${many > 1 ? `, ${placed(feature.at)}` : ''}`
    case 'groove':
      return say`${several === '' ? 'Oil groove' : `${several}oil grooves`}, radius ${bold(says.size(feature.radius))}, ${bold(says.between(feature.depth[0], feature.depth[1]))} deep at the crown${many > 1 ? `, ${placed(feature.at)}` : ''}`
  }
}

/** The sentence under the name. */
export const sentenceOf = (design: Design, says: Saying, by: 'bar' | 'press' | undefined): Words => {
  const { spec, asked } = design
  const { bore } = spec
  const bar = design.bar ?? design.groundBar
  const how =
    by === 'bar' && bar
      ? ` ${capital(asked?.machine ?? 'lathe')}, ${design.groundBar ? 'bar of one piece' : 'bar'} Ø${says.size(bar.diameter.nominal)}.`
      : by === 'press'
        ? ' Push broach and guide bushing.'
        : ''
  const measured =
    bore.measured === undefined ? '' : ` as measured (${says.size(bore.diameter.nominal)} ${bore.tolerance})`
  const blind = bore.blind ? `, blind, the bore ${says.size(bore.blind.beyond)} beyond` : ' long'
  return [
    ...asRuns(cutSaid(design, says)),
    ...asRuns(
      say`, in a ${bold(boreSaid(design, says))} bore${measured} ${bold(says.size(bore.length))}${blind}, ${spec.hub.material}.${how}`,
    ),
  ]
}

const asRuns = (words: Words) => (typeof words === 'string' ? [words] : words)
