import type { Group } from './row.ts'

/** What is on hand; a list that is left empty is the usual one of its units. */
export const shop: readonly Group[] = [
  {
    heading: 'On hand',
    rows: [
      {
        path: 'shop.units',
        word: 'A bare number is in',
        kind: { is: 'word', words: { mm: 'mm', in: 'inch' } },
        worked: ({ spec }) => spec.shop.units,
      },
      {
        path: 'shop.bars',
        word: 'Bar for cutter bars',
        kind: { is: 'list', of: 'lengths' },
        worked: ({ spec }) => spec.shop.bars,
      },
      {
        path: 'shop.rounds',
        word: 'Bar for bushings',
        kind: { is: 'list', of: 'lengths' },
        worked: ({ spec }) => spec.shop.rounds,
      },
      { path: 'shop.bits', word: 'Bit blanks', kind: { is: 'list', of: 'bits' } },
      { path: 'shop.drills', word: 'Drills', kind: { is: 'list', of: 'drills' } },
      { path: 'shop.reamers', word: 'Reamers', kind: { is: 'list', of: 'lengths' } },
      { path: 'shop.taps', word: 'Taps', kind: { is: 'list', of: 'texts' } },
      { path: 'shop.screws', word: 'Set screws', kind: { is: 'list', of: 'texts' } },
      { path: 'shop.threads', word: 'or both, by thread', kind: { is: 'list', of: 'texts' } },
      {
        path: 'shop.collets',
        word: 'Collets',
        kind: { is: 'list', of: 'lengths' },
        worked: ({ spec }) => spec.shop.collets,
      },
      {
        path: 'shop.shims',
        word: 'Shim stock',
        kind: { is: 'list', of: 'lengths' },
        worked: ({ spec }) => spec.shop.shims,
      },
      { path: 'shop.pins', word: 'Pins', kind: { is: 'list', of: 'lengths' } },
    ],
  },
  {
    heading: 'The printer, as measured, a side',
    rows: [
      { path: 'shop.printer.outside', word: 'Outsides', kind: { is: 'length', signed: true } },
      { path: 'shop.printer.inside', word: 'Insides', kind: { is: 'length', signed: true } },
      { path: 'shop.printer.foot', word: 'Foot', kind: { is: 'length', zero: true } },
    ],
  },
]
