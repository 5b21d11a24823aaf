/** A TrueType file as far as putting it into a PDF asks: the glyphs of letters, their widths, and a file of a few glyphs alone. */

export interface Face {
  /** Its PostScript name, without blanks. */
  readonly name: string
  /** Lengths below are in units of which the em has so many. */
  readonly unitsPerEm: number
  readonly ascent: number
  readonly descent: number
  readonly capHeight: number
  readonly xHeight: number
  /** Round all of its glyphs: left, low, right, high. */
  readonly box: readonly [number, number, number, number]
  /** Degrees, leaning forward is negative. */
  readonly italicAngle: number
  readonly italic: boolean
  readonly fixedPitch: boolean
  /** IBM's class of its family, the upper byte of sFamilyClass: 1 to 7 have serifs, 10 is a script. */
  readonly familyClass: number
  /** The glyph of a code point; 0, the sign for what is missing, where it has none. */
  readonly glyphOf: (codePoint: number) => number
  readonly advanceOf: (glyph: number) => number
  /** A file of these glyphs, numbered as they stand here: what a PDF needs of it, without names and characters. The first must be 0. */
  readonly subset: (glyphs: readonly number[]) => Uint8Array
}

interface Table {
  readonly at: number
  readonly length: number
}

/**
 * Opens a TrueType file; what it gives reads on in the same bytes.
 * @throws RangeError when it is something else, or has no Unicode characters.
 */
export function openFace(file: Uint8Array): Face {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength)
  const tables = new Map<string, Table>()
  for (let entry = 0; entry < view.getUint16(4); entry++) {
    const at = 12 + 16 * entry
    tables.set(latin(file, at, 4), { at: view.getUint32(at + 8), length: view.getUint32(at + 12) })
  }
  const table = (tag: string): Table => {
    const found = tables.get(tag)
    if (!found) throw new RangeError(`not a TrueType file: it has no table '${tag}'`)
    return found
  }
  const [head, hhea, hmtx, maxp] = [table('head').at, table('hhea').at, table('hmtx').at, table('maxp').at]
  const [loca, glyf, post] = [table('loca').at, table('glyf').at, table('post').at]
  const os2 = tables.get('OS/2')?.at
  const measured = os2 !== undefined && view.getUint16(os2) >= 2
  const ascent = view.getInt16(hhea + 4)
  const wide = view.getUint16(hhea + 34)
  const long = view.getInt16(head + 50) === 1

  const advanceOf = (glyph: number): number => view.getUint16(hmtx + 4 * Math.min(glyph, wide - 1))
  const bearingOf = (glyph: number): number =>
    view.getInt16(glyph < wide ? hmtx + 4 * glyph + 2 : hmtx + 4 * wide + 2 * (glyph - wide))
  const placeOf = (glyph: number): number =>
    long ? view.getUint32(loca + 4 * glyph) : 2 * view.getUint16(loca + 2 * glyph)

  return {
    name: nameOf(file, view, table('name')).replaceAll(' ', '_'),
    unitsPerEm: view.getUint16(head + 18),
    ascent,
    descent: view.getInt16(hhea + 6),
    capHeight: measured ? view.getInt16(os2 + 88) : ascent,
    xHeight: measured ? view.getInt16(os2 + 86) : 0,
    box: [view.getInt16(head + 36), view.getInt16(head + 38), view.getInt16(head + 40), view.getInt16(head + 42)],
    italicAngle: view.getInt32(post + 4) / 65536,
    italic: (view.getUint16(head + 44) & 2) !== 0,
    fixedPitch: view.getUint32(post + 12) !== 0,
    familyClass: os2 === undefined ? 0 : view.getInt16(os2 + 30) >> 8,
    glyphOf: glyphsOf(view, table('cmap').at),
    advanceOf,
    subset: (wanted) => {
      const glyphs = [...wanted]
      const outlines: Uint8Array[] = []
      // A glyph that is put together of others brings them along, after those that were asked for.
      for (let at = 0; at < glyphs.length; at++) {
        const glyph = glyphs[at] ?? 0
        const outline = file.slice(glyf + placeOf(glyph), glyf + placeOf(glyph + 1))
        for (const part of partsOf(outline)) {
          const parts = new DataView(outline.buffer)
          const other = parts.getUint16(part)
          const known = glyphs.indexOf(other)
          parts.setUint16(part, known < 0 ? glyphs.push(other) - 1 : known)
        }
        outlines.push(outline)
      }
      const copied = (tag: string): Uint8Array | undefined => {
        const { at, length } = tables.get(tag) ?? { at: 0, length: 0 }
        return length > 0 ? file.slice(at, at + length) : undefined
      }
      return packed({
        head: file.slice(head, head + 54),
        hhea: patched(file.slice(hhea, hhea + 36), 34, glyphs.length),
        loca: placesOf(outlines, long),
        maxp: patched(file.slice(maxp, maxp + 32), 4, glyphs.length),
        'cvt ': copied('cvt '),
        prep: copied('prep'),
        glyf: joined(outlines),
        hmtx: joined(glyphs.map((glyph) => shorts(advanceOf(glyph), bearingOf(glyph)))),
        fpgm: copied('fpgm'),
      })
    },
  }
}

const latin = (file: Uint8Array, at: number, length: number): string =>
  String.fromCharCode(...file.subarray(at, at + length))

