/** MD5 (RFC 1321): a PDF is named by it. It is no secret and no proof. */

const turns = [7, 12, 17, 22, 5, 9, 14, 20, 4, 11, 16, 23, 6, 10, 15, 21]
// RFC 1321 3.4: whole parts of 2³² |sin i|.
const sines = Array.from({ length: 64 }, (_, index) => Math.floor(2 ** 32 * Math.abs(Math.sin(index + 1))))

/** The digest as 32 hexadecimal digits. */
export function md5(bytes: Uint8Array): string {
  const padded = new DataView(new ArrayBuffer(64 * Math.ceil((bytes.length + 9) / 64)))
  new Uint8Array(padded.buffer).set(bytes)
  padded.setUint8(bytes.length, 0x80)
  padded.setBigUint64(padded.byteLength - 8, 8n * BigInt(bytes.length), true)
  const state: [number, number, number, number] = [0x67452301, 0xefcdab89, 0x98badcfe, 0x10325476]
  for (let block = 0; block < padded.byteLength; block += 64) {
    let [a, b, c, d] = state
    for (let step = 0; step < 64; step++) {
      const round = step >> 4
      const mixed = [(b & c) | (~b & d), (d & b) | (~d & c), b ^ c ^ d, c ^ (b | ~d)][round] ?? 0
      const word = (([1, 5, 3, 7][round] ?? 1) * step + ([0, 1, 5, 0][round] ?? 0)) % 16
      const sum = (a + mixed + (sines[step] ?? 0) + padded.getUint32(block + 4 * word, true)) | 0
      const turn = turns[4 * round + (step % 4)] ?? 0
      ;[a, d, c, b] = [d, c, b, (b + ((sum << turn) | (sum >>> (32 - turn)))) | 0]
    }
    state[0] = (state[0] + a) | 0
    state[1] = (state[1] + b) | 0
    state[2] = (state[2] + c) | 0
    state[3] = (state[3] + d) | 0
  }
  const digest = new DataView(new ArrayBuffer(16))
  for (const [index, value] of state.entries()) digest.setInt32(4 * index, value, true)
  return [...new Uint8Array(digest.buffer)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}
