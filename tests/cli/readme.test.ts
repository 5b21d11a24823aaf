import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { run } from './run.ts'

const folder = mkdtempSync(join(tmpdir(), 'borewright-readme-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const text = readFileSync(join(import.meta.dirname, '../../README.md'), 'utf8')
const shown = [...text.matchAll(/```yaml\n([\s\S]*?)```/g)].map(([, block]) => block ?? '')
const specs = shown.filter((block) => block.startsWith('name:'))
const shops = shown.filter((block) => !block.startsWith('name:'))

describe('every spec in the README', () => {
  it('is of a feature or a way that there is, each of them shown', () => {
    for (const kind of ['keyway:', 'spline:', 'socket:', 'slit:', 'groove:', 'press:', 'blind:'])
      expect(specs.filter((spec) => spec.includes(kind)).length, kind).toBeGreaterThan(0)
    expect(shops).toHaveLength(1)
  })

  it.each(specs.map((spec) => [/^name: (.*)/.exec(spec)?.[1] ?? '', spec]))('%s can be made', async (name, spec) => {
    writeFileSync(join(folder, `${name}.yaml`), spec)
    const { status, out, err } = await run(folder, ['check', `${name}.yaml`])
    expect(err).toBe('')
    expect(out).toMatch(/^\S+(?: can be made\b|: nothing is broken\b)/)
    expect(status).toBe(0)
  })

  it('can be made from the shop file beside it', async () => {
    writeFileSync(join(folder, 'shop.yaml'), shops[0] ?? '')
    writeFileSync(join(folder, 'from-shop.yaml'), `${specs[0] ?? ''}shop: shop.yaml\n`)
    const { status, err } = await run(folder, ['check', 'from-shop.yaml'])
    expect(err).toBe('')
    expect(status).toBe(0)
  })
})
