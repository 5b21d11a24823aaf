import type { Spec } from '../spec/spec.ts'
import { either } from './makeable.ts'

/** What this shop's prints can be trusted to, ± mm: after its own calibration, or before. Source: common practice, no source. */
export const trustOf = ({ units, shop }: Spec): number =>
  shop.printer.measured ? either(units, 0.05, 0.002) : either(units, 0.1, 0.004)

/** Printed sizes are rounded to this, mm: what a sheet says of a print. */
export const printStep = ({ units }: Spec): number => either(units, 0.01, 0.001)

/** Why `tolerance` of a print is what it is. */
export const trustBasis = ({ shop }: Spec): string =>
  shop.printer.measured ? 'after own calibration: ±0.05 mm' : 'uncalibrated: ±0.1 mm'

/** Why the printer's offset is what it is. */
export const offsetBasis = ({ shop }: Spec): string =>
  shop.printer.measured ? 'measured on this printer (shop file)' : 'no printer measured: the model is the size wanted'

export const footBasis = 'the printer’s foot, from the shop file or a default'

/** A size as it is raised on a print: `7.88`, `0.1835`. */
export const raisedFigure = ({ units }: Spec, mm: number): string =>
  units === 'mm' ? `${Math.round(mm * 100) / 100}` : `${Math.round((mm / 25.4) * 1e4) / 1e4}`
