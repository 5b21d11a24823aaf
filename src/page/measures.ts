import { measure } from '../checks/measure.ts'
import { figure } from '../spec/figures.ts'
import type { Units } from '../spec/spec.ts'

export { measure }

export const force = (newtons: number, units: Units): string => measure(newtons, 'N', units)
export const size = (mm: number, units: Units, fit = false): string => figure(mm, units, { fit })
