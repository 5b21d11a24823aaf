import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { strFromU8, unzipSync } from 'fflate'
import type { Download, Page } from 'playwright-core'
import { afterAll, describe, expect, it } from 'vitest'
import { run } from '../../cli/run.ts'
import { browsing, openInvented, specOf, untilSpec, visit } from './visit.ts'

browsing()

const folder = mkdtempSync(join(tmpdir(), 'borewright-made-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const bytesOf = async (download: Download): Promise<Buffer> => readFileSync(await download.path())

/** What the command line makes of the spec that lies on the page, by name. */
const made = async (page: Page, name: string, more: readonly string[] = []): Promise<ReadonlyMap<string, Buffer>> => {
  const home = mkdtempSync(join(folder, 'job-'))
  writeFileSync(join(home, `${name}.yaml`), await specOf(page))
  const { status, err } = await run(home, ['make', `${name}.yaml`, ...more])
  expect([status === 70, err.includes('bug')]).toEqual([false, false])
  const out = join(home, 'output', name)
  return new Map(readdirSync(out).map((file) => [file, readFileSync(join(out, file))]))
}

const downloads = async (page: Page, press: () => Promise<void>, count: number): Promise<readonly Download[]> => {
  const got: Download[] = []
  const all = new Promise<void>((resolve) => {
    page.on('download', (download) => {
      got.push(download)
      if (got.length === count) resolve()
    })
  })
  await press()
  await all
  return got
}

describe('what is made', { timeout: 180_000 }, () => {
  for (const [called, name] of [
    ['a cider-mill pulley', 'cider-mill-pulley'],
    ['a boat-winch gear', 'winch-drum-gear'],
    ['a chaff-cutter clutch', 'chaff-cutter-clutch'],
  ] as const)
    it(`everything of ${called}, byte for byte what the command line makes`, async () => {
      const { page, wrongs } = await visit()
      await openInvented(page, called)
      const expected = await made(page, name)
      const [zip] = await downloads(page, () => page.getByRole('button', { name: /^Make/ }).click(), 1)
      if (!zip) throw new Error('no zip came')
      expect(zip.suggestedFilename()).toBe(`${name}.zip`)
      const files = unzipSync(await bytesOf(zip))
      expect(Object.keys(files).toSorted()).toEqual([...expected.keys()].map((file) => `${name}/${file}`).toSorted())
      const other = [...expected].filter(([file, bytes]) => !bytes.equals(files[`${name}/${file}`] ?? Buffer.alloc(0)))
      expect(other.map(([file]) => file)).toEqual([])
      expect(wrongs).toEqual([])
    })

  it('one part in each format', async () => {
    const { page, wrongs } = await visit()
    await openInvented(page, 'a boat-winch gear')
    await page.waitForSelector('.piece')
    const expected = await made(page, 'winch-drum-gear', ['--formats', 'pdf,svg,dxf,dxf-live,stl,3mf,profile'])
    const piece = page.locator('.piece', { hasText: 'Guide bushing' }).first()
    for (const [says, file] of [
      ['SVG', 'guide-bushing.svg'],
      ['DXF', 'guide-bushing.dxf'],
      ['DXF, live dimensions', 'guide-bushing.live.dxf'],
      ['STL', 'guide-bushing.mm.stl'],
      ['3MF', 'guide-bushing.3mf'],
    ] as const) {
      const [download] = await downloads(
        page,
        () => piece.getByRole('button', { name: `Guide bushing, ${says}`, exact: true }).click(),
        1,
      )
      expect(download?.suggestedFilename()).toBe(file)
      expect(download && (await bytesOf(download)).equals(expected.get(file) ?? Buffer.alloc(0))).toBe(true)
      await page.waitForFunction(() => document.querySelector('.under-way')?.textContent === '')
    }
    const [drawings] = await downloads(page, () => page.getByRole('button', { name: 'All drawings, PDF' }).click(), 1)
    expect(drawings && (await bytesOf(drawings)).equals(expected.get('drawings.pdf') ?? Buffer.alloc(0))).toBe(true)
    await page.waitForFunction(() => document.querySelector('.under-way')?.textContent === '')
    const [numbers] = await downloads(page, () => page.getByRole('button', { name: 'The numbers, JSON' }).click(), 1)
    expect(numbers && (await bytesOf(numbers)).equals(expected.get('report.json') ?? Buffer.alloc(0))).toBe(true)
    expect(wrongs).toEqual([])
  })

  it('the sheets on the page are those that are made', async () => {
    const { page } = await visit()
    await openInvented(page, 'a cider-mill pulley')
    await page.waitForSelector('.piece img')
    const expected = await made(page, 'cider-mill-pulley', ['--formats', 'svg'])
    const shown = await page
      .evaluate(async () => {
        const images = [...document.querySelectorAll<HTMLImageElement>('.piece summary img')]
        return Promise.all(images.map(async (image) => (await fetch(image.src)).text()))
      })
      .catch(() => undefined)
    // A picture of its own cannot be asked for under the policy: then its size on the page says that it has loaded.
    if (shown === undefined)
      expect(
        await page
          .locator('.piece summary img')
          .evaluateAll((images) => images.every((image) => (image as HTMLImageElement).naturalWidth > 100)),
      ).toBe(true)
    else for (const svg of shown) expect([...expected.values()].map((bytes) => bytes.toString())).toContain(svg)
  })

  it('printing gives the job card, never the screen', async () => {
    const { page, wrongs } = await visit()
    await page.emulateMedia({ media: 'print' })
    expect(await page.locator('#page').isVisible()).toBe(true)
    await page.emulateMedia({ media: 'screen' })
    await openInvented(page, 'a cider-mill pulley')
    await page.waitForSelector('.has-card')
    expect(await page.locator('#card').isVisible()).toBe(false)
    await page.emulateMedia({ media: 'print' })
    expect(await page.locator('#page').isVisible()).toBe(false)
    const card = page.locator('#card main')
    expect(await card.isVisible()).toBe(true)
    expect(await card.textContent()).toContain('cider-mill-pulley')
    expect(await card.textContent()).toContain('Stop.')
    await page.emulateMedia({ media: 'screen' })
    const expected = await made(page, 'cider-mill-pulley', ['--formats', 'html,pdf'])
    for (const [says, file] of [
      ['PDF', 'card.pdf'],
      ['HTML', 'card.html'],
      ['With every sheet, PDF', 'packet.pdf'],
    ] as const) {
      const [download] = await downloads(
        page,
        () => page.getByRole('button', { name: `Job card, ${says}`, exact: true }).click(),
        1,
      )
      expect(download?.suggestedFilename()).toBe(file)
      expect(download && (await bytesOf(download)).equals(expected.get(file) ?? Buffer.alloc(0))).toBe(true)
      await page.waitForFunction(() => document.querySelector('.under-way')?.textContent === '')
    }
    expect(wrongs).toEqual([])
  })

  it('a spec is kept with what was typed, its order and its notes', async () => {
    const { page } = await visit()
    await openInvented(page, 'a cider-mill pulley')
    await page.getByLabel('Length', { exact: true }).fill('1-1/2 in')
    await page.getByLabel('Length', { exact: true }).press('Enter')
    await untilSpec(page, /length: 1-1\/2 in\n/)
    const [download] = await downloads(page, () => page.keyboard.press('Control+s'), 1)
    const text = download && strFromU8(await bytesOf(download))
    expect(download?.suggestedFilename()).toBe('cider-mill-pulley.yaml')
    expect(text).toMatch(/^# Invented: no such pulley exists\.\nname: cider-mill-pulley\n/)
    expect(text).toContain('length: 1-1/2 in\n')
    expect(text).toContain('hub: { outside: 62, material: grey iron }')
  })

  it('a broken job is made all the same when asked for, marked on every sheet', async () => {
    const { page, wrongs } = await visit()
    await openInvented(page, 'a cider-mill pulley')
    await page.getByLabel('Bar', { exact: true }).fill('22')
    await page.getByLabel('Bar', { exact: true }).press('Enter')
    await page.getByText('Will not go.', { exact: true }).waitFor()
    const expected = await made(page, 'cider-mill-pulley', ['--anyway'])
    const [zip] = await downloads(
      page,
      () => page.getByRole('button', { name: 'Make it anyway, marked on every sheet' }).click(),
      1,
    )
    const files = unzipSync(zip ? await bytesOf(zip) : Buffer.alloc(0))
    const other = [...expected].filter(
      ([file, bytes]) => !bytes.equals(files[`cider-mill-pulley/${file}`] ?? Buffer.alloc(0)),
    )
    expect(other.map(([file]) => file)).toEqual([])
    expect(strFromU8(files['cider-mill-pulley/cutter-bar.svg'] ?? new Uint8Array())).toContain('DO NOT MAKE')
    expect(wrongs).toEqual([])
  })
})
