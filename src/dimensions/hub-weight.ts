import type { Spec } from '../spec/spec.ts'

/** kg for a dm³, upper end of each kind. Source: from memory (handbooks). */
const density = (material: string): number =>
  /alumin|6061/.test(material) ? 2.8 : /bronze|brass/.test(material) ? 8.8 : 7.9

/** A round hub as long as its bore, kg; a rim or arms beside it are not told. Undefined where the outside is not told. */
export const hubWeightOf = ({ bore, hub }: Spec): number | undefined => {
  if (hub.outside === undefined) return undefined
  const length = bore.length + (bore.blind?.beyond ?? 0)
  return ((Math.PI / 4) * (hub.outside ** 2 - bore.diameter.nominal ** 2) * length * density(hub.material)) / 1e6
}
