/** The one style sheet of a card's HTML: black on white, sizes as on paper when printed, one column on a narrow screen. */

export interface CardFaces {
  /** Atkinson Hyperlegible Next as woff2 files of one weight each, 400 and 700: src/writers/faces. */
  readonly regular: Uint8Array
  readonly bold: Uint8Array
}

/** Sizes that the card uses, mm, each named by its place, from 1. */
export interface Sizes {
  /** Lines and boxes to write in. */
  readonly lengths: Set<number>
  /** Least widths of a table's columns. */
  readonly least: Set<number>
  /** Widths of columns side by side, parted by blanks; 0 shares what is left. */
  readonly columns: Set<string>
  readonly pictures: Set<number>
}

/** A picture that is wider, mm, would be too small to read on a phone: it keeps most of its width and scrolls. */
export const widestOnPhone = 125
const keeps = 0.85

const face = (weight: number, bytes: Uint8Array): string =>
  `@font-face { font-family: "Atkinson Hyperlegible Next"; font-weight: ${weight}; src: url(data:font/woff2;base64,${base64(bytes)}) format("woff2"); }`

const base64 = (bytes: Uint8Array): string => {
  let signs = ''
  // As many at a time as a call takes arguments.
  for (let at = 0; at < bytes.length; at += 4096) signs += String.fromCharCode(...bytes.subarray(at, at + 4096))
  return btoa(signs)
}

/** The style, its faces inlined. */
export const cardStyle = (faces: CardFaces, sizes: Sizes): string =>
  `${[
    face(400, faces.regular),
    face(700, faces.bold),
    ...[...sizes.lengths].map((length, at) => `.long-${at + 1} { width: ${mm(length)}; }`),
    ...[...sizes.least].map((length, at) => `.least-${at + 1} { min-width: ${mm(length)}; }`),
    ...[...sizes.pictures].map((width, at) => `.picture-${at + 1} { width: ${mm(width)}; }`),
    ...[...sizes.pictures].flatMap((width, at) =>
      width > widestOnPhone ? [`.picture-${at + 1} svg { min-width: ${mm(keeps * width)}; }`] : [],
    ),
    plain,
    '@media print, (min-width: 48em) {',
    '  .grows { width: 50%; }',
    ...[...sizes.columns].map(
      (widths, at) =>
        `  .columns-${at + 1} { grid-template-columns: ${widths
          .split(' ')
          .map((width) => (width === '0' ? 'minmax(0, 1fr)' : mm(Number(width))))
          .join(' ')}; }`,
    ),
    '}',
    printed,
  ].join('\n')}\n`

const mm = (length: number): string => `${Number(length.toFixed(3))}mm`

