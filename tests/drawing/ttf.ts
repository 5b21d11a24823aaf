import { readFileSync } from 'node:fs'
import { join } from 'node:path'

/** Advances of a TrueType font in its own units, read from cmap (format 4) and hmtx. */
export function advancesOf(name: string): { readonly unitsPerEm: number; advance(code: number): number | undefined } {
  const bytes = readFileSync(join(import.meta.dirname, '../../node_modules/dejavu-fonts-ttf/ttf', name))
  const table = (tag: string): number => {
    for (let i = 0; i < bytes.readUInt16BE(4); i++)
      if (bytes.toString('latin1', 12 + 16 * i, 16 + 16 * i) === tag) return bytes.readUInt32BE(12 + 16 * i + 8)
    throw new Error(`no table ${tag}`)
  }
  const cmap = table('cmap')
  let format4 = 0
  for (let i = 0; i < bytes.readUInt16BE(cmap + 2); i++) {
    const at = cmap + bytes.readUInt32BE(cmap + 4 + 8 * i + 4)
    if (bytes.readUInt16BE(at) === 4) format4 = at
  }
  const segments = bytes.readUInt16BE(format4 + 6) / 2
  const glyph = (code: number): number => {
    for (let i = 0; i < segments; i++) {
      const end = bytes.readUInt16BE(format4 + 14 + 2 * i)
      if (code > end) continue
      const start = bytes.readUInt16BE(format4 + 16 + 2 * (segments + i))
      if (code < start) return 0
      const delta = bytes.readUInt16BE(format4 + 16 + 2 * (2 * segments + i))
      const at = format4 + 16 + 2 * (3 * segments + i)
      const range = bytes.readUInt16BE(at)
      if (range === 0) return (code + delta) & 0xffff
      const found = bytes.readUInt16BE(at + range + 2 * (code - start))
      return found === 0 ? 0 : (found + delta) & 0xffff
    }
    return 0
  }
  const hmtx = table('hmtx')
  const metrics = bytes.readUInt16BE(table('hhea') + 34)
  return {
    unitsPerEm: bytes.readUInt16BE(table('head') + 18),
    advance: (code) => {
      const found = glyph(code)
      return found === 0 ? undefined : bytes.readUInt16BE(hmtx + 4 * Math.min(found, metrics - 1))
    },
  }
}
