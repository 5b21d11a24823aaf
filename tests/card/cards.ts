/** Designs and cards of the specimens, and of jobs that no specimen is. */
import { cardOf } from '../../src/card/card-of.ts'
import type { Block, Card, Side } from '../../src/card/document.ts'
import { type Design, design } from '../../src/design.ts'
import { specimen, specimenNames, specOf } from '../spec/specimens.ts'

export const names = specimenNames.map((name) => name.replace('.yaml', ''))

const known = new Map<string, { readonly design: Design; readonly card: Card }>()

/** A specimen’s design and card, worked out once. */
export const specimenCard = (name: string): { readonly design: Design; readonly card: Card } => {
  const found = known.get(name) ?? worked(specimen(`${name}.yaml`))
  known.set(name, found)
  return found
}

export const worked = (document: unknown): { readonly design: Design; readonly card: Card } => {
  const made = design(specOf(document))
  return { design: made, card: cardOf(made) }
}

/** A document with something laid over it, by path. */
export const laidOver = (document: Record<string, unknown>, path: string, value: unknown): Record<string, unknown> => {
  const [first = '', ...rest] = path.split('.')
  const inner = document[first]
  return {
    ...document,
    [first]:
      rest.length === 0
        ? value
        : laidOver(
            typeof inner === 'object' && inner !== null ? (inner as Record<string, unknown>) : {},
            rest.join('.'),
            value,
          ),
  }
}

export const machineSides = (card: Card): readonly Side[] =>
  card.leaves.find(({ leaf }) => leaf === 'machine')?.sides ?? []

/** Blocks, those in columns too. */
export const blocksOf = (blocks: readonly Block[]): readonly Block[] =>
  blocks.flatMap((block) =>
    block.block === 'columns' ? block.columns.flatMap((column) => blocksOf(column.blocks)) : [block],
  )

export const allBlocks = (card: Card): readonly Block[] =>
  card.leaves.flatMap((leaf) => leaf.sides.flatMap((side) => blocksOf(side.blocks)))
