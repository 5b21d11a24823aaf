/** Writes src/drawing/advances.ts anew from the font: `npx rolldown tests/drawing/remake-advances.ts --platform node -o tests/drawing/remake.mjs && node tests/drawing/remake.mjs`, then remove remake.mjs. */
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { advancesOf } from './ttf.ts'

const codes: number[] = []
for (let code = 0x20; code <= 0x7e; code++) codes.push(code)
for (let code = 0xa0; code <= 0x17f; code++) if (code !== 0xad) codes.push(code)
for (const letter of '–—‘’“”…−√≤≥≈□Δαβγκμφψ→←½¼¾⅛⅜⅝⅞') codes.push(letter.codePointAt(0) ?? 0)
const unique = [...new Set(codes)].toSorted((a, b) => a - b)
const regular = advancesOf('DejaVuSansCondensed.ttf')
const bold = advancesOf('DejaVuSansCondensed-Bold.ttf')
const known = unique.filter((code) => regular.advance(code) !== undefined && bold.advance(code) !== undefined)
const rows = known.map((code) => `[${code},${regular.advance(code)},${bold.advance(code)}]`).join(',')
writeFileSync(
  join(import.meta.dirname, '../../src/drawing/advances.ts'),
  `/** Made by tests/drawing/remake-advances.ts from DejaVu Sans Condensed 2.37: code point, advance, advance in bold, in font units. */
export const unitsPerEm = ${regular.unitsPerEm}
// biome-ignore format: a table
export const advances: readonly (readonly [code: number, regular: number, bold: number])[] = [${rows}]
`,
)
