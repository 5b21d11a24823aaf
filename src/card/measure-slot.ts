/** Is it good: across, width, sides, both ends, and the verdict. */
import type { Design } from '../design.ts'
import { onPaper } from '../figures/figure.ts'
import { pinAndPlug } from '../figures/pin-and-plug.ts'
import type { AcrossBy, GoNoGo } from '../plan/types.ts'
import type { Block, Cell, Row, Tick, Words } from './document.ts'
import { pictured } from './pictures.ts'
import { bold, goCells, say, type Saying } from './saying.ts'

const row = (words: Words, says: Saying, limits: GoNoGo): Row => ({
  cells: [words, ...goCells(says, limits), { write: 'box' }, { write: 'box' }],
})

const acrossRow = (way: AcrossBy, says: Saying): Row => {
  switch (way.by) {
    case 'pin and plug':
      return row(say`${bold('Across')}, pin ${says.exact(way.pin)} on the floor and a plug`, says, way.plug)
    case 'block and inside reading':
      return row(say`${bold('Across')}, ${says.exact(way.block)} block and inside reading`, says, way.inside)
    case 'plug and blocks':
      return row(say`${bold('Crown depth')}, plug ${says.fine(way.plug)} and blocks to the floor`, says, way.blocks)
  }
}

/** `pairs`: a row for every pair of slots; else they are written where the slots are ticked. */
const rowsOf = ({ measuring, section, groundBar }: Design, says: Saying, pairs: boolean): readonly Row[] => {
  const { ways, floorToFloor, width, sideToSide, lead, endToEnd } = measuring
  const atMost = (words: Words, most: number): Row => {
    const none: Cell = { number: '0' }
    return { cells: [words, none, { number: says.limit(most, 'down') }, { write: 'box' }, { write: 'box' }] }
  }
  const widthOf: Words = section.socket
    ? say`${bold('Across flats')}, every pair`
    : section.groove
      ? say`${bold('Width')} of the mouth`
      : say`${bold('Width')}, blocks`
  const ground = groundBar === undefined
  const taper = section.key?.taper
  return [
    ...(section.groove && !floorToFloor
      ? [
          row(say`${bold('Across')}, ball ends, deepest point to the wall`, says, {
            go: measuring.across.least,
            noGo: measuring.across.most,
          }),
        ]
      : []),
    ...(floorToFloor
      ? (pairs ? floorToFloor.pairs.map(([one, other]) => `, ${one} and ${other}`) : [', every pair']).map((which) =>
          row(say`${bold('Floor to floor')}${which}`, says, {
            go: floorToFloor.least,
            noGo: floorToFloor.most,
          }),
        )
      : []),
    // Where the side is full, the second way to measure the same gives way.
    ...(pairs || !floorToFloor ? ways : []).map((way) => acrossRow(way, says)),
    row(widthOf, says, width),
    ...(sideToSide === undefined
      ? []
      : [
          atMost(
            section.key && !taper
              ? say`${bold('Side to side')}, key in, turned over: half of it${lead === undefined ? '' : `; ends alike to ${says.limit(lead, 'down')}`}`
              : say`${bold('Side to side')}, block in, turned over: half of it`,
            sideToSide,
          ),
        ]),
    ...(taper
      ? [
          {
            cells: [
              say`${bold('The fall')}: deep end less the other`,
              ...goCells(says, { go: taper.windowLoss - endToEnd, noGo: taper.windowLoss + endToEnd }),
              { write: 'box' as const },
            ],
          },
        ]
      : []),
    ...(taper || section.slit || !ground
      ? []
      : [
          {
            cells: [
              say`${bold('Across, end to end')}: near less far`,
              { number: '0' },
              { number: says.limit(endToEnd, 'down') },
              { write: 'box' as const },
            ],
          },
        ]),
  ]
}

const verdict = ({ measuring, section, spec }: Design, says: Saying, sizes: boolean): readonly Tick[] => {
  const { across, floorToFloor, key, toBore } = measuring
  const fits: readonly Tick[] = section.socket
    ? [
        {
          words: `${spec.feature.kind === 'socket' && spec.feature.sides === 4 ? 'square' : 'key'} goes in at every turn`,
        },
      ]
    : section.spline
      ? [{ words: 'shaft slides in at every turn' }]
      : section.slit
        ? [{ words: 'no web left, seen through end to end' }]
        : key
          ? [
              {
                words: section.key?.taper ? 'key blued: it bears on top and bottom' : 'key slides in by hand',
              },
            ]
          : []
  const within = (what: string, least: number, most: number): string =>
    `${what} ${most - least < 1e-9 ? '' : 'within '}${says.between(least, most)}`
  const size: readonly Tick[] = floorToFloor
    ? [{ words: within('floor to floor', floorToFloor.least, floorToFloor.most) }]
    : toBore
      ? [{ words: within('across', across.least, across.most) }]
      : []
  return [...fits, ...(sizes ? size : []), { words: 'good' }, { words: 'not good, by', blank: true }]
}

const pictureWidth = 42

export const measureTheSlot = (
  design: Design,
  says: Saying,
  { pin, boxes }: { readonly pin: boolean; readonly boxes: boolean },
): readonly Block[] => {
  const { measuring, section, spec } = design
  const taper = section.key?.taper !== undefined
  const picture = pin ? pictured(pinAndPlug(design, onPaper(pictureWidth, 46))) : []
  const what = section.socket ? 'socket' : section.groove ? 'groove' : section.slit ? 'slit' : 'slot'
  const edges = section.socket || section.groove ? 'the edges at both ends' : 'the four edges and both ends'
  const blocks: readonly Block[] = [
    {
      block: 'heading',
      text: `Measure the ${what}`,
      beside: [{ tick: true }, ` first file ${edges}`],
    },
    ...(taper
      ? [
          {
            block: 'paragraph' as const,
            size: 'note' as const,
            words: 'Go and no go of across are the deep end’s; the other end is less by the fall.',
          },
        ]
      : []),
    ...(measuring.instead === undefined || (measuring.floorToFloor && !boxes)
      ? []
      : [{ block: 'paragraph' as const, size: 'note' as const, words: measuring.instead }]),
    {
      block: 'table',
      title: `The ${what} as measured`,
      columns: [
        { head: '', grows: true },
        { head: 'go', align: 'decimal' },
        { head: 'no go', align: 'decimal' },
        { head: taper ? 'deep end' : 'near end', width: 18 },
        { head: taper ? 'other end' : spec.bore.blind ? 'deep end' : 'far end', width: 18 },
      ],
      rows: rowsOf(design, says, boxes),
    },
  ]
  return [
    ...(picture.length > 0
      ? [{ block: 'columns' as const, columns: [{ blocks }, { width: pictureWidth, blocks: picture }] }]
      : blocks),
    { block: 'ticks', inRow: true, ticks: verdict(design, says, boxes) },
  ]
}
