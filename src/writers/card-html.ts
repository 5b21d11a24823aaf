/** A job card as one page of HTML that stands alone: for the phone at the machine, and for any printer. */
import {
  type Block,
  type Card,
  type Cell,
  type Column,
  isWords,
  type Leaf,
  type Picture,
  type Row,
  type Run,
  type Side,
  type Table,
  type Words,
} from '../card/document.ts'
import { airsOf } from '../card/flow.ts'
import { hasHeads, unbroken } from '../card/table.ts'
import { cardStyle, type CardFaces, type Sizes, widestOnPhone } from './card-style.ts'
import { oneLine } from './marks.ts'
import { escaped as inXml, groupsOf } from './svg.ts'

/** What the page is made with: sizes that its style must name, gathered while it is written. */
interface Writing {
  readonly card: Card
  readonly sizes: Sizes
  readonly sides: number
}

/**
 * A card as one self-contained file: faces inlined, no script, no request, no style attribute; every text escaped. Leaves and sides start a fresh
 * sheet when it is printed; on a narrow screen it is one column. The same card gives the same bytes.
 */
export function cardHtml(card: Card, faces: CardFaces): string {
  const writing: Writing = {
    card,
    sizes: { lengths: new Set(), least: new Set(), columns: new Set(), pictures: new Set() },
    sides: card.leaves.reduce((sum, leaf) => sum + leaf.sides.length, 0),
  }
  const airs = airsOf(card)
  let number = 0
  const sides = card.leaves.flatMap((leaf) =>
    leaf.sides.map((side, at) => {
      const air = airs[number] ?? 1
      return sideOf(leaf, side, at, ++number, air, writing)
    }),
  )
  const policy = "default-src 'none'; style-src 'unsafe-inline'; font-src data:"
  return `${[
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${policy}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="color-scheme" content="light">',
    '<meta name="generator" content="borewright">',
    `<title>${text(card.name)}: job card</title>`,
    `<style>\n${cardStyle(faces, writing.sizes)}</style>`,
    '</head>',
    '<body>',
    '<main>',
    `<h1 class="unseen">Job card: ${text(card.name)}, ${text(card.about)}, ${card.units}</h1>`,
    ...sides,
    '</main>',
    '</body>',
    '</html>',
  ].join('\n')}\n`
}

/** Text as HTML holds it: no markup. */
const text = (raw: string): string => inXml(oneLine(raw)).replaceAll("'", '&#39;')

function sideOf(leaf: Leaf, side: Side, at: number, number: number, air: number, writing: Writing): string {
  const { card } = writing
  const counted = leaf.sides.length > 1 ? `, side ${at + 1}` : ''
  const title = `${leaf.title.charAt(0).toLowerCase()}${leaf.title.slice(1)}${counted}: ${side.title}`
  const signed = side.blocks.some(({ block }) => block === 'job')
  return [
    `<section class="side ${leaf.leaf} air-${Math.round(air * 100)}" aria-labelledby="side-${number}">`,
    '<div class="matter">',
    `<header class="line"><h2 id="side-${number}"><b>Job card</b>, ${text(title)}</h2>`,
    `<p>${signed ? `borewright, ${card.units}` : `<b>${text(card.name)}</b>, ${text(card.about)}, ${card.units}`}</p></header>`,
    ...(card.notSound?.length
      ? [
          `<p class="unsound"><b class="large">NOT SOUND</b> Made although this is broken: <b>${text(card.notSound.join(', '))}</b></p>`,
        ]
      : []),
    ...side.blocks.map((block) => blockOf(block, writing)),
    '</div>',
    '<footer>',
    `<p>${text(card.deferral)}</p>`,
    `<p class="count">side ${number} of ${writing.sides}</p>`,
    '<p class="check">50 mm if printed true</p>',
    '</footer>',
    '</section>',
  ].join('\n')
}

