import { describe, expect, it } from 'vitest'
import { withSolids } from '../browser.ts'
import { middle, told } from './told.ts'
import { browsing, newContext, openInvented, visit } from './visit.ts'

browsing([...withSolids])

describe('in the round', { timeout: 240_000 }, () => {
  it('from a key to the solids, carved anew', async () => {
    // Small: every point of it is worked out by the processor.
    const { page } = await visit({ within: await newContext({ viewport: { width: 1160, height: 560 } }) })
    await openInvented(page, 'a cider-mill pulley')
    await page.getByLabel('In the round', { exact: true }).check()
    await page.waitForSelector('canvas.solids', { timeout: 60_000 })
    await page.waitForTimeout(1500)
    await page.evaluate(() => {
      const kept = window as unknown as { times: number[] }
      kept.times = []
      let pressed: number | undefined
      addEventListener('keydown', () => (pressed = performance.now()), { capture: true })
      // New solids are handed to the graphics card, and then they are drawn.
      let fresh = false
      const { bufferData, drawArrays } = WebGL2RenderingContext.prototype
      WebGL2RenderingContext.prototype.bufferData = function (...all: unknown[]) {
        fresh = true
        Reflect.apply(bufferData, this, all)
      }
      WebGL2RenderingContext.prototype.drawArrays = function (...all) {
        drawArrays.apply(this, all)
        if (fresh && pressed !== undefined)
          requestAnimationFrame(() => {
            if (pressed !== undefined) kept.times.push(performance.now() - pressed)
            pressed = undefined
          })
        fresh = false
      }
    })
    const bore = page.getByLabel('Bore', { exact: true })
    for (let press = 0; press < 10; press += 1) {
      await bore.fill(press % 2 === 0 ? '24.5' : '24')
      await bore.press('Enter')
      await page.waitForTimeout(2500)
    }
    const times = await page.evaluate(() => (window as unknown as { times: number[] }).times)
    expect(times.length).toBeGreaterThan(5)
    told('a key to the solids, carved anew', middle(times))
  })
})
