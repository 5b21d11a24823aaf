// What `npm run examples` puts beside the made folders: a picture of each example's section, and one page that shows them all.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { type Design, design } from '../src/design.ts'
import { onPaper } from '../src/figures/figure.ts'
import { sectionFigure } from '../src/figures/section.ts'
import { strokesOf } from '../src/figures/strokes.ts'
import { parse } from '../src/spec/parse.ts'
import { readSpec } from '../src/spec/read.ts'
import { escaped, groupsOf } from '../src/writers/svg.ts'

const root = join(import.meta.dirname, '..')

interface Example {
  /** Of specimen and folder. */
  readonly name: string
  /** One line on what it is. */
  readonly what: string
}

/** In the order in which they are shown; tests/examples.mjs makes them. */
export const examples: readonly Example[] = [
  { name: 'cider-mill-pulley', what: 'A keyway by ISO 773, cut with a bar on the lathe. Every format there is.' },
  { name: 'winch-drum-gear', what: 'A keyway by ASME B17.1, in inches, by bar on the mill or by broach on a press.' },
  {
    name: 'chaff-cutter-clutch',
    what: 'Six splines by ISO 14, slot by slot, turned from one to the next with a plate.',
  },
  { name: 'threshing-drum-boss', what: 'Two keyways a quarter apart, one after the other at every gate.' },
  { name: 'cheese-press-cap', what: 'A keyway in a blind bore, run out into a relief groove.' },
  { name: 'sluice-gate-wheel', what: 'A square socket, its four corners cut with a V.' },
  { name: 'engraver-collet', what: 'Three slits, cut from inside through the wall of a collet.' },
  { name: 'line-shaft-bush', what: 'Two oil grooves in a bronze bush, cut with a round nose.' },
  { name: 'tuning-knob', what: 'A keyway in a 1/4 in bore: the bar is ground of one piece with its nose.' },
  {
    name: 'press-slide',
    what: 'A bar of 8 asked for in a bore of 10: refused, and drawn all the same to show the mark.',
  },
]

const designed = ({ name }: Example): Design => {
  const parsed = parse(readFileSync(join(root, `tests/specimens/${name}.yaml`), 'utf8'))
  const read = 'document' in parsed ? readSpec(parsed.document) : parsed
  if ('complaints' in read) throw new Error(JSON.stringify(read.complaints))
  return design(read.spec)
}

const folded = ({ name }: Example): readonly string[] =>
  (
    JSON.parse(readFileSync(join(root, 'output/examples', name, 'manifest.json'), 'utf8')) as {
      readonly files: readonly { readonly name: string }[]
    }
  ).files.map((file) => file.name)

/** The section with the nose on the floor, on white. */
export const pictureOf = (example: Example): string => {
  const figure = sectionFigure(designed(example), 'floor', onPaper(110, 100))
  const margin = 3
  const [width, height] = [figure.width, figure.height].map((side) => Number((side + 2 * margin).toFixed(3)))
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${-margin} ${-margin} ${width} ${height}" width="${width}mm" height="${height}mm" role="img" color="#000" font-family="DejaVu Sans Condensed, DejaVu Sans, Arial Narrow, sans-serif" xml:space="preserve">`,
    `<title>${escaped(`${example.name}: ${figure.title}`)}</title>`,
    `<desc>${escaped(figure.says)}</desc>`,
    `<rect x="${-margin}" y="${-margin}" width="${width}" height="${height}" fill="#fff"/>`,
    ...groupsOf(strokesOf(figure), figure.height),
    '</svg>\n',
  ].join('\n')
}

const verdicts = {
  pass: 'sound',
  caution: 'sound, with something to mind',
  unknown: 'not all can be told',
  fail: 'refused',
} as const

/** What each kind of file is for, in the order in which they are looked at. */
const kinds: readonly (readonly [label: string, files: RegExp])[] = [
  ['Read first', /^(?:packet\.pdf|card\.html)$/],
  ['Print or read', /^(?:card|drawings)\.pdf$/],
  ['For a drawing program', /(?<!\.profile)\.dxf$/],
  ['To cut or scribe at 1:1', /\.profile\.(?:dxf|svg)$/],
  ['Solids', /\.(?:stl|3mf)$/],
  ['Numbers', /\.(?:json|yaml)$/],
]

