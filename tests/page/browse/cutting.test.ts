import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { browsing, newContext, openInvented, specOf, type, untilSpec, visit } from './visit.ts'
import { thorough } from '../../thorough.ts'

browsing()

const dial = (page: Page) => page.getByRole('slider', { name: 'Dial' })
const passes = async (page: Page): Promise<number> => Number(await dial(page).inputValue())
const spoken = async (page: Page): Promise<string> => (await page.textContent('.spoken')) ?? ''
/** Waits until the words under the picture are of this pass. */
const atPass = (page: Page, pass: number): Promise<unknown> =>
  page.waitForFunction(
    (wanted) => new RegExp(wanted).test(document.querySelector('.spoken')?.textContent ?? ''),
    pass === 0 ? '^First touch' : `^Pass ${pass} of`,
  )

describe('running the cut', () => {
  it('opens at full depth, and goes pass by pass, gate by gate, to first touch and back', async () => {
    const { page, wrongs } = await visit()
    await openInvented(page, 'a cider-mill pulley')
    await dial(page).waitFor()
    const whole = Number(await dial(page).getAttribute('max'))
    expect(whole).toBeGreaterThan(50)
    await atPass(page, whole)
    await page.getByRole('button', { name: 'One back' }).click()
    await atPass(page, whole - 1)
    await page.getByRole('button', { name: 'One on' }).click()
    await atPass(page, whole)
    await dial(page).focus()
    await page.keyboard.press('Home')
    await atPass(page, 0)
    expect(await dial(page).getAttribute('aria-valuetext')).toContain('dial 0 mm')
    await page.getByRole('button', { name: 'To the next gate' }).click()
    await page.waitForFunction(() =>
      /a gate: measure across, expect \d/.test(document.querySelector('.spoken')?.textContent ?? ''),
    )
    const first = await passes(page)
    expect(first).toBeGreaterThan(0)
    await dial(page).focus()
    await page.keyboard.press('PageUp')
    expect(await passes(page)).toBeGreaterThan(first)
    await page.keyboard.press('PageDown')
    expect(await passes(page)).toBe(first)
    await page.keyboard.press('End')
    await atPass(page, whole)
    expect(wrongs).toEqual([])
  })

  it('the picture goes with it: what is still to be cut shrinks, and the slot stands behind the dial', async () => {
    const { page } = await visit()
    await openInvented(page, 'a cider-mill pulley')
    await dial(page).waitFor()
    const whole = Number(await dial(page).getAttribute('max'))
    const stillToCut = () => page.locator('.picture.section .still-to-cut').count()
    await dial(page).fill(String(Math.round(whole / 3)))
    await atPass(page, Math.round(whole / 3))
    expect(await spoken(page)).toMatch(/The slot stands 0\.\d+ behind the dial/)
    await page.waitForFunction(() => document.querySelectorAll('.picture.section .still-to-cut').length > 0)
    const third = await page.innerHTML('.picture.section')
    await dial(page).fill(String(whole))
    await atPass(page, whole)
    await page.waitForFunction((was) => document.querySelector('.picture.section')?.innerHTML !== was, third)
    expect(await stillToCut()).toBe(0)
  })

  it('runs by itself, pauses at a gate, and stops', async () => {
    const { page } = await visit()
    await openInvented(page, 'a cider-mill pulley')
    await dial(page).waitFor()
    await page.getByRole('button', { name: 'Run the cut' }).click()
    await page.waitForFunction(
      () => Number((document.querySelector('[aria-label=Dial]') as HTMLInputElement).value) > 3,
    )
    await page.getByRole('button', { name: 'Stop' }).click()
    const stopped = await passes(page)
    // Five times as long as from one pass to the next: by the page's own clock.
    await page.evaluate(() => new Promise((resolve) => setTimeout(resolve, 420)))
    expect(await passes(page)).toBe(stopped)
  })

  it.runIf(thorough)('who wants no motion goes from gate to gate', async () => {
    const { page } = await visit({ within: await newContext({ reducedMotion: 'reduce' }) })
    await openInvented(page, 'a cider-mill pulley')
    await dial(page).waitFor()
    await dial(page).fill('0')
    await page.getByRole('button', { name: 'Run the cut' }).click()
    // One by one it would be there after a long while; in one leap it is at once.
    await page.waitForFunction(
      () => Number((document.querySelector('[aria-label=Dial]') as HTMLInputElement).value) > 0,
    )
    expect(await passes(page)).toBeGreaterThan(5)
    await page.waitForFunction(() => /a gate/.test(document.querySelector('.spoken')?.textContent ?? ''))
    await page.getByRole('button', { name: 'Stop' }).click()
  })

  it.runIf(thorough)('says in words and in a table what the picture says', async () => {
    const { page } = await visit()
    await openInvented(page, 'a cider-mill pulley')
    await page.waitForSelector('.picture.section svg')
    expect(await page.locator('.picture.section svg title').textContent()).toMatch(/\w/)
    expect(await page.locator('.picture.section svg desc').textContent()).toMatch(/24/)
    await page.getByText('Sizes in the picture').click()
    const rows = await page.locator('.sizes tr').allTextContents()
    expect(rows.some((row) => /bore/i.test(row) && row.includes('24'))).toBe(true)
    expect(rows.some((row) => /projection/i.test(row))).toBe(true)
  })
})