/** The PostScript name, which is plain ASCII: of two bytes a letter for Windows, of one for the Macintosh. */
function nameOf(file: Uint8Array, view: DataView, { at: name }: Table): string {
  for (let record = 0; record < view.getUint16(name + 2); record++) {
    const at = name + 6 + 12 * record
    if (view.getUint16(at + 6) !== 6) continue
    const said = latin(file, name + view.getUint16(name + 4) + view.getUint16(at + 10), view.getUint16(at + 8))
    return said.replaceAll('\0', '')
  }
  return ''
}

/** Where the Unicode characters may stand, the fullest first: platform and encoding. */
const unicode = [
  [3, 10],
  [0, 6],
  [0, 4],
  [3, 1],
  [0, 3],
  [0, 2],
  [0, 1],
  [0, 0],
] as const // prettier-ignore

function glyphsOf(view: DataView, cmap: number): Face['glyphOf'] {
  const entries = Array.from({ length: view.getUint16(cmap + 2) }, (_, entry) => cmap + 4 + 8 * entry)
  for (const [platform, encoding] of unicode) {
    const entry = entries.find((at) => view.getUint16(at) === platform && view.getUint16(at + 2) === encoding)
    if (entry === undefined) continue
    const at = cmap + view.getUint32(entry + 4)
    const format = view.getUint16(at)
    if (format === 4) return (codePoint) => bySegments(view, at, codePoint)
    if (format === 12) return (codePoint) => byGroups(view, at, codePoint)
  }
  throw new RangeError('a face without Unicode characters')
}

/** Format 4 of the table of characters: stretches of 16-bit codes, each with a shift or a list of its own. */
function bySegments(view: DataView, at: number, codePoint: number): number {
  const twice = view.getUint16(at + 6)
  for (let segment = 0; segment < twice; segment += 2) {
    if (codePoint > view.getUint16(at + 14 + segment)) continue
    const start = view.getUint16(at + 16 + twice + segment)
    if (codePoint < start) return 0
    const shift = view.getUint16(at + 16 + 2 * twice + segment)
    const place = at + 16 + 3 * twice + segment
    const list = view.getUint16(place)
    if (list === 0) return (codePoint + shift) & 0xffff
    const glyph = view.getUint16(place + list + 2 * (codePoint - start))
    return glyph === 0 ? 0 : (glyph + shift) & 0xffff
  }
  return 0
}

/** Format 12: stretches of 32-bit codes whose glyphs follow one another. */
function byGroups(view: DataView, at: number, codePoint: number): number {
  for (let group = 0; group < view.getUint32(at + 12); group++) {
    const own = at + 16 + 12 * group
    if (codePoint > view.getUint32(own + 4)) continue
    const start = view.getUint32(own)
    return codePoint < start ? 0 : view.getUint32(own + 8) + (codePoint - start)
  }
  return 0
}

/** Where an outline names the glyphs that it is put together of; nowhere in a plain one. */
function partsOf(outline: Uint8Array): readonly number[] {
  const view = new DataView(outline.buffer)
  if (outline.length === 0 || view.getInt16(0) >= 0) return []
  const parts: number[] = []
  for (let at = 10, more = true; more; ) {
    const flags = view.getUint16(at)
    parts.push(at + 2)
    at += 4 + (flags & 1 ? 4 : 2) + (flags & 8 ? 2 : flags & 0x40 ? 4 : flags & 0x80 ? 8 : 0)
    more = (flags & 0x20) !== 0
  }
  return parts
}

/** Offsets of outlines that follow one another, and the end of the last. */
function placesOf(outlines: readonly Uint8Array[], long: boolean): Uint8Array {
  const view = new DataView(new ArrayBuffer((long ? 4 : 2) * (outlines.length + 1)))
  let offset = 0
  for (let at = 0; at <= outlines.length; at++) {
    if (long) view.setUint32(4 * at, offset)
    else view.setUint16(2 * at, offset / 2)
    offset += outlines[at]?.length ?? 0
  }
  return new Uint8Array(view.buffer)
}

const shorts = (...values: readonly number[]): Uint8Array =>
  Uint8Array.from(values.flatMap((value) => [(value >> 8) & 0xff, value & 0xff]))

const patched = (bytes: Uint8Array, at: number, value: number): Uint8Array => {
  bytes.set(shorts(value), at)
  return bytes
}

/** Bytes one after the other. */
export function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0))
  let at = 0
  for (const piece of pieces) {
    whole.set(piece, at)
    at += piece.length
  }
  return whole
}

/** Tables as one file. Nobody who takes it out of a PDF looks at checksums: they are left at nothing. */
function packed(tables: Readonly<Record<string, Uint8Array | undefined>>): Uint8Array {
  const kept = Object.entries(tables).flatMap(([tag, table]) => (table ? [[tag, table] as const] : []))
  const power = Math.floor(Math.log2(kept.length))
  const range = 16 * 2 ** power
  const head = new DataView(new ArrayBuffer(12 + 16 * kept.length))
  const write = (tag: string, at: number): void =>
    [...tag].forEach((letter, index) => head.setUint8(at + index, letter.charCodeAt(0)))
  write('true', 0)
  for (const [index, value] of [kept.length, range, power, 16 * kept.length - range].entries())
    head.setUint16(4 + 2 * index, value)
  let offset = head.byteLength
  for (const [index, [tag, table]] of kept.entries()) {
    const at = 12 + 16 * index
    write(tag, at)
    head.setUint32(at + 8, offset)
    head.setUint32(at + 12, table.length)
    offset += table.length
  }
  return joined([new Uint8Array(head.buffer), ...kept.map(([, table]) => table)])
}
