/** What a card says, read off its model in order: one list of pieces a side. Another way round than the writers go. */
import { type Block, type Card, isWords, plain, type Run, type Words } from '../../src/card/document.ts'

/** Words cut where something to write on stands between them. */
const pieces = (words: Words): readonly string[] =>
  (typeof words === 'string' ? [words] : words).map((run: Run) => plain([run])).filter((text) => text.trim() !== '')

function ofBlock(block: Block): readonly string[] {
  switch (block.block) {
    case 'job':
      return [block.name, ...pieces(block.says), 'by', 'date']
    case 'heading':
      return [block.text, ...pieces(block.beside ?? '')]
    case 'paragraph':
      return pieces(block.words)
    case 'caution':
      return [
        ...block.says.flatMap(({ signal, words }) => [signal, ...pieces(words)]),
        ...(block.ticks ?? []).flatMap(pieces),
      ]
    case 'ticks':
      return block.ticks.flatMap(({ words }) => pieces(words))
    case 'list':
      return block.entries.flatMap(pieces)
    case 'table':
      return [
        ...block.columns.flatMap(({ head, unit }) => [...pieces(head), ...(unit ? [unit] : [])]),
        ...block.rows.flatMap((row) =>
          'across' in row
            ? pieces(row.across)
            : row.cells.flatMap((cell) => {
                if (cell === undefined) return []
                if (isWords(cell)) return pieces(cell)
                if ('number' in cell) return [cell.number, ...(cell.dual ? [cell.dual] : [])]
                return 'tick' in cell ? pieces(cell.tick) : []
              }),
        ),
      ]
    case 'picture':
      return block.picture.strokes.flatMap((stroke) => (stroke.stroke === 'text' ? [stroke.text] : []))
    case 'sums':
      return block.sums.flatMap(({ from, says }) => [
        ...(from ? [`${from.number} ${from.sign}`, '='] : []),
        ...pieces(says),
      ])
    case 'columns':
      return block.columns.flatMap(({ blocks }) => blocks.flatMap(ofBlock))
  }
}

export const saidBy = (card: Card): readonly (readonly string[])[] =>
  card.leaves.flatMap((leaf) =>
    leaf.sides.map((side) => [
      side.title,
      ...(card.notSound ? ['NOT SOUND', ...card.notSound] : []),
      ...side.blocks.flatMap(ofBlock),
    ]),
  )

/** Blanks say nothing: lines break where they must. */
export const bare = (text: string): string => text.replace(/[\s\u00a0]+/g, '')

/** The first piece that does not follow those before it in a text; nothing when all are said in order. */
export function missing(said: readonly string[], text: string): string | undefined {
  const whole = bare(text)
  let from = 0
  for (const piece of said) {
    const at = whole.indexOf(bare(piece), from)
    if (at < 0) return piece
    from = at + bare(piece).length
  }
  return undefined
}
