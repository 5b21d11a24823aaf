import { PassThrough } from 'node:stream'
import { describe, expect, it } from 'vitest'
import { ask } from '../../src/cli/asking.ts'

/** Asks, typing the next text each time that a question stands there. */
const asked = async (typing: readonly string[], taken?: (name: string) => string | undefined) => {
  const [input, output] = [new PassThrough(), new PassThrough()]
  const left = [...typing]
  const complaints: string[] = []
  output.setEncoding('utf8').on('data', (text: string) => {
    if (text.includes('] ')) setImmediate(() => input.write(left.shift() ?? '\u0004'))
  })
  const answers = await ask({ complain: (text) => complaints.push(text) }, 'pulley', taken, { input, output })
  return { answers, complaints }
}

describe('questions at a terminal', () => {
  it('Enter takes what stands in brackets', async () => {
    expect((await asked(['\r', 'in\r', '\r', '2-1/4\r'])).answers).toEqual({
      units: 'in',
      answers: { name: 'pulley', diameter: '7/8', length: '2-1/4' },
    })
  })

  it('Ctrl+C and Ctrl+D are a way out, at any question', async () => {
    for (const key of ['\u0003', '\u0004'])
      for (const before of [[], ['gear\r'], ['gear\r', 'mm\r', '30\r']])
        expect((await asked([...before, key])).answers).toBe(undefined)
  })

  it('what cannot be read is asked for again, and so is a name that is taken', async () => {
    const { answers, complaints } = await asked(
      ['a b\r', 'gear\r', 'drum\r', 'mm\r', 'thick\r', '30\r', '\r'],
      (name) => (name === 'gear' ? 'gear is there' : undefined),
    )
    expect(answers?.answers).toEqual({ name: 'drum', diameter: '30', length: '38' })
    expect(complaints).toEqual([expect.stringContaining('Letters'), 'gear is there', expect.stringContaining('thick')])
  })
})
