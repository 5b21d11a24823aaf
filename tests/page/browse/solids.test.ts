import { type Browser, chromium, type Page } from 'playwright-core'
import { afterAll, describe, expect, inject, it } from 'vitest'
import { withSolids } from '../browser.ts'
import { violations } from './axe.ts'
import { browsing, newContext, openInvented, visit } from './visit.ts'
import { thorough } from '../../thorough.ts'

/** As many stages as may stand at once: so few, that leaving one behind at each look soon tells. */
const stages = 4
browsing([...withSolids, `--max-active-webgl-contexts=${stages}`])
/** Small: every point of it is worked out by the processor. */
const small = { viewport: { width: 1160, height: 560 } }
let without: Browser | undefined
afterAll(async () => {
  await without?.close()
})

const inTheRound = async (page: Page): Promise<void> => {
  await openInvented(page, 'a cider-mill pulley')
  await page.getByLabel('In the round', { exact: true }).check()
}
const solidsThere = async (page: Page): Promise<void> => {
  await page.waitForSelector('canvas.solids', { timeout: 60_000 })
}
/** What is seen of it, letter by letter, once it stands still. */
const seen = async (page: Page): Promise<string> => {
  const shot = async (): Promise<string> => {
    await page.evaluate(
      () => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(() => resolve(undefined)))),
    )
    return (await page.locator('canvas.solids').screenshot()).toString('base64')
  }
  let before = await shot()
  for (;;) {
    const now = await shot()
    if (now === before) return now
    before = now
  }
}

describe('in the round', { timeout: 120_000 }, () => {
  it('the solids come, turn by buttons, keys and dragging, come nearer and are cut open', async () => {
    const { page, wrongs } = await visit(small)
    await inTheRound(page)
    await solidsThere(page)
    const canvas = page.locator('canvas.solids')
    expect(await canvas.getAttribute('aria-label')).toMatch(/^In the round: cutter bar, tool bit/)
    const first = await seen(page)
    const changed: string[] = [first]
    const look = async (): Promise<void> => {
      const now = await seen(page)
      expect(changed).not.toContain(now)
      changed.push(now)
    }
    await page.getByRole('button', { name: 'Turn left' }).click()
    await look()
    await canvas.focus()
    await page.keyboard.press('ArrowUp')
    await look()
    const box = await canvas.boundingBox()
    if (!box) throw new Error('no canvas')
    await page.mouse.move(box.x + 200, box.y + 200)
    await page.mouse.down()
    await page.mouse.move(box.x + 300, box.y + 240, { steps: 4 })
    await page.mouse.up()
    await look()
    await page.keyboard.press('+')
    await look()
    await page.mouse.wheel(0, -100)
    await look()
    await page.getByRole('checkbox', { name: 'Cut open' }).check()
    await look()
    await page.getByRole('slider', { name: 'Where it is cut' }).fill('0.3')
    await look()
    await page.getByRole('checkbox', { name: 'Cut open' }).uncheck()
    await page.getByRole('button', { name: 'As at first' }).click()
    await canvas.evaluate((on) => on.blur())
    expect(await seen(page)).toBe(first)
    await page.getByRole('radio', { name: 'Tool bit' }).check()
    await look()
    expect(await canvas.getAttribute('aria-label')).toMatch(/^In the round: tool bit\b/)
    await page.getByLabel('Night', { exact: true }).check()
    await look()
    expect(wrongs).toEqual([])
  })

  it('carved anew when the job changes, and left without a trace', async () => {
    const { page, wrongs } = await visit(small)
    await inTheRound(page)
    await solidsThere(page)
    await page.getByRole('button', { name: 'Turn left' }).click()
    const before = await seen(page)
    const length = page.getByLabel('Length', { exact: true })
    const told = await length.inputValue()
    await length.fill('60')
    await length.press('Enter')
    while ((await seen(page)) === before);
    // What is looked at stays as it was turned: the same job looks the same again.
    await length.fill(told)
    await length.press('Enter')
    while ((await seen(page)) !== before);
    for (let times = 0; times <= stages; times++) {
      await page.getByLabel('End on', { exact: true }).check()
      await page.getByLabel('In the round', { exact: true }).check()
      await page.waitForSelector('canvas.solids')
    }
    // As it was left, when it is looked at again.
    while ((await seen(page)) !== before);
    // Too many stages at once would be told in the console.
    expect(wrongs).toEqual([])
  })

  it.runIf(thorough)('nothing that axe finds, in any light; nothing sideways at 360', async () => {
    const { page, wrongs } = await visit({ viewport: { width: 1400, height: 620 } })
    await inTheRound(page)
    await solidsThere(page)
    await page.getByRole('checkbox', { name: 'Cut open' }).check()
    for (const width of [1400, 800, 360]) {
      await page.setViewportSize({ width, height: 620 })
      await page.waitForFunction((most) => (document.querySelector('canvas.solids')?.clientWidth ?? most) < most, width)
      for (const light of ['day', 'night', 'strong']) {
        await page.evaluate((name) => {
          document.documentElement.dataset['light'] = name
        }, light)
        const found = await violations(page, light === 'day' ? 'all' : 'colours', '.bore')
        expect([width, light, found]).toEqual([width, light, []])
      }
      expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0)
      expect(wrongs).toEqual([])
    }
  })

  it.runIf(thorough)('where the kernel cannot be had, the page says what is still ready', async () => {
    const context = await newContext({ ...small, serviceWorkers: 'block' })
    await context.route(/manifold.*\.wasm/, (route) => route.fulfill({ status: 404 }))
    const { page } = await visit({ within: context })
    await inTheRound(page)
    await page.getByText('The part that carves solids did not start here.').first().waitFor()
    await context.unroute(/manifold.*\.wasm/)
    await page.locator('.cannot').getByRole('button', { name: 'Try again' }).click()
    await solidsThere(page)
  })

  it('a browser that cannot draw solids is told of, with a way back', async () => {
    const { program, args, env } = inject('browser')
    const own = Object.fromEntries(
      Object.entries(process.env).filter((entry): entry is [string, string] => entry[1] !== undefined),
    )
    without = await chromium.launch({
      executablePath: program,
      args: [
        ...args.filter((arg) => !/angle|swiftshader/.test(arg)),
        '--disable-gpu',
        '--disable-webgl',
        '--disable-3d-apis',
        '--disable-software-rasterizer',
      ],
      env: { ...own, ...env },
    })
    const page = await without.newPage(small)
    const wrongs: string[] = []
    page.on('console', (message) => wrongs.push(message.text()))
    page.on('pageerror', (error) => wrongs.push(error.message))
    await page.goto(inject('address'))
    await inTheRound(page)
    await page.getByText('This browser cannot draw solids.').waitFor()
    await page.getByRole('button', { name: 'Look end on' }).click()
    await page.waitForSelector('.picture.section svg')
    expect(wrongs).toEqual([])
  })
})
