import { deflateSync, inflateSync, strFromU8, strToU8 } from 'fflate'

/** A job as a link carries it. */
export interface Carried {
  readonly text: string
  readonly shop?: string
}

/** Longer than any spec comes to, letters. */
const longest = 200_000

/** A job in letters that an address may hold. */
export const packed = ({ text, shop }: Carried): string => {
  const bytes = deflateSync(strToU8(JSON.stringify(shop === undefined ? [text] : [text, shop])), { level: 9 })
  let letters = ''
  for (const byte of bytes) letters += String.fromCharCode(byte)
  return btoa(letters).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '')
}

/** The job that an address holds; `undefined` where it holds none. */
export const unpacked = (address: string): Carried | undefined => {
  if (address.length > longest) return undefined
  try {
    const letters = atob(address.replaceAll('-', '+').replaceAll('_', '/'))
    // As much room as a spec may take: a few letters must not unfold without end.
    const room = new Uint8Array(1_100_000)
    const read: unknown = JSON.parse(
      strFromU8(
        inflateSync(
          Uint8Array.from(letters, (letter) => letter.charCodeAt(0)),
          { out: room },
        ),
      ),
    )
    if (!Array.isArray(read) || typeof read[0] !== 'string') return undefined
    return { text: read[0], ...(typeof read[1] === 'string' && { shop: read[1] }) }
  } catch {
    return undefined
  }
}