function blockOf(block: Block, writing: Writing): string {
  const words = (some: Words): string => wordsOf(some, writing.sizes)
  switch (block.block) {
    case 'job':
      return `<div class="job"><div><p class="name">${text(block.name)}</p><p class="says">${words(block.says)}</p></div><p class="signed">by <span class="blank"></span> date <span class="blank"></span></p></div>`
    case 'heading':
      return `<div class="heading"><h3>${text(block.text)}</h3>${block.beside === undefined ? '' : `<p class="note">${words(block.beside)}</p>`}</div>`
    case 'paragraph':
      return `<p${block.size ? ` class="${block.size}"` : ''}>${words(block.words)}</p>`
    case 'caution':
      return [
        '<div class="caution" role="note">',
        ...block.says.map((each) => `<p><b class="large">${text(each.signal)}</b> ${words(each.words)}</p>`),
        ...(block.ticks?.length ? [row(block.ticks.map(words))] : []),
        '</div>',
      ].join('\n')
    case 'ticks':
      return block.inRow
        ? row(block.ticks.map((tick) => words(tick.words) + (tick.blank ? ` ${blank}` : '')))
        : `<ul class="ticks">\n${block.ticks
            .map((tick) => `<li>${box}<span class="do">${words(tick.words)}</span>${tick.blank ? blank : ''}</li>`)
            .join('\n')}\n</ul>`
    case 'list': {
      const tag = block.numbered ? 'ol' : 'ul'
      return `<${tag} class="list">\n${block.entries.map((entry) => `<li>${words(entry)}</li>`).join('\n')}\n</${tag}>`
    }
    case 'table':
      return tableOf(block, writing)
    case 'picture':
      return pictureOf(block.picture, writing.sizes)
    case 'sums':
      return `<ul class="sums">\n${block.sums
        .map(
          ({ from, says }) =>
            `<li><span class="sum">${from ? `<b>${text(from.number)} ${from.sign}</b> ${write} <b>=</b> ${write}` : write}</span> <span class="note">${words(says)}</span></li>`,
        )
        .join('\n')}\n</ul>`
    case 'columns': {
      const name = named(writing.sizes.columns, block.columns.map(({ width }) => width ?? 0).join(' '))
      return `<div class="columns columns-${name}">\n${block.columns
        .map((column) => `<div>\n${column.blocks.map((each) => blockOf(each, writing)).join('\n')}\n</div>`)
        .join('\n')}\n</div>`
    }
  }
}

/** The place of a size among those that the style names, from 1. */
function named<T>(known: Set<T>, size: T): number {
  known.add(size)
  return [...known].indexOf(size) + 1
}

const box = '<span class="tick"></span>'
const blank = '<span class="blank"></span>'
const write = '<span class="write"></span>'

const row = (ticks: readonly string[]): string =>
  `<ul class="row">\n${ticks.map((tick) => `<li>${box} ${tick}</li>`).join('\n')}\n</ul>`

function wordsOf(words: Words, sizes: Sizes): string {
  if (typeof words === 'string') return text(words)
  return words
    .map((run, at) => {
      const [before, after] = [words[at - 1], words[at + 1]]
      // A box is tied to the word after it, which it carries.
      if (isTick(run) && typeof after === 'string') return `<span class="tied">${box}${text(firstWord(after))}</span>`
      if (isTick(before) && typeof run === 'string') return text(run.slice(firstWord(run).length))
      return runOf(run, sizes)
    })
    .join('')
}

const isTick = (run: Run | undefined): boolean => typeof run === 'object' && 'tick' in run
const firstWord = (said: string): string => /^ *[^ ]*/.exec(said)?.[0] ?? ''

function runOf(run: Run, sizes: Sizes): string {
  if (typeof run === 'string') return text(run)
  if ('bold' in run) return `<b>${text(run.bold)}</b>`
  if ('large' in run) return `<b class="large">${text(run.large)}</b>`
  if ('dial' in run) return `<b class="dial">${text(run.dial)}</b>`
  if ('small' in run) return `<small>${text(run.small)}</small>`
  if ('dual' in run) return `<small class="dual">${text(run.dual)}</small>`
  if ('tick' in run) return box
  const [kind, length] = 'blank' in run ? (['blank', run.blank] as const) : (['write', run.box] as const)
  return length === true
    ? `<span class="${kind}"></span>`
    : `<span class="${kind} long-${named(sizes.lengths, length)}"></span>`
}

function pictureOf(picture: Picture, sizes: Sizes): string {
  const name = named(sizes.pictures, picture.width)
  const [w, h] = [picture.width, picture.height].map((side) => Number(side.toFixed(3)))
  const drawn = [
    `<div class="picture picture-${name}" role="img" aria-label="${text(`${picture.title}. ${picture.says}`)}">`,
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${w} ${h}" color="#000" xml:space="preserve">`,
    ...groupsOf(picture.strokes, picture.height),
    '</svg></div>',
  ].join('\n')
  return picture.width > widestOnPhone ? scrolling(picture.title, drawn) : drawn
}

