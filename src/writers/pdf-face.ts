/** A face in a PDF: the letters that are used of it. */
import type { PdfDocument } from './pdf-document.ts'
import { dictionary, list, number, to } from './pdf-objects.ts'
import type { Face } from './true-type.ts'

export interface Embedded {
  readonly face: Face
  /** `F1` */
  readonly name: string
  /** Its object, 0 until it is used. */
  object: number
  /** What is known of each letter: its code on the page, and its advance in thousandths of the size. */
  readonly letters: Map<string, { readonly code: string; readonly advance: number }>
  /** By code: the glyph, its advance, and the code points that it stands for. */
  readonly glyphs: number[]
  readonly advances: number[]
  readonly codePoints: number[]
}

/** A text in a face: the codes of its letters, and its length for a size of 1, whatever the unit. */
export interface SetText {
  readonly face: Embedded
  readonly codes: string
  readonly length: number
}

const perThousand = ({ unitsPerEm }: Face): number => 1000 / unitsPerEm

/** A face without any letter yet but the sign for what is missing. */
export const embedded = (face: Face, name: string): Embedded => ({
  face,
  name,
  object: 0,
  letters: new Map(),
  glyphs: [0],
  // The sign for what is missing is stated in the face's own units.
  advances: [face.advanceOf(0)],
  codePoints: [0],
})

const hex = (value: number): string => value.toString(16).padStart(4, '0')

/** The letter's code: that of its glyph, a new one where the glyph has none. */
function codeOf({ face, glyphs, advances, codePoints }: Embedded, letter: string) {
  const codePoint = letter.codePointAt(0) ?? 0
  const glyph = face.glyphOf(codePoint)
  const advance = face.advanceOf(glyph) * perThousand(face)
  let code = glyphs.indexOf(glyph)
  if (code < 0) {
    code = glyphs.push(glyph) - 1
    advances.push(advance)
    codePoints.push(codePoint)
  }
  return { code: hex(code), advance }
}

/** A text at the bare advances of its letters: no pair is moved, none is joined. */
export function setIn(face: Embedded, text: string): SetText {
  let codes = ''
  let length = 0
  for (const letter of text) {
    let known = face.letters.get(letter)
    if (!known) {
      known = codeOf(face, letter)
      face.letters.set(letter, known)
    }
    codes += known.code
    length += known.advance
  }
  return { face, codes, length: length / 1000 }
}

/** Writes a face's letters, its measures, and what its codes mean. */
export function putFace(document: PdfDocument, { face, name, object, glyphs, advances, codePoints }: Embedded): void {
  const file = document.reserved()
  const descriptor = document.reserved()
  const font = document.reserved()
  const meanings = document.reserved()
  const scaled = (value: number): number => number(value * perThousand(face))
  const tag = [1, 2, 3, 4, 5, 6].map((at) => String.fromCharCode((name.charCodeAt(at) || 73) + 17)).join('')
  const own = `/${tag}+${face.name}`
  const serif = face.familyClass >= 1 && face.familyClass <= 7
  const flags =
    (face.fixedPitch ? 1 : 0) | (serif ? 2 : 0) | 4 | (face.familyClass === 10 ? 8 : 0) | (face.italic ? 64 : 0)
  document.put(file, {}, face.subset(glyphs))
  document.put(descriptor, {
    Type: '/FontDescriptor',
    FontName: own,
    Flags: flags,
    FontBBox: list(face.box.map(scaled)),
    ItalicAngle: number(face.italicAngle),
    Ascent: scaled(face.ascent),
    Descent: scaled(face.descent),
    CapHeight: scaled(face.capHeight),
    XHeight: scaled(face.xHeight),
    StemV: 0,
    FontFile2: to(file),
  })
  document.put(font, {
    Type: '/Font',
    Subtype: '/CIDFontType2',
    BaseFont: own,
    CIDSystemInfo: dictionary({ Registry: '(Adobe)', Ordering: '(Identity)', Supplement: 0 }),
    FontDescriptor: to(descriptor),
    W: list([0, list(advances.map(number))]),
    CIDToGIDMap: '/Identity',
  })
  document.put(meanings, {}, meaningsOf(codePoints))
  document.put(object, {
    Type: '/Font',
    Subtype: '/Type0',
    BaseFont: own,
    Encoding: '/Identity-H',
    DescendantFonts: list([to(font)]),
    ToUnicode: to(meanings),
  })
}

/** The code points that codes stand for, so that text can be searched and copied. */
function meaningsOf(codePoints: readonly number[]): string {
  const entries = codePoints.map((codePoint) => {
    const letter = String.fromCodePoint(codePoint)
    return `<${Array.from({ length: letter.length }, (_, unit) => hex(letter.charCodeAt(unit))).join(' ')}>`
  })
  // A stretch of codes does not go over the end of its higher byte.
  const ranges = Array.from({ length: Math.ceil(entries.length / 256) }, (_, at) => {
    const own = entries.slice(256 * at, 256 * (at + 1))
    return `<${hex(256 * at)}> <${hex(256 * at + own.length - 1)}> [${own.join(' ')}]`
  })
  return `/CIDInit /ProcSet findresource begin
12 dict begin
begincmap
/CIDSystemInfo <<
  /Registry (Adobe)
  /Ordering (UCS)
  /Supplement 0
>> def
/CMapName /Adobe-Identity-UCS def
/CMapType 2 def
1 begincodespacerange
<0000><ffff>
endcodespacerange
${ranges.length} beginbfrange
${ranges.join('\n')}
endbfrange
endcmap
CMapName currentdict /CMap defineresource pop
end
end
`
}
