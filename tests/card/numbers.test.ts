import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { Block, Card } from '../../src/card/document.ts'
import type { Design } from '../../src/design.ts'
import { type CardFonts, cardPdf } from '../../src/writers/card-pdf.ts'
import { report } from '../../src/writers/report.ts'
import { open } from '../writers/read-pdf.ts'
import { blocksOf, machineSides, names, specimenCard } from './cards.ts'
import { bare, missing, saidBy } from './said.ts'

const root = join(import.meta.dirname, '../..')
const bytesOf = (path: string): Uint8Array => new Uint8Array(readFileSync(join(root, path)))
const fonts: CardFonts = {
  regular: bytesOf('src/writers/faces/AtkinsonHyperlegibleNext-Regular.ttf'),
  bold: bytesOf('src/writers/faces/AtkinsonHyperlegibleNext-Bold.ttf'),
  sheet: {
    regular: bytesOf('node_modules/dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf'),
    bold: bytesOf('node_modules/dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf'),
  },
}

/** Every number of a report, as it stands and as words in it say it. */
const numbersIn = (value: unknown): readonly number[] => {
  if (typeof value === 'number') return [value]
  if (typeof value === 'string') return (value.match(/\d+(?:\.\d+)?|\.\d+/g) ?? []).map(Number)
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : []
}

// Exact by definition: the inch, the pound-force.
const inch = 25.4
const pound = 4.4482216152605

/** What a number of the report may be written as: mm or in, N, kN or lbf, N m or lbf in. */
const written = (value: number): readonly number[] => [
  value,
  value / inch,
  value / 1000,
  value / pound,
  value / pound / inch,
]

const withoutPictures = (card: Card): Card => {
  const bareOf = (blocks: readonly Block[]): readonly Block[] =>
    blocksOf(blocks).filter(({ block }) => block !== 'picture')
  return {
    ...card,
    leaves: card.leaves.map((leaf) => ({
      ...leaf,
      sides: leaf.sides.map((side) => ({ ...side, blocks: bareOf(side.blocks) })),
    })),
  }
}

/** Numbers with decimals that a card says outside its pictures, with how many. */
const saidIn = (card: Card): readonly string[] =>
  saidBy(withoutPictures(card)).flatMap((pieces) => pieces.flatMap((piece) => piece.match(/\d+\.\d+/g) ?? []))

/** The last mark that a reader may be told by, in the units of the number; limits lean inwards by up to one of it, forces are said in three figures. */
const isIn = (text: string, all: readonly number[]): boolean => {
  const step = 10 ** -(text.split('.')[1]?.length ?? 0)
  return all.some((value) => Math.abs(Math.abs(value) - Number(text)) <= 1.0001 * step)
}

/** The report’s, those that the spec gives, and the bore that is worked for. */
const known = (design: Design): readonly number[] =>
  [
    ...numbersIn(report(design)),
    ...numbersIn(design.spec),
    2 * design.section.boreRadius,
    // What is to be open behind the hub, told or not.
    ((design.bar ?? design.groundBar)?.tipBeyond ?? 0) + 0.5,
  ].flatMap(written)

const textOf = async (card: Card, paper: 'A4' | 'Letter'): Promise<string> => {
  const document = await open(await cardPdf(card, paper, fonts))
  const pages: string[] = []
  for (let page = 1; page <= document.numPages; page++) {
    const content = await (await document.getPage(page)).getTextContent()
    pages.push(content.items.flatMap((item) => ('str' in item ? [item.str] : [])).join(''))
  }
  return pages.join('')
}

describe.each(names)('the card of %s', (name) => {
  it('says in print what its model says, in order', async () => {
    const { card, design } = specimenCard(name)
    const text = await textOf(card, design.spec.drafting.paper)
    // A head that comes again on the next side is said once in the model.
    for (const pieces of saidBy(card)) expect(missing(pieces.join(' ').split(/\s+/), text)).toBeUndefined()
    expect(bare(text)).toContain(bare(card.deferral))
  })

  it('says no number with decimals that is not in the report', () => {
    const { card, design } = specimenCard(name)
    const all = known(design)
    expect(saidIn(card).filter((text) => !isIn(text, all))).toEqual([])
  })

  it('gives each gate its reading and each bore its infeed', () => {
    const { card, design } = specimenCard(name)
    const { plan } = design
    const said = machineSides(card).flatMap(({ blocks }) => blocksOf(blocks))
    const table = (title: string) =>
      said.flatMap((block) => (block.block === 'table' && block.title === title ? [block] : []))[0]
    if (!plan || design.ways?.recommended === 'press') {
      expect(table('Gates')).toBeUndefined()
      return
    }
    const unit = design.spec.units === 'mm' ? 1 : inch
    const infeeds = table('Infeed for each bore')?.rows.map((row) =>
      'cells' in row
        ? row.cells.map((cell) => (typeof cell === 'object' && 'number' in cell ? Number(cell.number) : Number.NaN))
        : [],
    )
    // A groove has one infeed for all of them, and no table.
    if (design.section.groove) expect(infeeds).toBeUndefined()
    else
      for (const row of plan.bores.rows) {
        const off = ([bore = Number.NaN]: readonly number[]): number => Math.abs(bore - row.bore / unit)
        const said = infeeds?.toSorted((one, other) => off(one) - off(other))[0]
        expect(said?.[0]).toBeCloseTo(row.bore / unit, 3)
        expect(said?.[1]).toBeCloseTo(row.infeed / unit, 3)
        expect(said?.at(-1)).toBeCloseTo(row.leftOnDial / unit, 3)
      }
    const bores = infeeds?.map(([bore]) => bore) ?? []
    expect(new Set(bores).size).toBe(bores.length)
    if (design.verdict === 'fail') {
      expect(table('Gates')).toBeUndefined()
      return
    }
    const readings = [
      ...(table('Gates')?.rows.flatMap((row) =>
        'cells' in row
          ? row.cells.flatMap((cell) => (typeof cell === 'object' && 'dial' in cell ? [Number(cell.number)] : []))
          : [],
      ) ?? []),
      ...(table('Slots')?.columns.flatMap(({ head }) =>
        typeof head === 'string'
          ? []
          : head.flatMap((run) => (typeof run === 'object' && 'dial' in run ? [Number(run.dial)] : [])),
      ) ?? []),
    ]
    const wanted = plan.cuts.flatMap(({ gates }) => gates.map(({ reading }) => reading / unit))
    for (const reading of wanted) expect(readings.some((said) => Math.abs(said - reading) < 1e-4)).toBe(true)
    for (const reading of readings) expect(wanted.some((said) => Math.abs(said - reading) < 1e-4)).toBe(true)
  })
})
