import { describe, expect, it } from 'vitest'
import { violations } from './axe.ts'
import { browsing, openInvented, visit } from './visit.ts'
import { thorough } from '../../thorough.ts'

browsing()

const lights = ['Day', 'Night', 'Strong'] as const
const widths = thorough ? [1400, 800, 360] : [1400]

describe('looks', { timeout: 120_000 }, () => {
  for (const width of widths)
    it(`at ${width} px: nothing that axe finds in any light, nothing sideways`, async () => {
      const { page, wrongs } = await visit({ viewport: { width, height: 900 }, sheets: true })
      const checked: (readonly [string, readonly string[]])[] = []
      const look = async (what: string, rules: 'all' | 'colours' = 'all'): Promise<void> => {
        checked.push([what, await violations(page, rules)])
        const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
        expect([what, over]).toEqual([what, 0])
      }
      await look('first visit')
      await openInvented(page, 'a boat-winch gear')
      await page.waitForSelector('.piece img')
      for (const light of lights) {
        if (width === 360 && !(await page.getByLabel(light, { exact: true }).isVisible()))
          await page.getByRole('button', { name: 'More', exact: true }).click()
        await page.getByLabel(light, { exact: true }).check()
        await look(light, light === 'Day' ? 'all' : 'colours')
      }
      for (const change of await page.getByRole('button', { name: /^Change/ }).all())
        if (await change.isVisible()) await change.click()
      for (const button of ['The spec, as text', 'Keys on the keyboard'])
        await page.getByRole('button', { name: button }).click()
      await page
        .locator('.finding')
        .first()
        .getByRole('button', { name: /How this was come by/ })
        .click()
      await look('opened out')
      expect(checked.filter(([, violations]) => violations.length > 0)).toEqual([])
      expect(wrongs).toEqual([])
    })

  it('holds together at 320 px and with letters twice as large', async () => {
    const { page } = await visit({ viewport: { width: 320, height: 700 } })
    await openInvented(page, 'a cider-mill pulley')
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0)
    await page.setViewportSize({ width: 1400, height: 900 })
    await page.evaluate(() => {
      document.documentElement.classList.add('large')
      const sheet = new CSSStyleSheet()
      sheet.replaceSync('html.large { font-size: 200% }')
      document.adoptedStyleSheets = [sheet]
    })
    await page.waitForFunction(() => document.documentElement.scrollWidth === innerWidth)
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0)
  })

  it('the figure is laid anew for its width, and its letters keep their size', async () => {
    const { page } = await visit()
    await openInvented(page, 'a cider-mill pulley')
    await page.waitForSelector('.picture.section svg')
    const letters = async (): Promise<number> =>
      page.evaluate(() => {
        const svg = document.querySelector<SVGSVGElement>('.picture.section svg')
        if (!svg) return 0
        return (Number(svg.getAttribute('font-size')) * svg.getBoundingClientRect().width) / svg.viewBox.baseVal.width
      })
    expect(await letters()).toBeCloseTo(14, 0)
    await page.setViewportSize({ width: 400, height: 800 })
    await page.waitForFunction(
      () => (document.querySelector<SVGSVGElement>('.picture.section svg')?.viewBox.baseVal.width ?? 999) < 400,
    )
    expect(await letters()).toBeCloseTo(14, 0)
  })

  it('headings in order, and a link to the bore first', async () => {
    const { page } = await visit()
    await openInvented(page, 'a boat-winch gear')
    await page.keyboard.press('Tab')
    const levels = await page.locator('h1, h2, h3').evaluateAll((all) => all.map((each) => Number(each.tagName[1])))
    expect(levels[0]).toBe(1)
    expect(levels.slice(1).every((level) => level === 2)).toBe(true)
    expect(await page.locator('a').first().textContent()).toBe('To the bore')
  })
})
