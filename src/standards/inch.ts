import { sameSize } from './table.ts'

/** Millimetres in one inch, exactly (international inch, 1959). */
export const inch = 25.4

/** Newtons in one pound-force, exactly (0.45359237 kg × 9.80665 m/s²). */
export const poundForce = 4.4482216152605

/** N mm in one pound-force inch, exactly. */
export const poundForceInch = poundForce * inch

/** Inches that a printed fraction means: `3/16` 0.1875, `1-1/4` 1.25, `2` 2. Only for names typed in tables; anything else is our own bug. */
export const inchesNamed = (name: string): number => {
  const found = /^(?:(\d+)-)?(\d+)(?:\/(\d+))?$/.exec(name)
  if (!found) throw new Error(`not a fraction of an inch: ${name}`)
  return Number(found[1] ?? 0) + Number(found[2]) / Number(found[3] ?? 1)
}

/** A printed fraction of an inch, in mm. */
export const fromInchName = (name: string): number => inchesNamed(name) * inch

/** The fraction by which a size is known in an inch shop, to 1/64: 4.7625 mm is `3/16`, 31.75 mm `1-1/4`; `undefined` if it is none. */
export const inchName = (size: number): string | undefined => {
  const parts = Math.round((size / inch) * 64)
  if (parts <= 0 || Math.abs((parts / 64) * inch - size) > sameSize) return undefined
  const whole = Math.floor(parts / 64)
  let [top, bottom] = [parts % 64, 64]
  if (top === 0) return String(whole)
  while (top % 2 === 0) [top, bottom] = [top / 2, bottom / 2]
  return whole === 0 ? `${top}/${bottom}` : `${whole}-${top}/${bottom}`
}
