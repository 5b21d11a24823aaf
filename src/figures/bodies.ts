/** How bodies are hatched: pitch in em, angle in degrees as it looks (45 leans right). Hub one way, bar the other, bit close. */
import type { Body } from './figure.ts'

export interface Hatch {
  readonly pitch: number
  readonly angle: 45 | 135
}

export const bodies: Readonly<Partial<Record<Body, Hatch>>> = {
  hub: { pitch: 0.6, angle: 45 },
  bar: { pitch: 0.42, angle: 135 },
  bit: { pitch: 0.22, angle: 45 },
  broach: { pitch: 0.22, angle: 45 },
  bushing: { pitch: 0.42, angle: 135 },
  plug: { pitch: 0.42, angle: 135 },
  'no-room': { pitch: 0.36, angle: 45 },
}
