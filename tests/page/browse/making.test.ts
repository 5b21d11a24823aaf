import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { strFromU8, unzipSync } from 'fflate'
import type { Download, Page } from 'playwright-core'
import { afterAll, describe, expect, it } from 'vitest'
import { run } from '../../cli/run.ts'
import { browsing, openInvented, specOf, untilSpec, visit } from './visit.ts'
import { thorough } from '../../thorough.ts'

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
  // The broken pulley below, and the clutch, by hand: `THOROUGH=1`.
  for (const [called, name] of [
    ['a boat-winch gear', 'winch-drum-gear'],
    ...(thorough ? [['a chaff-cutter clutch', 'chaff-cutter-clutch'] as const] : []),
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

  it.runIf(thorough)('every file by itself, each from its own button, byte for byte', async () => {
    const { page, wrongs } = await visit({ sheets: true })
    await openInvented(page, 'a cider-mill pulley')
    await page.waitForSelector('.piece img')
    const all = 'pdf,html,svg,dxf,dxf-live,stl,3mf,profile'
    const expected = await made(page, 'cider-mill-pulley', ['--formats', all])
    const got = new Map<string, string[]>()
    const files: Download[] = []
    page.on('download', (download) => files.push(download))
    const buttons = page.locator('.formats button, .make .pair button:not(.strong)')
    const names = (await buttons.allTextContents()).map((name) => name.trim())
    // Every format of the first part and of the last, every part in one of the formats, and what is of the whole job.
    const formatOf = (name: string): string =>
      /, ((?:PDF|DXF|DXF, live dimensions|SVG|STL|3MF|Profile))$/.exec(name)?.[1] ?? ''
    const partOf = (name: string): string => name.slice(0, -formatOf(name).length - 2)
    const ofParts = names.filter((name) => formatOf(name) !== '' && !/^(?:All|Job)/.test(name))
    const ends = [partOf(ofParts.at(0) ?? ''), partOf(ofParts.at(-1) ?? '')]
    const formats = [...new Set(ofParts.map(formatOf))].filter((format) => format !== 'PDF')
    const partsInOrder = [...new Set(ofParts.map(partOf))]
    const wanted = (name: string): boolean => {
      if (!ofParts.includes(name) || ends.includes(partOf(name))) return true
      const own = formats.filter((format) => ofParts.includes(`${partOf(name)}, ${format}`))
      return formatOf(name) === own[partsInOrder.indexOf(partOf(name)) % own.length]
    }
    for (const [at, says] of names.entries()) {
      // What prints opens the browser's own window.
      if (says === 'Print the job card' || !wanted(says)) continue
      const button = buttons.nth(at)
      files.length = 0
      await button.click()
      await expect.poll(() => files.length, { timeout: 60_000 }).toBeGreaterThan(0)
      await page.waitForFunction(() => document.querySelector('.under-way')?.textContent === '')
      const other = []
      for (const file of files) {
        const name = file.suggestedFilename()
        const bytes = await bytesOf(file)
        // The sheets of one part alone are no file of the whole job's.
        if (says.endsWith(', PDF') && !expected.has(name)) expect(bytes.subarray(0, 5).toString()).toBe('%PDF-')
        else if (expected.get(name)?.equals(bytes) !== true) other.push(name)
      }
      expect([says, other]).toEqual([says, []])
      got.set(
        says,
        files.map((file) => file.suggestedFilename()),
      )
    }
    expect(got.get('All drawings, PDF')).toEqual(['drawings.pdf'])
    expect(got.get('The numbers, JSON')).toEqual(['report.json'])
    expect(got.get('Job card, PDF')).toEqual(['card.pdf'])
    expect(got.get('Job card, HTML')).toEqual(['card.html'])
    expect(got.get('Job card, With every sheet, PDF')).toEqual(['packet.pdf'])
    // Nothing that was to be had is left out: what has no button of its own lies beside every job.
    expect(partsInOrder.length).toBe([...expected.keys()].filter((file) => file.endsWith('.mm.stl')).length)
    expect([...got.keys()].map(partOf)).toEqual(expect.arrayContaining(partsInOrder))
    expect(wrongs).toEqual([])
  })

  it.runIf(thorough)('one part as a PDF of its own, as the command line makes it', async () => {
    const { page } = await visit({ sheets: true })
    await openInvented(page, 'a boat-winch gear')
    await page.waitForSelector('.piece img')
    const expected = await made(page, 'winch-drum-gear', ['--formats', 'pdf', '--parts', 'guide-bushing'])
    const [sheets] = await downloads(
      page,
      () => page.getByRole('button', { name: 'Guide bushing, PDF', exact: true }).click(),
      1,
    )
    expect(sheets?.suggestedFilename()).toBe('guide-bushing.pdf')
    expect(sheets && (await bytesOf(sheets)).equals(expected.get('drawings.pdf') ?? Buffer.alloc(0))).toBe(true)
  })

  it.runIf(thorough)('the sheets on the page are those that are made', async () => {
    const { page } = await visit({ sheets: true })
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
    const { page, wrongs } = await visit({ sheets: true })
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

  it.runIf(thorough)('a broken job is made all the same when asked for, marked on every sheet', async () => {
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
