/** A card written by hand: every block, every kind of cell and run, words that would break a careless writer. Its numbers are worked ones of the cider-mill pulley. */
import type { Card, Picture } from '../../src/card/document.ts'
import type { Stroke } from '../../src/drawing/sheet.ts'
import { lengthOf } from '../../src/drawing/letters.ts'

const deferral =
  'Sizes, not an approval. Steering, brakes, suspension, lifting, pressure, aircraft and all else a life hangs on: licensed hands, the local code, the maker’s own part.'

/** A picture with a rim and a word in it. */
export function pictureOf(width: number, height: number, word = 'bore'): Picture {
  const line = (from: readonly [number, number], to: readonly [number, number]): Stroke => ({
    stroke: 'line',
    class: 'edge',
    width: 0.35,
    from,
    to,
  })
  return {
    width,
    height,
    title: 'Section',
    says: `A bore and ${word}, ${width} wide`,
    strokes: [
      line([0.2, 0.2], [width - 0.2, 0.2]),
      line([width - 0.2, 0.2], [width - 0.2, height - 0.2]),
      line([width - 0.2, height - 0.2], [0.2, height - 0.2]),
      line([0.2, height - 0.2], [0.2, 0.2]),
      {
        stroke: 'arc',
        class: 'edge',
        width: 0.6,
        centre: [width / 2, height / 2],
        radius: Math.min(width, height) / 3,
        from: 0,
        to: 360,
      },
      {
        stroke: 'text',
        class: 'note',
        width: 0.25,
        at: [width / 2 - 4, height / 2],
        height: 2.5,
        length: lengthOf(word, 2.5),
        turn: 0,
        text: word,
      },
    ],
  }
}

const bores: readonly (readonly [string, string, string])[] = [
  ['24.000', '4.027', '0.027'],
  ['24.003', '4.024', '0.024'],
  ['24.006', '4.021', '0.021'],
  ['24.009', '4.018', '0.018'],
  ['24.012', '4.015', '0.015'],
  ['24.015', '4.011', '0.011'],
  ['24.018', '4.008', '0.008'],
  ['24.021', '4.005', '0.005'],
]

const gates: readonly (readonly string[])[] = [
  ['1', '1.00', '13 + 24', '24.38', '24.26', '24.18 to 24.34', 'full load from 0.7 on'],
  ['2', '2.00', '50', '25.38', '25.26', '25.18 to 25.34', ''],
  ['3', '3.00', '50', '26.38', '26.26', '26.18 to 26.34', ''],
  ['4', '3.90', '45', '27.28', '27.16', '27.08 to 27.24', 'now stone the edge'],
  ['5', '4.00', '10, then 4 spring', '27.38', '27.33', '27.25 to 27.41', ''],
]

