/** Cards of any content: words, numbers, boxes and pictures put together by chance. */
import fc from 'fast-check'
import type { Block, Card, Cell, Column, Row, Run, Words } from '../../src/card/document.ts'
import { pictureOf } from './hand-made-card.ts'

const word = fc.constantFrom(
  'bore',
  'infeed',
  'across',
  '27.40',
  '±',
  '0.02',
  '×',
  '8',
  'carriage',
  'wheel;',
  'Ø18',
  'at',
  'most',
  'the',
  'hub,',
  'N/mm²',
  '≤',
  'α',
  '→',
  '30°',
  'Maschinenwerkzeugschleifscheibendurchmesser',
  '<b>&amp;',
  'é',
  'AVA',
  '(see',
  'reasons)',
  'fi',
  'j',
) // prettier-ignore
const text = fc.array(word, { minLength: 1, maxLength: 14 }).map((all) => all.join(' '))
const short = fc.array(word, { minLength: 1, maxLength: 3 }).map((all) => all.join(' '))

const run: fc.Arbitrary<Run> = fc.oneof(
  { weight: 4, arbitrary: text },
  short.map((bold) => ({ bold })),
  short.map((large) => ({ large })),
  fc.constantFrom('1.00', '3.90').map((dial) => ({ dial })),
  short.map((small) => ({ small })),
  fc.constant({ dual: '(.945 in)' }),
  fc.constant({ tick: true } as const),
  fc.constantFrom(true as const, 10, 30).map((blank) => ({ blank })),
  fc.constantFrom(true as const, 25).map((box) => ({ box })),
)
const words: fc.Arbitrary<Words> = fc.oneof(
  text,
  fc
    .array(run, { minLength: 1, maxLength: 4 })
    .map((runs) => runs.flatMap((each, at) => (at > 0 ? [' ', each] : [each]))),
)

const numberIn = (narrow: boolean) =>
  fc.constantFrom('24.000', '4.027', '0', '121', '7.99', '.945', '1234.5').chain((digits) =>
    fc.record(
      {
        number: fc.constant(digits),
        bold: fc.constant(true as const),
        dial: fc.constant(true as const),
        ...(!narrow && { dual: fc.constant('.9449') }),
      },
      { requiredKeys: ['number'] },
    ),
  )
const cellIn = (narrow: boolean): fc.Arbitrary<Cell> =>
  fc.oneof(
    short,
    numberIn(narrow),
    words,
    fc.constantFrom<Cell>({ write: 'box' }, { write: 'line' }, undefined, { tick: '' }),
    short.map((tick) => ({ tick })),
  )
const column: fc.Arbitrary<Column> = fc.record(
  {
    head: fc.oneof(fc.constant(''), short),
    unit: fc.constant('mm'),
    align: fc.constantFrom('left' as const, 'right' as const, 'decimal' as const),
    width: fc.integer({ min: 5, max: 20 }),
    grows: fc.constant(true as const),
  },
  { requiredKeys: ['head'] },
)
const table = (most: number): fc.Arbitrary<Block> =>
  fc.integer({ min: 1, max: most }).chain((count) => {
    const cell = cellIn(most < 5)
    const row: fc.Arbitrary<Row> = fc.oneof(
      { weight: 8, arbitrary: fc.array(cell, { minLength: 1, maxLength: count }).map((cells) => ({ cells })) },
      fc.array(cell, { minLength: 1, maxLength: count }).map((cells) => ({ cells, spans: count - cells.length + 1 })),
      fc.record({ across: short, is: fc.constantFrom('lane' as const, 'stage' as const) }),
    )
    return fc.record(
      {
        block: fc.constant('table' as const),
        title: fc.constant('A table'),
        columns: fc.array(column, { minLength: count, maxLength: count }),
        rows: fc.array(row, { minLength: 1, maxLength: 25 }),
        named: fc.constant(true as const),
      },
      { requiredKeys: ['block', 'title', 'columns', 'rows'] },
    )
  })

