import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { describe, expect, inject, it } from 'vitest'
import { browsing, visit } from './visit.ts'

browsing()

const sizeOf = (folder: string): number =>
  readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .reduce((sum, entry) => sum + statSync(join(entry.parentPath, entry.name)).size, 0)

describe('what is loaded', () => {
  it('little at first; the rest comes when it is asked for', async () => {
    const assets = join(inject('built'), 'assets')
    const front = readFileSync(join(inject('built'), 'index.html'), 'utf8')
    const named = readdirSync(assets).filter((file) => front.includes(file) && /\.(?:js|css)$/.test(file))
    expect(named.length).toBeGreaterThan(1)
    const whole = named.reduce((sum, file) => sum + gzipSync(readFileSync(join(assets, file))).length, 0)
    expect(whole).toBeLessThan(60_000)
    const { page } = await visit()
    const asked: string[] = []
    page.on('request', (request) => asked.push(request.url()))
    await page.reload()
    await page.waitForSelector('.verdict .word')
    expect(asked.length).toBeGreaterThan(2)
    expect(asked.filter((url) => /wasm|ttf|three|pdf|mesh/.test(url))).toEqual([])
    expect(statSync(join(inject('built'), 'offline.js')).size).toBeLessThan(6_000)
  })

  it('nothing lies in the folder twice', () => {
    const assets = join(inject('built'), 'assets')
    const files = readdirSync(assets).map((file) => readFileSync(join(assets, file)))
    for (const [at, file] of files.entries()) expect(files.findIndex((other) => other.equals(file))).toBe(at)
    // The sheets' letters are 1.35 MB of it, solids to look at and to carve 1.1.
    expect(sizeOf(inject('built'))).toBeLessThan(4_800_000)
  })
})