export const card: Card = {
  name: 'cider-mill-pulley',
  about: '8 × 7 in 24 H7 × 38',
  units: 'millimetres',
  deferral,
  leaves: [
    {
      leaf: 'machine',
      title: 'Machine leaf',
      sides: [
        {
          title: 'set up',
          blocks: [
            {
              block: 'job',
              name: 'cider-mill-pulley',
              says: [
                'Keyway for an ',
                { bold: '8 × 7' },
                ' key, ISO 773 normal, in a ',
                { bold: '24 H7' },
                ' bore ',
                { bold: '38' },
                ' long, grey iron. Lathe, bar Ø18.',
              ],
            },
            {
              block: 'caution',
              says: [
                {
                  signal: 'Stop.',
                  words:
                    'Power must not reach the spindle while the bar is in the hub: one turn folds the bar and throws the bit. Sleeves, rings and hair away from the carriage wheel; knuckles off the edge of the hub. Chips by brush.',
                },
              ],
              ticks: [
                'plug out',
                'spindle held, lock or strap',
                'chuck key put away',
                'feed levers out',
                'eyes covered',
              ],
            },
            {
              block: 'columns',
              columns: [
                { width: 108, blocks: [{ block: 'picture', picture: pictureOf(108, 100) }] },
                {
                  blocks: [
                    { block: 'heading', text: 'Measure the bore first' },
                    {
                      block: 'table',
                      title: 'The bore as measured',
                      columns: [
                        { head: '', width: 18 },
                        { head: 'near end', grows: true },
                        { head: 'far end', grows: true },
                      ],
                      rows: [
                        { cells: ['one way', { write: 'box' }, { write: 'box' }] },
                        { cells: ['square to it', { write: 'box' }, { write: 'box' }] },
                      ],
                    },
                    {
                      block: 'paragraph',
                      size: 'note',
                      words:
                        '24.000 to 24.021. Outside that: back to the desk. The card is worked for 24.010. Ring the row nearest yours:',
                    },
                    {
                      block: 'table',
                      title: 'Infeed for each bore',
                      columns: [
                        { head: 'bore', align: 'decimal' },
                        { head: 'infeed', align: 'decimal' },
                        { head: 'left at 4.00', align: 'decimal' },
                      ],
                      rows: bores.map(([bore, infeed, left]) => ({
                        cells: [{ number: bore, bold: true }, { number: infeed, bold: true }, { number: left }],
                      })),
                    },
                    {
                      block: 'paragraph',
                      size: 'note',
                      words:
                        'Nose corners 0.20. A sharp nose would need 0.06 more infeed: look at the corners before you trust this.',
                    },
                  ],
                },
              ],
            },
            { block: 'heading', text: 'Set up', beside: 'full size: lay the bar on it' },
            {
              block: 'columns',
              columns: [
                { width: 122, blocks: [{ block: 'picture', picture: pictureOf(122, 46, 'bar') }] },
                {
                  blocks: [
                    {
                      block: 'ticks',
                      ticks: [
                        { words: 'Behind the hub open at least 16.5', blank: true },
                        { words: 'Bit on centre height; nose square to the bore' },
                        { words: 'Nose width, 7.982 to 8.018', blank: true },
                        { words: ['Over bar and nose ', { bold: '22.10' }, ' ± 0.04'], blank: true },
                      ],
                    },
                  ],
                },
              ],
            },
            {
              block: 'ticks',
              ticks: [
                { words: 'Hub in the chuck, face square, bore running true' },
                { words: ['Bar along the bore by the indicator, 38 long: within ', { bold: '0.05' }], blank: true },
                {
                  words: [
                    'Nose points to the ',
                    { tick: true },
                    ' back: dial goes in ',
                    { tick: true },
                    ' front: dial goes out. Take up the slack that way, always',
                  ],
                },
              ],
            },
          ],
        },
        {
          title: 'cut and measure',
          blocks: [
            {
              block: 'heading',
              text: 'Cut',
              beside:
                'from touch to 0.52 by 0.04, 13 passes; to 3.90 by 0.02; to 4.00 by 0.01. Withdraw 0.25 for each return stroke',
            },
            { block: 'picture', picture: pictureOf(186, 36, 'infeed') },
            {
              block: 'caution',
              says: [
                {
                  signal: 'Handle suddenly heavy?',
                  words: 'Stop; do not lean on it. Back off, draw the bar out, look for a chipped corner.',
                },
                {
                  signal: 'Edges like a knife',
                  words: 'from gate 1 on. Chips by brush, never by finger, never by air line.',
                },
              ],
            },
            {
              block: 'table',
              title: 'Gates',
              columns: [
                { head: 'gate' },
                { head: 'dial to', align: 'decimal' },
                { head: 'passes', grows: true },
                { head: 'across by the dial', align: 'decimal', width: 14 },
                { head: 'expect', align: 'decimal' },
                { head: 'measured across', width: 20 },
                { head: 'go on if between', align: 'right' },
                { head: '', grows: true },
              ],
              named: true,
              rows: gates.flatMap(
                ([gate = '', dial = '', passes = '', by = '', expect = '', between = '', say = ''], at) => [
                  ...(at === 2
                    ? [
                        {
                          across:
                            'Here: bar out, bit out to 3.18, over bar and nose 11.18, bar back in with the nose in the slot.',
                          is: 'stage' as const,
                        },
                      ]
                    : []),
                  {
                    cells: [
                      gate,
                      { number: dial, dial: true as const },
                      passes,
                      { number: by, dual: '.960' },
                      { number: expect, bold: true as const },
                      { write: 'box' as const },
                      between,
                      { tick: say },
                    ],
                  },
                ],
              ),
            },
            {
              block: 'paragraph',
              size: 'note',
              words:
                'The slot stands about 0.13 behind the dial: bar and machine give. Steady is right; growing means the bit creeps: stop.',
            },
            { block: 'heading', text: 'Add what is missing' },
            {
              block: 'sums',
              sums: [
                { from: { number: '27.40', sign: '−' }, says: 'wanted, less measured across: what is missing' },
                { from: { number: '4.00', sign: '+' }, says: 'the dial, and what is missing: the new dial' },
                { says: 'across, after 4 spring' },
              ],
            },
            {
              block: 'columns',
              columns: [
                {
                  blocks: [
                    {
                      block: 'heading',
                      text: 'Measure the slot',
                      beside: [{ tick: true }, ' first file the four edges and both ends'],
                    },
                    {
                      block: 'table',
                      title: 'The slot as measured',
                      columns: [
                        { head: '', grows: true },
                        { head: 'go', align: 'decimal' },
                        { head: 'no go', align: 'decimal' },
                        { head: 'near end', width: 18 },
                        { head: 'far end', width: 18 },
                      ],
                      rows: [
                        ['Across', ', pin 5 on the floor and a plug', '22.30', '22.50'],
                        ['Across', ', 6 block and inside reading', '21.30', '21.50'],
                        ['Width', ', blocks', '7.982', '8.018'],
                        ['Side to side', ', key in, turned over: half of it', '0', '0.05'],
                      ].map(([name = '', how = '', go = '', noGo = '']) => ({
                        cells: [
                          [{ bold: name }, how],
                          { number: go, bold: true as const },
                          { number: noGo, bold: true as const },
                          { write: 'box' as const },
                          { write: 'box' as const },
                        ],
                      })),
                    },
                  ],
                },
                { width: 42, blocks: [{ block: 'picture', picture: pictureOf(42, 38, 'plug') }] },
              ],
            },
            {
              block: 'ticks',
              inRow: true,
              ticks: [
                { words: 'key slides in by hand' },
                { words: 'across within 27.30 to 27.50' },
                { words: 'good' },
                { words: 'not good, by', blank: true },
              ],
            },
          ],
        },
      ],
    },
    {
      leaf: 'tooling',
      title: 'Tooling leaf',
      sides: [
        {
          title: 'the bar',
          blocks: [
            {
              block: 'table',
              title: 'Sizes of the bar',
              named: true,
              columns: [{ head: 'size' }, { head: '' }, { head: 'measured', width: 22 }, { head: 'why', grows: true }],
              rows: [
                {
                  cells: [
                    'body',
                    'Ø18.00, 64.4 from holder to end (56 + 8.4)',
                    { write: 'line' },
                    'stock size; 19.28 is the largest that passes; 4.10 sits between 3.57 and 4.83',
                  ],
                },
                { cells: ['overall', { number: '121', dual: '4.76' }, { write: 'line' }, '56 in the holder'] },
                {
                  cells: ['metal', ['silver steel or better, ≤ 293 N/mm²', ' at the hole’s mouth → 3 × nominal, α 4°']],
                  spans: 3,
                },
              ],
            },
            {
              block: 'list',
              numbered: true,
              entries: [
                'saw 125',
                'face',
                'centre',
                ['cross hole, drilled under size and ', { bold: 'reamed or bored' }, ', mouths broken'],
              ],
            },
            {
              block: 'caution',
              says: [
                {
                  signal: 'Cross hole first, then the tapped end.',
                  words: 'Burrs in the hole cut; break both mouths. Clear chips with a hook.',
                },
              ],
            },
          ],
        },
      ],
    },
    {
      leaf: 'reasons',
      title: 'Reasons leaf',
      sides: [
        {
          title: 'why',
          blocks: [
            { block: 'paragraph', size: 'large', words: 'Sound, with care.' },
            {
              block: 'paragraph',
              words:
                'Words that would break a careless writer: <b>&amp;</b> "quoted" \'too\' (brackets) \\ and ]]> </style><script>no()</script>.',
            },
          ],
        },
      ],
    },
  ],
}