const tick = fc.record({ words, blank: fc.constant(true as const) }, { requiredKeys: ['words'] })
const simple = (widest: number): fc.Arbitrary<Block> =>
  fc.oneof(
    fc.record(
      { block: fc.constant('heading' as const), text: short, beside: words },
      { requiredKeys: ['block', 'text'] },
    ),
    fc.record(
      { block: fc.constant('paragraph' as const), words, size: fc.constantFrom('note' as const, 'large' as const) },
      { requiredKeys: ['block', 'words'] },
    ),
    fc.record(
      {
        block: fc.constant('caution' as const),
        says: fc.array(fc.record({ signal: short, words }), { minLength: 1, maxLength: 2 }),
        ticks: fc.array(short, { maxLength: 6 }),
      },
      { requiredKeys: ['block', 'says'] },
    ),
    fc.record(
      {
        block: fc.constant('ticks' as const),
        ticks: fc.array(tick, { minLength: 1, maxLength: 6 }),
        inRow: fc.constant(true as const),
      },
      { requiredKeys: ['block', 'ticks'] },
    ),
    fc.record(
      {
        block: fc.constant('list' as const),
        entries: fc.array(words, { minLength: 1, maxLength: 12 }),
        numbered: fc.constant(true as const),
      },
      { requiredKeys: ['block', 'entries'] },
    ),
    table(widest > 100 ? 5 : 2),
    fc
      .record({ width: fc.integer({ min: 20, max: widest }), height: fc.integer({ min: 10, max: 120 }) })
      .map(({ width, height }) => ({ block: 'picture' as const, picture: pictureOf(width, height) })),
    fc.record({
      block: fc.constant('sums' as const),
      sums: fc.array(
        fc.record(
          { from: fc.constant({ number: '27.40', sign: '−' as const }), says: text },
          { requiredKeys: ['says'] },
        ),
        { minLength: 1, maxLength: 4 },
      ),
    }),
  )
const block: fc.Arbitrary<Block> = fc.oneof(
  { weight: 6, arbitrary: simple(186) },
  fc
    .constantFrom<readonly (number | undefined)[]>(
      [undefined, undefined],
      [90, undefined],
      [undefined, 60],
      [60, undefined, undefined],
    )
    .chain((widths) =>
      fc.tuple(
        ...widths.map((width) =>
          fc
            .array(simple(40), { minLength: 1, maxLength: 3 })
            .map((blocks) => (width === undefined ? { blocks } : { width, blocks })),
        ),
      ),
    )
    .map((columns) => ({ block: 'columns' as const, columns })),
  fc.record({
    block: fc.constant('job' as const),
    name: fc.constantFrom('cider-mill-pulley', 'boat winch drum, second operation'),
    says: words,
  }),
)

export const someCard: fc.Arbitrary<Card> = fc.record(
  {
    name: fc.constantFrom(
      'cider-mill-pulley',
      'a name that goes on for longer than any line at the head of a side has room for, and then on and on',
    ),
    about: text,
    units: fc.constantFrom('millimetres' as const, 'inches' as const),
    notSound: fc.array(fc.constantFrom('bar-passes-bore', 'hub-wall', 'not-for-what-a-life-hangs-on'), {
      minLength: 1,
      maxLength: 4,
    }),
    deferral: fc.constant(
      'Sizes, not an approval. Steering, brakes, suspension, lifting, pressure, aircraft and all else a life hangs on: licensed hands, the local code, the maker’s own part.',
    ),
    leaves: fc.array(
      fc.record({
        leaf: fc.constantFrom('machine' as const, 'tooling' as const, 'reasons' as const),
        title: fc.constantFrom('Machine leaf', 'Tooling leaf'),
        sides: fc.array(fc.record({ title: short, blocks: fc.array(block, { minLength: 1, maxLength: 9 }) }), {
          minLength: 1,
          maxLength: 2,
        }),
      }),
      { minLength: 1, maxLength: 2 },
    ),
  },
  { requiredKeys: ['name', 'about', 'units', 'deferral', 'leaves'] },
)