/** What is wider than the screen scrolls in itself, by hand or by keyboard. */
const scrolling = (title: string, inside: string): string =>
  `<div class="scroll" role="region" aria-label="${text(title)}" tabindex="0">\n${inside}</div>`

function tableOf(table: Table, writing: Writing): string {
  const { sizes } = writing
  const heads = table.columns.map((column) => {
    const unit = column.unit === undefined ? '' : ` <small>${text(column.unit)}</small>`
    const least = column.width === undefined ? '' : `least-${named(sizes.least, column.width)}`
    const classes = [alignOf(column), column.grows ? 'grows' : '', least].filter((name) => name !== '').join(' ')
    const dress = classes === '' ? '' : ` class="${classes}"`
    return column.head.length === 0 && unit === ''
      ? `<td${dress}></td>`
      : `<th scope="col"${dress}>${wordsOf(unbroken(column.head), sizes)}${unit}</th>`
  })
  const after = table.columns.map((_, at) => mostAfterMark(table.rows, at))
  return scrolling(
    table.title,
    [
      '<table>',
      `<caption class="unseen">${text(table.title)}</caption>`,
      ...(hasHeads(table) ? [`<thead><tr>${heads.join('')}</tr></thead>`] : []),
      '<tbody>',
      ...table.rows.map((each) => rowOf(each, table, after, sizes)),
      '</tbody>',
      '</table>',
    ].join('\n'),
  )
}

const alignOf = ({ align }: Column): string => (align === 'decimal' || align === 'right' ? 'right' : '')

/** Digits after the decimal mark, and whether there is a mark. */
const afterMark = (number: string): number => {
  const mark = number.search(/[.,]/)
  return mark < 0 ? -1 : number.length - mark - 1
}

const mostAfterMark = (rows: readonly Row[], column: number): number =>
  rows.reduce((most, each) => {
    const cell = 'cells' in each ? each.cells[column] : undefined
    return typeof cell === 'object' && 'number' in cell ? Math.max(most, afterMark(cell.number)) : most
  }, -1)

function rowOf(each: Row, table: Table, after: readonly number[], sizes: Sizes): string {
  const count = table.columns.length
  if ('across' in each) {
    const tag = each.is === 'lane' ? `th scope="rowgroup"` : 'td'
    return `<tr class="${each.is}"><${tag} colspan="${count}">${wordsOf(each.across, sizes)}</${tag.slice(0, 2)}></tr>`
  }
  const spans = each.spans ?? 1
  const cells: string[] = []
  for (let at = 0; at < count; at++) {
    const column = table.columns[at]
    if (!column) continue
    const last = at === each.cells.length - 1 && spans > 1
    cells.push(
      cellOf(each.cells[at], column, after[at] ?? -1, at === 0 && (table.named ?? false), last ? spans : 1, sizes),
    )
    if (last) at += spans - 1
  }
  return `<tr>${cells.join('')}</tr>`
}

function cellOf(cell: Cell, column: Column, after: number, names: boolean, spans: number, sizes: Sizes): string {
  const span = spans > 1 ? ` colspan="${spans}"` : ''
  const dressed = (klass: string, inside: string): string => {
    const classes = klass.trim() === '' ? '' : ` class="${klass.trim()}"`
    return names ? `<th scope="row"${classes}${span}>${inside}</th>` : `<td${classes}${span}>${inside}</td>`
  }
  const side = spans > 1 ? '' : alignOf(column)
  if (cell === undefined) return dressed('', '')
  if (isWords(cell)) return dressed(side, wordsOf(unbroken(cell), sizes))
  if ('write' in cell) return dressed(cell.write === 'box' ? 'box' : 'ruled', '')
  if ('tick' in cell) return dressed('', `${box}${cell.tick.length > 0 ? ` ${wordsOf(cell.tick, sizes)}` : ''}`)
  const own = afterMark(cell.number)
  const missing = column.align === 'decimal' ? after - Math.max(0, own) : 0
  const pad = missing > 0 ? ` after-${Math.min(6, missing)}` : ''
  const unmarked = column.align === 'decimal' && own < 0 && after >= 0 ? ' unmarked' : ''
  const kind = `${cell.dial ? ' dial' : ''}${cell.bold ? ' bold' : ''}`
  const dual = cell.dual ? ` <small class="dual">${text(cell.dual)}</small>` : ''
  return dressed(side, `<span class="number${kind}${pad}${unmarked}">${text(cell.number)}</span>${dual}`)
}