const plain = `* { box-sizing: border-box; }
html { font: 16px/1.35 "Atkinson Hyperlegible Next", "DejaVu Sans", Verdana, sans-serif; font-kerning: none; color: #000; background: #fff; }
body { margin: 0; }
main { max-width: 214mm; margin: 0 auto; padding: 12px; }
p, ul, ol, h2, h3 { margin: 0; padding: 0; font-size: inherit; }
h2, h3 { font-weight: 400; }
ul, ol { list-style: none; }
.unseen { position: absolute; width: 1px; height: 1px; margin: -1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
.side + .side { margin-top: 3em; }
.matter > * + *, .columns > div > * + * { margin-top: .8em; }
.line { display: flex; flex-wrap: wrap; justify-content: space-between; gap: 0 2em; padding-bottom: .25em; border-bottom: .35mm solid; font-size: .94em; }
.unsound { padding: .3em .8em; border: 1.2mm solid; }
.job { display: flex; flex-wrap: wrap; justify-content: space-between; align-items: flex-end; gap: .4em 2em; }
.job > div { flex: 1 1 18em; }
.name { font-size: 1.9em; font-weight: 700; line-height: 1.2; overflow-wrap: anywhere; }
.says { font-size: 1.05em; }
.signed { font-size: .9em; }
.large { font-size: 1.15em; }
.dial { font-size: 1.3em; font-weight: 700; }
.bold { font-weight: 700; }
.note, small { font-size: .88em; }
.dual { font-size: .8em; }
p.large { font-weight: 700; }
.tick { display: inline-block; width: 4.2mm; height: 4.2mm; margin-right: 1mm; border: .35mm solid; vertical-align: -.7mm; }
.tied { white-space: nowrap; }
.blank { display: inline-block; width: 17mm; max-width: 100%; height: 1em; border-bottom: .35mm solid; vertical-align: -.15em; }
.write { display: inline-block; width: 20mm; max-width: 100%; height: 7.4mm; border: .35mm solid; vertical-align: middle; }
.heading { position: relative; display: flex; flex-wrap: wrap; align-items: baseline; gap: 0 1em; padding-top: 2.6mm; border-top: .35mm solid; }
.heading::before { content: ""; position: absolute; left: 4mm; top: -.35mm; width: 5.2mm; height: 2.6mm; border: .35mm solid; border-top-color: #fff; }
.heading h3 { font-size: 1.25em; font-weight: 700; }
.matter > .heading + *, .columns > div > .heading + * { margin-top: .3em; }
.caution { padding: .45em 3mm .45em 3mm; border: .6mm solid; border-left-width: 3mm; }
.row { display: flex; flex-wrap: wrap; gap: .3em 1.5em; }
.caution .row { margin-top: .3em; font-weight: 700; font-size: .95em; }
.ticks li { display: flex; align-items: center; gap: 2mm; padding: .35em 0; border-bottom: .15mm solid; min-height: 2.4em; }
.ticks .tick { flex: none; }
.ticks .do { flex: 1; }
.ticks li > .blank { flex: none; align-self: flex-end; }
.do .tick { margin-left: 1mm; }
.list { padding-left: 1.6em; }
ol.list { list-style: decimal; }
ul.list { list-style: "·  "; padding-left: 1em; }
.scroll { overflow-x: auto; }
table { width: 100%; border-collapse: collapse; font-size: .97em; font-variant-numeric: tabular-nums; }
th, td { padding: .25em 1.4mm; border-bottom: .15mm solid; text-align: left; vertical-align: middle; }
th:first-child, td:first-child { padding-left: 0; }
thead th, thead td { vertical-align: bottom; border-bottom-width: .35mm; }
.right { text-align: right; white-space: nowrap; }
thead .right { white-space: normal; }
.number, .dual { white-space: nowrap; }
.after-1 { margin-right: 1ch; }
.after-2 { margin-right: 2ch; }
.after-3 { margin-right: 3ch; }
.after-4 { margin-right: 4ch; }
.after-5 { margin-right: 5ch; }
.after-6 { margin-right: 6ch; }
.unmarked { padding-right: .21em; }
td.box { min-width: 17mm; height: 7mm; border: .35mm solid; }
td.ruled { min-width: 17mm; }
td.ruled::after { content: ""; display: block; height: 1.4em; border-bottom: .35mm solid; }
.lane th, .stage td { font-weight: 700; border-bottom: .35mm solid; }
.stage td { border-top: .6mm solid; border-bottom: .6mm solid; }
.picture { max-width: 100%; }
.picture svg { display: block; width: 100%; height: auto; }
.sums { display: flex; flex-wrap: wrap; justify-content: space-between; gap: .8em 6mm; }
.sum { display: block; white-space: nowrap; }
.sum b { font-size: 1.2em; vertical-align: middle; }
.columns { display: grid; grid-template-columns: minmax(0, 1fr); gap: 1em 7mm; }
.columns > div { min-width: 0; }
footer { display: flex; flex-wrap: wrap; justify-content: space-between; align-items: flex-end; gap: .3em 5mm; margin-top: 1.5em; padding-top: .3em; border-top: .15mm solid; font-size: .8em; }
footer > :first-child { flex: 1 1 20em; }
.check { width: 50mm; text-align: center; border: solid; border-width: 0 .25mm .25mm; line-height: 1.2; padding-bottom: .5mm; }
/* A table wider than the screen scrolls in itself, its words unsqueezed. */
@media screen { .check { display: none; } }
@media screen and (max-width: 48em) {
  table { width: max-content; min-width: 100%; }
  th, td { max-width: 17em; }
}`

const printed = `@page { margin: 12mm 11mm 8mm; }
@media print {
  html { font-size: 10pt; line-height: 1.29; }
  main { max-width: none; width: 186mm; padding: 0; }
  .side { display: flex; flex-direction: column; min-height: 258mm; }
  .matter { flex: 1; }
  .side + .side { margin-top: 0; break-before: page; }
  .matter > * + *, .columns > div > * + * { margin-top: calc(2.4mm * var(--air)); }
  .matter > .heading + *, .columns > div > .heading + * { margin-top: calc(.8mm * var(--air)); }
  .matter > .line + * { margin-top: 1.4mm; }
  .air-100 { --air: .95; }
  .air-80 { --air: .75; }
  .air-60 { --air: .55; }
  .air-45 { --air: .4; }
  .line { font-size: 8.8pt; padding-bottom: .3mm; }
  .ticks li { min-height: 0; padding: calc(.4mm + .8mm * var(--air)) 0; }
  .caution { padding: calc(.8mm + .8mm * var(--air)) 2.4mm; }
  .caution .row { margin-top: 0; gap: .2em 1.1em; }
  .tick { margin-right: .6mm; }
  table { font-size: 9.5pt; }
  td.box { height: 7mm; }
  th, td { padding-top: calc(.1mm + .45mm * var(--air)); padding-bottom: calc(.1mm + .45mm * var(--air)); }
  .heading, .job, thead { break-after: avoid; }
  .caution, .columns, .picture, .sums > li, .ticks > li, .list > li, tr, .unsound { break-inside: avoid; }
  .scroll { overflow: visible; }
  footer { font-size: 8pt; }
  .count { font-size: 8.8pt; }
}`
