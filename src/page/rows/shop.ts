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
      { path: 'shop.plugs', word: 'Plug gauges', kind: { is: 'list', of: 'lengths' } },
      { path: 'shop.endMills', word: 'End mills', kind: { is: 'list', of: 'lengths' } },
      { path: 'shop.gears', word: 'Gears, by teeth', kind: { is: 'list', of: 'counts' } },
      { path: 'shop.dividing.ratio', word: 'Dividing head, turns', kind: { is: 'number', whole: true } },
      { path: 'shop.dividing.circles', word: 'its circles of holes', kind: { is: 'list', of: 'counts' } },
    ],
  },
  {
    heading: 'Trusted to within, ±',
    rows: [
      { path: 'shop.measuring.caliper', word: 'Caliper', kind: { is: 'length', fit: true } },
      { path: 'shop.measuring.micrometer', word: 'Micrometer', kind: { is: 'length', fit: true } },
      { path: 'shop.measuring.depthMicrometer', word: 'Depth micrometer', kind: { is: 'length', fit: true } },
      { path: 'shop.measuring.boreGauge', word: 'Bore gauge', kind: { is: 'length', fit: true } },
      { path: 'shop.measuring.indicator', word: 'Indicator', kind: { is: 'length', fit: true } },
      { path: 'shop.measuring.blocks', word: 'Gauge blocks', kind: { is: 'length', fit: true } },
      { path: 'shop.measuring.square', word: 'Square, over 100 mm', kind: { is: 'length', fit: true } },
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