describe('what follows', () => {
  const broken = `name: press-slide
units: mm
bore: { diameter: 10, tolerance: [0, 0], length: 16 }
hub: { outside: 30, material: mild steel }
feature:
  keyway: { width: 4, height: 4, across: 11.8 }
tooling:
  bar: { machine: lathe, behind: 20, diameter: 8, projection: 1.9 }
`

  it('a remedy is taken by one press, says what it did, and is undone', async () => {
    const { page, wrongs } = await visit()
    await page.setInputFiles('input[type=file]', {
      name: 'press-slide.yaml',
      mimeType: 'application/yaml',
      buffer: Buffer.from(broken),
    })
    await page.getByText('Will not go.', { exact: true }).waitFor()
    const before = await specOf(page)
    const way = page.locator('.finding.broken .remedies button').first()
    const says = (await way.textContent()) ?? ''
    await way.click()
    await page.waitForFunction((was) => document.querySelector('pre.spec')?.textContent !== was, before)
    const note = page.locator('.undo')
    expect(await note.textContent()).toMatch(/\w/)
    // Focus stays where it was, and nothing has moved under the finger.
    expect(says.length).toBeGreaterThan(3)
    await note.getByRole('button', { name: 'Undo' }).click()
    await page.waitForFunction((was) => document.querySelector('pre.spec')?.textContent === was, before)
    expect(await note.count()).toBe(0)
    expect(wrongs).toEqual([])
  })

  it('a remedy that mends is told where its finding stood, and only it is taken back', async () => {
    const { page, wrongs } = await visit()
    for (const [label, text] of [
      ['Bore', '25'],
      ['Length', '40'],
      ['Outside', '60'],
      ['Open behind the hub', '30'],
    ] as const)
      await type(page, label, text)
    await untilSpec(page, /behind: 30/)
    await page.getByRole('button', { name: /^Take 0\.005 mm a pass/ }).click()
    await untilSpec(page, /infeed:/)
    const note = page.locator('.undo')
    const back = note.getByRole('button', { name: 'Undo' })
    // What the lag is judged by holds now, and stands among those that hold.
    await page.locator('.finding-gone .undo').waitFor()
    expect(await note.textContent()).toMatch(/^Infeed a pass 0\.005 mm, was 0\.02\d?\./)
    await page.waitForFunction(() => document.activeElement?.closest('.undo') !== null)
    // Taken back in another way, it can be taken back no more; taken again, it can.
    await page.keyboard.press('Control+z')
    await untilSpec(page, /behind: 30\s*$/)
    await note.waitFor({ state: 'detached' })
    await page.keyboard.press('Control+Shift+Z')
    await back.waitFor()
    // Something else was changed since.
    await type(page, 'Length', '41')
    await note.waitFor({ state: 'detached' })
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur())
    await page.keyboard.press('Control+z')
    await back.click()
    const spec = await untilSpec(page, /behind: 30\s*$/)
    expect(spec).toContain('length: 40')
    expect(await note.count()).toBe(0)
    expect(await page.evaluate(() => document.activeElement?.closest('.follows') !== null)).toBe(true)
    expect(wrongs).toEqual([])
  })

  it('every finding says its word, its sentence and its figures; the tightest first', async () => {
    const { page } = await visit()
    await openInvented(page, 'a cider-mill pulley')
    const words = await page.locator('.finding .reason b').allTextContents()
    const order = ['Broken.', 'Cannot tell.', 'Take care.', 'Holds.']
    const ranks = words.map((word) => order.indexOf(word))
    expect(ranks).toEqual(ranks.toSorted((a, b) => a - b))
    expect(Math.min(...ranks)).toBeGreaterThan(-1)
    expect(await page.locator('.finding .figures').count()).toBeGreaterThan(3)
    await page.getByRole('button', { name: /more hold/ }).click()
    expect(await page.locator('.finding').count()).toBeGreaterThan(words.length)
    await page
      .locator('.finding')
      .first()
      .getByRole('button', { name: /How this was come by/ })
      .click()
    expect(await page.locator('.finding').first().locator('.basis .note').textContent()).toMatch(/hold that .* From: /)
  })

  it('looking at a finding shows its dimension on the picture', async () => {
    const { page } = await visit()
    await openInvented(page, 'a cider-mill pulley')
    await page.waitForSelector('.picture.section svg')
    await page.locator('.finding[data-rule=projection-reaches]').hover()
    await page.waitForSelector('.picture.section .is-shown[data-of="bar.projection"]')
    await page.locator('h2', { hasText: 'Order of work' }).hover()
    await page.waitForFunction(() => document.querySelectorAll('.is-shown').length === 0)
  })

  it('the broach is told, and both ways stand side by side', async () => {
    const { page } = await visit()
    await openInvented(page, 'a boat-winch gear')
    const ways = page.locator('.other .ways')
    expect(await ways.locator('thead').textContent()).toMatch(/By the bar.*By the broach/)
    expect(await page.textContent('.other .says')).toMatch(/^(?:Broach it|Cut it with the bar): \d+ .*\./)
    expect(await ways.locator('.is-better').count()).toBe(1)
    const lines = await ways.locator('tbody th').allTextContents()
    for (const line of ['It stands', 'Strokes', 'Time, about', 'The most it asks', 'There is', 'Depth good to'])
      expect(lines).toContain(line)
    expect(await page.locator('.order .out-by').allTextContents()).toHaveLength(2)
    await page.getByRole('button', { name: 'Leave the bar out' }).click()
    await page.waitForFunction(
      () => !/By the bar/.test(document.querySelector('.other .ways thead')?.textContent ?? ''),
    )
    await page.getByRole('button', { name: 'Work out the bar too' }).click()
    await untilSpec(page, /bar:/)
  })
})
