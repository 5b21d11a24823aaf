import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { middle, told } from './told.ts'
import { browsing, newContext, openInvented, visit } from './visit.ts'

browsing()

/** From each of so many keys to the change of the picture, ms; the page is left in peace between them. */
const keyToPicture = async (page: Page, bores: readonly [string, string], keys: number): Promise<readonly number[]> => {
  const bore = page.getByLabel('Bore', { exact: true })
  await page.evaluate(() => {
    const kept = window as unknown as { times: number[] }
    kept.times = []
    let pressed: number | undefined
    addEventListener('keydown', () => (pressed = performance.now()), { capture: true })
    new MutationObserver(() => {
      if (pressed !== undefined) kept.times.push(performance.now() - pressed)
      pressed = undefined
    }).observe(document.querySelector('.pictures') ?? document, { childList: true, subtree: true })
  })
  for (let press = 0; press < keys; press += 1) {
    await bore.fill(bores[press % 2] ?? '')
    await bore.press('Enter')
    await page.waitForTimeout(800)
  }
  return page.evaluate(() => (window as unknown as { times: number[] }).times)
}

describe('the page', { timeout: 240_000 }, () => {
  it('from the first visit to a job and its picture', async () => {
    const times: number[] = []
    const cold: number[] = []
    for (let visits = 0; visits < 5; visits += 1) {
      const from = performance.now()
      const { page } = await visit({ within: await newContext(), sheets: true })
      const there = performance.now()
      await openInvented(page, 'a cider-mill pulley')
      await page.waitForSelector('.picture.section svg')
      times.push(there - from, performance.now() - there)
      // Its address, where nobody has been yet: the job with all its findings is the first that is seen.
      await page.waitForFunction(() => location.hash.length > 20)
      const address = page.url()
      // The page that was looked at would lay its sheets meanwhile.
      await page.close()
      const elsewhere = await (await newContext()).newPage()
      const opened = performance.now()
      await elsewhere.goto(address)
      await elsewhere.waitForSelector('.picture.section svg')
      cold.push(performance.now() - opened)
    }
    told('the page, opened for the first time', middle(times.filter((_, at) => at % 2 === 0)))
    told('a job opened, until its findings and its picture stand', middle(times.filter((_, at) => at % 2 === 1)))
    told(
      'an address with a job in it, opened for the first time, until its findings and its picture stand',
      middle(cold),
    )
    expect(times).toHaveLength(10)
  })

  for (const [called, says, bores] of [
    ['a cider-mill pulley', 'bar', ['24.5', '24']],
    ['a boat-winch gear', 'bar and broach', ['.88', '.875']],
    ['a chaff-cutter clutch', 'splines', ['23.02', '23']],
  ] as const)
    it(`from a key to the picture: ${says}`, async () => {
      const { page } = await visit({ within: await newContext(), sheets: true })
      await openInvented(page, called)
      await page.waitForSelector('.piece img')
      await page.waitForTimeout(1500)
      const times = await keyToPicture(page, bores, 20)
      expect(times.length).toBeGreaterThan(10)
      told(`a key to the picture, ${says}`, middle(times))
      told(`the same, the slowest of ${times.length}`, Math.max(...times))
    })

  it('the longest that the page itself is busy', async () => {
    const { page } = await visit({ within: await newContext(), sheets: true })
    await page.evaluate(() => {
      const kept = window as unknown as { long: number[] }
      kept.long = []
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries()) kept.long.push(entry.duration)
      }).observe({ type: 'longtask' })
    })
    await openInvented(page, 'a boat-winch gear')
    await page.waitForSelector('.piece img')
    await page.waitForTimeout(1000)
    const download = page.waitForEvent('download', { timeout: 90_000 })
    await page.getByRole('button', { name: /^Make everything/ }).click()
    await page.getByLabel('Length', { exact: true }).focus()
    for (let press = 0; press < 6; press += 1) {
      await page.keyboard.press('ArrowUp')
      await page.waitForTimeout(150)
    }
    await download
    const long = await page.evaluate(() => (window as unknown as { long: number[] }).long)
    // Under 50 ms is not told of.
    told(
      `the longest task of the page: a job opened, typed at and made (${long.length} over 50 ms; 50 is none)`,
      Math.max(50, ...long),
    )
  })
})
