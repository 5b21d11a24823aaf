/** A sheet drawn by hand: every kind of stroke, every class, both turns, dashes, a full circle, words that would break a careless writer. */
import { lengthOf } from '../../src/drawing/letters.ts'
import type { Sheet, Stroke, StrokeClass } from '../../src/drawing/sheet.ts'
import type { Point } from '../../src/solid/outline.ts'

const line = (
  name: StrokeClass,
  width: number,
  from: Point,
  to: Point,
  more: { of?: string; dashes?: number[] } = {},
): Stroke => ({
  stroke: 'line',
  class: name,
  width,
  from,
  to,
  ...more,
})

interface Words {
  readonly height?: number
  readonly turn?: 0 | 90
  readonly of?: string
  readonly bold?: boolean
}

const text = (
  name: StrokeClass,
  at: Point,
  words: string,
  { height = 3.5, turn = 0, of, bold }: Words = {},
): Stroke => ({
  stroke: 'text',
  class: name,
  width: 0.25,
  at,
  height,
  length: lengthOf(words, height, bold),
  turn,
  text: words,
  ...(of === undefined ? {} : { of }),
  ...(bold === undefined ? {} : { bold }),
})

export const strokes: readonly Stroke[] = [
  line('sheet', 0.7, [20, 10], [287, 10]),
  line('sheet', 0.7, [287, 10], [287, 200]),
  line('sheet', 0.7, [287, 200], [20, 200]),
  line('sheet', 0.7, [20, 200], [20, 10]),
  line('sheet', 0.35, [12, 55], [12, 155]), // the check line, 100 mm
  line('edge', 0.5, [40, 60], [80, 60]),
  { stroke: 'arc', class: 'edge', width: 0.5, centre: [100, 100], radius: 30, from: 0, to: 360 },
  { stroke: 'arc', class: 'edge', width: 0.5, centre: [100, 100], radius: 40, from: 300, to: 420 },
  { stroke: 'arc', class: 'edge', width: 0.5, centre: [100, 100], radius: 20, from: 60, to: 300 },
  {
    stroke: 'arc',
    class: 'ghost',
    width: 0.25,
    centre: [100, 100],
    radius: 45,
    from: 330,
    to: 30,
    dashes: [6, 0.75, 0.5, 0.75, 0.5, 0.75, 38.13],
  },
  line('hidden', 0.25, [60, 40], [70.65, 40], { dashes: [3.05, 0.75, 3.05, 0.75, 3.05] }),
  line('axis', 0.25, [50, 100], [66.5, 100], { dashes: [7.25, 0.75, 0.5, 0.75, 7.25] }),
  line('axis', 0.25, [100, 98], [100, 102]),
  line('hatch', 0.18, [110, 60], [120, 70]),
  line('torn', 0.25, [130, 60], [131, 63]),
  text('size', [180, 120], 'Ø23.987', { of: 'outside' }),
  line('size', 0.25, [180, 119], [199, 119], { of: 'outside' }),
  line('size', 0.25, [180, 118], [180, 132], { of: 'outside' }),
  line('size', 0.25, [199, 118], [199, 130], { of: 'outside' }),
  {
    stroke: 'fill',
    class: 'size',
    width: 0.25,
    points: [
      [180, 119],
      [183, 119.5],
      [183, 118.5],
    ],
    of: 'outside',
  }, // prettier-ignore
  {
    stroke: 'fill',
    class: 'size',
    width: 0.25,
    points: [
      [230, 119],
      [234, 119],
      [234, 121],
      [230, 121],
    ],
  }, // prettier-ignore
  text('size', [220, 80], '40 −0.013', { turn: 90, of: 'length' }),
  line('size', 0.25, [221, 70], [221, 110], { of: 'length' }),
  line('size', 0.25, [180, 60], [210, 60], { of: 'rake' }),
  { stroke: 'arc', class: 'size', width: 0.25, centre: [180, 60], radius: 30, from: 0, to: 45, of: 'rake' },
  text('size', [212, 68], '45°', { of: 'rake' }),
  text('note', [220, 40], 'a < b & "c" > d', { height: 2.5 }),
  text('sheet', [220, 20], 'fifty AVAILABLE', { height: 5, bold: true }),
  line('stop', 0.5, [25, 190], [60, 190]),
]

export const sheet: Sheet = {
  number: 'cider-mill-pulley-10',
  title: 'Guide bushing',
  part: 'guide bushing',
  paper: { name: 'A4', width: 297, height: 210 },
  strokes,
  dimensions: [
    {
      of: 'outside',
      is: 'linear',
      turn: 0,
      points: [
        [180, 132],
        [199, 130],
      ],
      line: [190, 119],
      text: 'Ø23.987',
      textAt: [189, 121.7],
      scale: 2,
      strokes: [15, 16, 17, 18, 19],
    }, // prettier-ignore
    {
      of: 'length',
      is: 'linear',
      turn: 90,
      points: [
        [210, 70],
        [214, 110],
      ],
      line: [221, 90],
      text: '40 −0.013',
      textAt: [218, 90],
      scale: 1,
      strokes: [21, 22],
    }, // prettier-ignore
    {
      of: 'rake',
      is: 'angle',
      turn: 0,
      points: [
        [180, 60],
        [210, 60],
        [201.2132, 81.2132],
      ],
      line: [207.7164, 71.4805],
      text: '45°',
      textAt: [216, 69.7],
      scale: 1,
      strokes: [23, 24, 25],
    }, // prettier-ignore
  ],
}

/** Words from a user that end a line, start an entity, close a tag, or are a code to some reader. */
export const hostile = [
  'one\n  0\nLINE\n  8\nEDGE',
  'two\r\n0\r\nEOF',
  'three\u2028\u0085\u0000\u001b[0m',
  '</text><script>four</script>',
  '" onload="five',
  '%%c ^J \\U+000A \\P{six}',
  'seven\ud800eight',
]

export const sheetSaying = (words: readonly string[]): Sheet => ({
  ...sheet,
  dimensions: [],
  strokes: words.map(
    (word, index): Stroke => ({
      stroke: 'text',
      class: 'note',
      width: 0.25,
      at: [30, 180 - 10 * index],
      height: 2.5,
      length: 60,
      turn: 0,
      text: word,
    }),
  ),
})
