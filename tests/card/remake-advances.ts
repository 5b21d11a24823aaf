/** Writes src/card/advances.ts anew from the faces: `npx rolldown tests/card/remake-advances.ts --platform node -o tests/card/remake.mjs && node tests/card/remake.mjs`, then remove remake.mjs. */
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { advancesOf } from '../drawing/ttf.ts'

const face = (name: string) => advancesOf(`../../../src/writers/faces/AtkinsonHyperlegibleNext-${name}.ttf`)
const [regular, bold] = [face('Regular'), face('Bold')]
const rows: string[] = []
for (let code = 0x20; code < 0xfffe; code++) {
  const [upright, heavy] = [regular.advance(code), bold.advance(code)]
  // The soft hyphen and marks that stand on the letter before them are left out.
  if (upright && heavy && code !== 0xad) rows.push(`[${code},${upright},${heavy}]`)
}
writeFileSync(
  join(import.meta.dirname, '../../src/card/advances.ts'),
  `/** Made by tests/card/remake-advances.ts from Atkinson Hyperlegible Next at 400 and 700, figures all of one width: code point, advance, advance in bold, in thousandths of the size. */
// biome-ignore format: a table
export const advances: readonly (readonly [code: number, regular: number, bold: number])[] = [${rows.join(',')}]
`,
)
