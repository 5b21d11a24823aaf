import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { run } from './run.ts'

const specimens = join(import.meta.dirname, '../specimens')

describe('check --picture', () => {
  it('shows bore, bar and bit in plain characters, under what it tells', async () => {
    const { status, out } = await run(specimens, ['check', 'cider-mill-pulley.yaml', '--picture'])
    expect(status).toBe(0)
    expect(out).toMatch(/^\/+ +o+ +\/+$/m)
    expect(out).toMatch(/o+#+\/+$/m)
    expect((await run(specimens, ['check', 'cider-mill-pulley.yaml'])).out).not.toMatch(/#{5}/)
  })
})
