import { workMaterial } from '../standards/materials.ts'
import type { Spec } from '../spec/spec.ts'

/** A round hub as long as its bore, kg; a rim or arms beside it are not told. Undefined where outside or metal is not told. */
export const hubWeightOf = ({ bore, hub }: Spec): number | undefined => {
  const density = workMaterial(hub.material)?.density
  if (hub.outside === undefined || density === undefined) return undefined
  const length = bore.length + (bore.blind?.beyond ?? 0)
  return ((Math.PI / 4) * (hub.outside ** 2 - bore.diameter.nominal ** 2) * length * density) / 1e6
}
