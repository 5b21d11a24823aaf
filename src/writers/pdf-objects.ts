/** How a PDF writes what it is made of. */

export type Entries = Readonly<Record<string, string | number>>

/** A number with at most six decimals and no exponent. */
export const number = (value: number): number => Math.round(value * 1e6) / 1e6

/** What leads to an object. */
export const to = (object: number): string => `${object} 0 R`
export const list = (items: readonly (string | number)[]): string => `[${items.join(' ')}]`
export const dictionary = (entries: Entries): string =>
  ['<<', ...Object.entries(entries).map(([key, value]) => `/${key} ${value}`), '>>'].join('\n')

const escapes: Readonly<Record<string, string>> = { '\n': 'n', '\r': 'r', '\t': 't', '\b': 'b', '\f': 'f' }
const bytesOfUnit = (unit: number): string => String.fromCharCode(unit >> 8, unit & 0xff)

/** A text, one sign a byte: as it is where every letter is ASCII, else in UTF-16 with its mark. */
export function literal(text: string): string {
  const units = Array.from({ length: text.length }, (_, at) => text.charCodeAt(at))
  const bytes = units.every((unit) => unit < 0x80) ? text : ['\xfe\xff', ...units.map(bytesOfUnit)].join('')
  return `(${bytes.replaceAll(/[\n\r\t\b\f()\\]/g, (sign) => `\\${escapes[sign] ?? sign}`)})`
}

/** Pieces one after the other, `length` bytes in all; of a text each sign is a byte. */
export function bytesOf(pieces: readonly (string | Uint8Array)[], length: number): Uint8Array {
  const whole = new Uint8Array(length)
  const encoder = new TextEncoder()
  let at = 0
  for (const piece of pieces) {
    if (typeof piece === 'string') {
      // Nearly everything is ASCII, of which a sign is a byte in UTF-8 too.
      const { read, written } = encoder.encodeInto(piece, whole.subarray(at))
      if (read !== piece.length || written !== read)
        for (let sign = 0; sign < piece.length; sign++) whole[at + sign] = piece.charCodeAt(sign)
    } else whole.set(piece, at)
    at += piece.length
  }
  return whole
}
