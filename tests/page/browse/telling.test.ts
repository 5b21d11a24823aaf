import { describe, expect, it } from 'vitest'
import { browsing, openInvented, specOf, type, untilSpec, visit } from './visit.ts'
import { thorough } from '../../thorough.ts'

browsing()

describe('telling a job', () => {
  it('from nothing to a sound job, with nothing but the keyboard', async () => {
    const { page, wrongs } = await visit()
    expect(await page.textContent('.verdict .word')).toBe('Nothing is told yet.')
    await type(page, 'Bore', '24')
    await page.getByText('Half told.').waitFor()
    expect(await page.textContent('.verdict .says')).toContain('Length is wanted')
    await type(page, 'Length', '38')
    await page.waitForSelector('.findings .finding')
    expect(await page.locator('.finding').count()).toBeGreaterThan(3)
    expect(await specOf(page)).toContain('diameter: 24')
    expect(wrongs).toEqual([])
  })

  it('with little room the form stays unfolded while it is filled in, and keeps the focus', async () => {
    const { page, wrongs } = await visit({ viewport: { width: 800, height: 900 } })
    const focus = (): Promise<string> => page.evaluate(() => document.activeElement?.id ?? '')
    const blank = (label: string) => page.getByLabel(label, { exact: true })
    await blank('Bore').fill('25')
    await page.keyboard.press('Tab')
    await untilSpec(page, /diameter: 25\b/)
    await blank('Length').scrollIntoViewIfNeeded()
    await page.locator('label', { hasText: /^Length$/ }).click()
    expect(await focus()).toBe('at-bore-length')
    await page.keyboard.type('40')
    await page.keyboard.press('Tab')
    await page.waitForSelector('.findings .finding')
    // It can be worked out now, but whoever fills it in is not done: from blank to blank, by keys and by pressing.
    expect(await focus()).toBe('at-bore-mouth')
    await page.locator('label', { hasText: /^Outside$/ }).click()
    await page.keyboard.type('60')
    expect(await focus()).toBe('at-hub-outside')
    await page.keyboard.press('Shift+Tab')
    await untilSpec(page, /outside: 60\b/)
    expect(await blank('Length').isVisible()).toBe(true)
    // Gone elsewhere, it folds; what was pressed was not moved away from under the finger.
    await page.getByRole('radio', { name: 'Cut lengthwise' }).check()
    await blank('Length').waitFor({ state: 'hidden' })
    expect(await page.getByRole('radio', { name: 'Cut lengthwise' }).isChecked()).toBe(true)
    expect(await page.evaluate(() => document.activeElement !== document.body)).toBe(true)
    // Asked for again it stays until it is done with.
    await page.getByRole('button', { name: 'Change what is known' }).click()
    await type(page, 'Length', '41')
    await page.getByRole('radio', { name: 'End on' }).check()
    expect(await blank('Length').isVisible()).toBe(true)
    await page.getByRole('button', { name: 'Done what is known' }).click()
    await blank('Length').waitFor({ state: 'hidden' })
    expect(await page.evaluate(() => document.activeElement?.textContent)).toContain('Change')
    expect(wrongs).toEqual([])
  })

  it('names what it takes, leads to what is not told, and asks for no press by itself', async () => {
    const { page, wrongs } = await visit()
    await type(page, 'Bore', '25')
    await type(page, 'Length', '40')
    await type(page, 'Outside', '60')
    const untold = page.locator('.finding[data-rule=room-behind-hub]')
    await untold.waitFor()
    const from = page.getByLabel('From', { exact: true })
    expect(await from.evaluate((select: HTMLSelectElement) => select.selectedOptions[0]?.textContent)).toBe('ISO 773')
    expect(await untold.locator('.reason').textContent()).not.toContain('tooling.')
    await untold.locator('.reason a', { hasText: 'Open behind the hub' }).click()
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('at-tooling-bar-behind')
    await page.keyboard.type('30')
    await page.keyboard.press('Enter')
    expect(await untilSpec(page, /behind: 30/)).not.toContain('press')
    await page.waitForFunction(() => document.querySelector('.verdict .word')?.textContent?.startsWith('Sound'))
    // One number of spring passes: the one that the order of work and the card give.
    const springs = await page
      .locator('.handle .facts div', { hasText: /^Spring passes/ })
      .locator('dd')
      .textContent()
    expect(await page.locator('.order .steps').textContent()).toContain(` ${springs} spring passes without infeed.`)
    // What opens at the foot is seen.
    await page.getByRole('button', { name: 'The spec, as text' }).click()
    await page.evaluate(() => scrollTo(0, 0))
    await page.getByRole('button', { name: 'The spec, as text' }).click()
    const shown = page.locator('pre.spec')
    await shown.waitFor()
    expect(await shown.evaluate((pre) => pre.getBoundingClientRect().bottom <= innerHeight + 1)).toBe(true)
    expect(wrongs).toEqual([])
  })

  it('takes every spelling of a length, keeps it as typed and says what it is', async () => {
    const { page, wrongs } = await visit()
    await openInvented(page, 'a cider-mill pulley')
    for (const [typed, kept, other] of [
      ['24', /diameter: 24\n/, undefined],
      ['15/16 in', /diameter: 15\/16 in\n/, '23.8125 mm'],
      ['24,01', /diameter: 24,01\n/, undefined],
      ['24.0 mm', /diameter: 24\.0 mm\n/, undefined],
      ['1-1/4 in', /diameter: 1-1\/4 in\n/, '31.75 mm'],
      ['.9375"', /diameter: \.9375"\n/, '23.8125 mm'],
    ] as const) {
      await type(page, 'Bore', typed)
      await untilSpec(page, kept)
      expect(await page.getByLabel('Bore', { exact: true }).inputValue()).toBe(typed)
      if (other !== undefined) expect(await page.textContent('#at-bore-diameter-other')).toContain(other)
    }
    expect(wrongs).toEqual([])
  })

  it('says what is accepted where a value does not read, and keeps the last good one in force', async () => {
    const { page } = await visit()
    await openInvented(page, 'a cider-mill pulley')
    const before = await specOf(page)
    await type(page, 'Length', '3 8')
    const blank = page.getByLabel('Length', { exact: true })
    expect(await blank.getAttribute('aria-invalid')).toBe('true')
    const said = await page.textContent('#at-bore-length-said')
    expect(said).toContain('“3 8”')
    expect(said).toContain('1-1/2 in')
    expect(said).toContain('38 mm, stays in force')
    expect(await specOf(page)).toBe(before)
    await blank.press('Escape')
    expect(await blank.inputValue()).toBe('38')
    expect(await blank.getAttribute('aria-invalid')).toBe(null)
  })

  it('mm and inch change what is shown, never what was typed', async () => {
    const { page } = await visit()
    await openInvented(page, 'a cider-mill pulley')
    const before = await specOf(page)
    await page.getByLabel('inch', { exact: true }).check()
    expect(await page.getByLabel('Bore', { exact: true }).inputValue()).toBe('0.9449')
    await page.getByText('Kept as 24 mm, as it was told.').waitFor()
    await page.waitForFunction(() => /in/.test(document.querySelector('.finding .figures')?.textContent ?? ''))
    expect(await specOf(page)).toBe(before)
    // A bare number is in the units shown: 1.5 is an inch and a half, and the spec says so.
    await type(page, 'Length', '1.5')
    await untilSpec(page, /length: 1\.5 in\n/)
    await page.getByLabel('mm', { exact: true }).check()
    expect(await page.getByLabel('Length', { exact: true }).inputValue()).toBe('1.5 in')
    await page.getByText('Typed in inches: 38.1 mm.').waitFor()
  })

  it('a chosen value is held by typing over it, and let go again', async () => {
    const { page } = await visit()
    await openInvented(page, 'a cider-mill pulley')
    const bar = page.getByLabel('Bar', { exact: true })
    const chosen = await bar.inputValue()
    await type(page, 'Bar', '16')
    await untilSpec(page, /diameter: 16\n/)
    await page.getByText(`Left free it would be ${chosen}`).waitFor()
    expect(await page.getByRole('img', { name: 'held by you' }).count()).toBe(1)
    await page.getByRole('button', { name: 'Let it go' }).click()
    await page.waitForFunction(
      (was) => (document.querySelector('#at-tooling-bar-diameter') as HTMLInputElement).value === was,
      chosen,
    )
    expect(await specOf(page)).not.toContain('diameter: 16')
  })

  it.runIf(thorough)('arrows step by the last figure shown, and a word typed slowly is one step to undo', async () => {
    const { page } = await visit()
    await openInvented(page, 'a cider-mill pulley')
    const length = page.getByLabel('Length', { exact: true })
    await length.focus()
    await length.press('ArrowUp')
    await length.press('ArrowUp')
    await length.press('Shift+ArrowUp')
    expect(await length.inputValue()).toBe('50')
    await length.press('Enter')
    await untilSpec(page, /length: 50\n/)
    await page.locator('h2', { hasText: 'What is known' }).click()
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur())
    await page.keyboard.press('Control+z')
    await untilSpec(page, /length: 38\n/)
    await page.keyboard.press('Control+Shift+Z')
    await untilSpec(page, /length: 50\n/)
  })

  it.runIf(thorough)('lists what was changed since it was opened, and puts each back', async () => {
    const { page } = await visit()
    await openInvented(page, 'a cider-mill pulley')
    const before = await specOf(page)
    await type(page, 'Length', '40')
    await type(page, 'Outside', '70')
    await untilSpec(page, /outside: 70/)
    await page.getByText('Changed since it was opened: 2').click()
    await page.getByRole('button', { name: 'Undo length' }).click()
    await untilSpec(page, /length: 38\n/)
    await page.getByRole('button', { name: 'Undo all' }).click()
    await page.waitForFunction((was) => document.querySelector('pre.spec')?.textContent === was, before)
  })

  it('another kind of feature asks for its own sizes, and the one before is not lost', async () => {
    const { page } = await visit()
    await openInvented(page, 'a cider-mill pulley')
    await page.getByLabel('Feature', { exact: true }).selectOption('groove')
    await page.getByLabel('Radius', { exact: true }).waitFor()
    await page.getByText('Not as it stands.').waitFor()
    await page.getByLabel('Feature', { exact: true }).selectOption('keyway')
    await untilSpec(page, /keyway:[^]*iso-773/)
  })
})
