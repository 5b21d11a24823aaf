/** Reads a PDF back: its pages, and what they draw. */
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'

const mm = 25.4 / 72

export type Matrix = readonly [number, number, number, number, number, number]
export interface Path {
  /** Runs of points, mm, y up: ends of lines and curves; control points are left out. */
  readonly runs: readonly (readonly (readonly [number, number])[])[]
  readonly painted: 'stroke' | 'fill'
  readonly width: number
  readonly cap: number
}

export const open = async (bytes: Uint8Array) => await getDocument({ data: bytes.slice(), verbosity: 0 }).promise
export type Document = Awaited<ReturnType<typeof open>>

/** What a page draws, read from its operators, with every transform applied. */
export async function paths(document: Document, page: number): Promise<readonly Path[]> {
  const { fnArray, argsArray } = await (await document.getPage(page)).getOperatorList()
  let now = { matrix: [1, 0, 0, 1, 0, 0] as Matrix, width: 1, cap: 0 }
  const kept: (typeof now)[] = []
  const found: Path[] = []
  fnArray.forEach((operator, index) => {
    const args = argsArray[index] as unknown[]
    switch (operator) {
      case OPS.save:
        kept.push(now)
        break
      case OPS.restore:
        now = kept.pop() ?? now
        break
      case OPS.transform: {
        const [a, b, c, d, e, f] = args as unknown as Matrix
        const m = now.matrix
        now = {
          ...now,
          matrix: [
            a * m[0] + b * m[2],
            a * m[1] + b * m[3],
            c * m[0] + d * m[2],
            c * m[1] + d * m[3],
            e * m[0] + f * m[2] + m[4],
            e * m[1] + f * m[3] + m[5],
          ],
        }
        break
      }
      case OPS.setLineWidth:
        now = { ...now, width: args[0] as number }
        break
      case OPS.setLineCap:
        now = { ...now, cap: args[0] as number }
        break
      case OPS.constructPath: {
        const [paint, [data]] = args as [number, [Float32Array]]
        const numbers = Object.values(data)
        const runs: [number, number][][] = []
        const take = (at: number): void => {
          const [x, y] = [numbers[at] ?? Number.NaN, numbers[at + 1] ?? Number.NaN]
          const m = now.matrix
          runs.at(-1)?.push([(x * m[0] + y * m[2] + m[4]) * mm, (x * m[1] + y * m[3] + m[5]) * mm])
        }
        // 0 move, 1 line, 2 curve, 4 close: the reader's own codes.
        for (let at = 0; at < numbers.length; ) {
          const code = numbers[at]
          if (code === 0) runs.push([])
          if (code === 0 || code === 1) take(at + 1)
          else if (code === 2) take(at + 5)
          else if (code !== 4) throw new Error(`a code not known: ${code}`)
          at += code === 2 ? 7 : code === 4 ? 1 : 3
        }
        const painted =
          paint === OPS.fill ? 'fill' : paint === OPS.stroke || paint === OPS.closeStroke ? 'stroke' : undefined
        if (!painted) throw new Error(`painted otherwise: ${paint}`)
        found.push({ runs, painted, width: now.width * mm, cap: now.cap })
      }
    }
  })
  return found
}