const article = (example: Example): string => {
  const { name, what } = example
  const { verdict, findings } = designed(example)
  const files = folded(example)
  const link = (file: string): string => `<a href="${name}/${file}">${file}</a>`
  const sheets = files.filter((file) => file.endsWith('.svg') && !file.endsWith('.profile.svg'))
  const minded = findings.filter((finding) => finding.verdict !== 'pass')
  return [
    `<article id="${name}">`,
    `<h2>${name}</h2>`,
    `<p><strong class="${verdict}">${verdicts[verdict]}</strong> ${escaped(what)}</p>`,
    ...(minded.length === 0 ? [] : ['<ul>', ...minded.map(({ reason }) => `<li>${escaped(reason)}</li>`), '</ul>']),
    '<div class="pictures">',
    `<figure class="section"><img src="pictures/${name}.svg" alt="Section of the bore, the nose on the floor" loading="lazy"></figure>`,
    ...sheets.map(
      (file) =>
        `<figure><a href="${name}/${file}"><img src="${name}/${file}" alt="" loading="lazy"></a><figcaption>${link(file)}</figcaption></figure>`,
    ),
    '</div>',
    '<dl>',
    ...kinds.flatMap(([label, pattern]) => {
      const own = files.filter((file) => pattern.test(file))
      return own.length === 0 ? [] : [`<dt>${label}</dt><dd>${own.map(link).join(' ')}</dd>`]
    }),
    '</dl>',
    '</article>',
  ].join('\n')
}

const style = `
:root { color-scheme: light dark; --ink: #1c1f22; --paper: #f4f4f1; --line: #b9bcbd; --good: #1d6b3c; --mind: #8a5a00; --bad: #a3261f }
@media (prefers-color-scheme: dark) { :root { --ink: #e6e6e2; --paper: #1b1d1f; --line: #4b5054; --good: #7fcf9c; --mind: #e0b25a; --bad: #ff9b90 } }
body { margin: 0 auto; max-width: 76rem; padding: 1.5rem; color: var(--ink); background: var(--paper); font: 1rem/1.5 system-ui, sans-serif }
a { color: inherit }
nav { display: flex; flex-wrap: wrap; gap: .25rem 1.25rem }
article { border-top: 1px solid var(--line); margin-top: 2rem }
strong { margin-right: .75em } .pass, .caution { color: var(--good) } .unknown { color: var(--mind) } .fail { color: var(--bad) }
.pictures { display: grid; grid-template-columns: repeat(auto-fill, minmax(15rem, 1fr)); gap: 1rem; align-items: start }
@media (min-width: 40rem) { .section { grid-column: span 2; grid-row: span 2 } }
figure { margin: 0 } img { width: 100%; height: auto; display: block; background: #fff; border: 1px solid var(--line) }
figcaption, dd { font-size: .875rem } dl { display: grid; grid-template-columns: max-content 1fr; gap: .25rem 1.25rem }
dd { margin: 0 } dd a { display: inline-block; margin-right: .75em }
@media (max-width: 40rem) { dl { grid-template-columns: 1fr } dd { margin-bottom: .5rem } }
`

/** The page of all examples: one file, no script, nothing from elsewhere. */
export const gallery = (): string =>
  `${[
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<title>borewright: examples</title>',
    `<style>${style}</style>`,
    '</head>',
    '<body>',
    '<h1>What borewright makes</h1>',
    '<p>Each folder is what one command wrote from one short spec, which lies in it. The jobs are invented: no such pulley, gear or collet stands anywhere. Sheets are true to scale at 100 %.</p>',
    `<nav>${examples.map(({ name }) => `<a href="#${name}">${name}</a>`).join(' ')}</nav>`,
    ...examples.map(article),
    '</body>',
    '</html>',
  ].join('\n')}\n`
