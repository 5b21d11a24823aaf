import type { Row } from './row.ts'

/** What the program chooses and anybody may hold to a value of their own. */
export const chosen: readonly Row[] = [
  {
    path: 'tooling.bar.diameter',
    word: 'Bar',
    kind: { is: 'length' },
    worked: ({ bar }) => bar?.diameter.nominal,
    why: 'bar.diameter',
  },
  {
    path: 'tooling.bar.projection',
    word: 'Projection',
    kind: { is: 'length' },
    worked: ({ bar }) => bar?.projection,
    why: 'bar.projection',
  },
  {
    path: 'tooling.bar.bit.size',
    word: 'Bit',
    kind: { is: 'length' },
    worked: ({ bit }) => bit?.size,
    why: 'bar.bit',
  },
  {
    path: 'tooling.bar.bit.shape',
    word: 'Its blank',
    kind: { is: 'word', words: { square: 'square', round: 'round' } },
    worked: ({ bit }) => bit?.shape,
    when: (job) => job.has('tooling.bar.bit'),
  },
  {
    path: 'tooling.bar.nose.width',
    word: 'Nose width',
    kind: { is: 'length', fit: true },
    worked: ({ bar }) => bar?.noseWidth,
    why: 'bit.noseWidth',
  },
  {
    path: 'tooling.bar.nose.cornerRadius',
    word: 'Nose corners',
    kind: { is: 'length', zero: true },
    worked: ({ bar }) => bar?.cornerRadius,
    why: 'bit.cornerRadius',
  },
  {
    path: 'tooling.bar.rake',
    word: 'Rake',
    kind: { is: 'angle' },
    worked: ({ bit }) => bit?.rake,
    why: 'bit.rake',
  },
  {
    path: 'tooling.bar.screw',
    word: 'Set screw',
    kind: { is: 'text', offered: 'threads' },
    worked: ({ bar }) => bar?.screw.thread,
    why: 'bar.screw',
  },
  {
    path: 'tooling.bar.shank',
    word: 'Shank',
    kind: { is: 'length' },
    worked: ({ bar }) => bar?.shank.nominal,
    why: 'bar.shank',
  },
  {
    path: 'tooling.bar.infeed',
    word: 'Infeed a pass',
    kind: { is: 'length', fit: true },
    worked: ({ plan }) => plan?.infeedPerPass,
    why: 'plan.infeedPerPass',
  },
  {
    path: 'tooling.bar.clearance.back',
    word: 'Gap kept behind',
    kind: { is: 'length', zero: true },
    worked: ({ asked }) => asked?.clearance.back,
  },
  {
    path: 'tooling.bar.clearance.front',
    word: 'Gap kept in front',
    kind: { is: 'length', zero: true },
    worked: ({ asked }) => asked?.clearance.front,
  },
  {
    path: 'tooling.bar.clearance.withdrawn',
    word: 'Gap kept withdrawn',
    kind: { is: 'length', zero: true },
    worked: ({ asked }) => asked?.clearance.withdrawn,
  },
  {
    path: 'tooling.bar.setting',
    word: 'Set to within, ±',
    kind: { is: 'length', zero: true },
    worked: ({ asked }) => asked?.setting,
  },
]
