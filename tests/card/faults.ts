/** What can go wrong on a side of paper. */
import { flow, onPaper, type Page, papers } from '../../src/card/flow.ts'
import { capHeight, pointsPerMm } from '../../src/card/letters.ts'
import type { Mark } from '../../src/card/marks.ts'

interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
  readonly what: string
}

/** The room that words take: capitals' height, and what hangs under the line. */
const boxOf = (mark: Extract<Mark, { mark: 'words' }>): Box => {
  const em = mark.size / pointsPerMm
  return {
    left: mark.x,
    right: mark.x + mark.width,
    top: mark.y - capHeight * em,
    bottom: mark.y + 0.22 * em,
    what: mark.text,
  }
}
/** What a picture, a bar, a box to write in or to tick covers. */
const coversOf = (mark: Mark): readonly Box[] => {
  if (mark.mark === 'picture')
    return [
      {
        left: mark.x,
        top: mark.y,
        right: mark.x + mark.picture.width,
        bottom: mark.y + mark.picture.height,
        what: 'picture',
      },
    ]
  if (mark.mark === 'bar' || (mark.mark === 'box' && mark.is !== 'rim'))
    return [{ left: mark.x, top: mark.y, right: mark.x + mark.width, bottom: mark.y + mark.height, what: mark.mark }]
  if (mark.mark === 'line')
    return [
      {
        left: Math.min(mark.from[0], mark.to[0]),
        right: Math.max(mark.from[0], mark.to[0]),
        top: Math.min(mark.from[1], mark.to[1]),
        bottom: Math.max(mark.from[1], mark.to[1]),
        what: 'line',
      },
    ]
  return []
}
const meet = (a: Box, b: Box, by = 0.01): boolean =>
  a.left < b.right - by && b.left < a.right - by && a.top < b.bottom - by && b.top < a.bottom - by
/** A line has no room of its own: it strikes a text when it runs through its letters. */
const struck = (text: Box, line: Box): boolean => {
  const [across, down] = line.right - line.left < line.bottom - line.top ? [0.02, 0] : [0, 0.02]
  const thick = {
    left: line.left - across,
    right: line.right + across,
    top: line.top - down,
    bottom: line.bottom + down,
  }
  return meet({ ...thick, what: line.what }, { ...text, bottom: text.bottom - 0.1 })
}

/** What is wrong with a page: words over words, words over what is drawn, anything off the matter or the paper. */
export function faults({ paper, marks }: Page): readonly string[] {
  const found: string[] = []
  const left = (paper.width - 186) / 2
  const texts = marks.flatMap((mark) => (mark.mark === 'words' && mark.text.trim() !== '' ? [boxOf(mark)] : []))
  const covers = marks.flatMap(coversOf)
  texts.forEach((text, at) => {
    if (text.left < left - 0.01 || text.right > left + 186.01) found.push(`${text.what}: beside the matter`)
    if (text.top < 10 || text.bottom > paper.height - 5) found.push(`${text.what}: off the paper`)
    for (const other of texts.slice(at + 1)) if (meet(text, other)) found.push(`${text.what} over ${other.what}`)
    for (const cover of covers)
      if (cover.what === 'line' ? struck(text, cover) : meet(text, cover))
        found.push(`${text.what} over a ${cover.what}`)
  })
  for (const cover of covers) {
    if (cover.left < left - 0.7 || cover.right > left + 186.7) found.push(`${cover.what}: beside the matter`)
    if (cover.bottom > paper.height - 7) found.push(`${cover.what}: off the paper`)
  }
  return found
}

/** Sides on either paper. */
export const both = (sides: ReturnType<typeof flow>): readonly Page[] =>
  sides.flatMap((side) => [onPaper(side, papers.A4), onPaper(side, papers.Letter)])
