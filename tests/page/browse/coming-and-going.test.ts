import { describe, expect, it } from 'vitest'
import { browsing, newContext, openInvented, specOf, type, untilSpec, visit } from './visit.ts'
import { thorough } from '../../thorough.ts'

browsing()

const dropped = (files: readonly { readonly name: string; readonly text: string }[]) => {
  const data = new DataTransfer()
  for (const { name, text } of files) data.items.add(new File([text], name, { type: 'application/yaml' }))
  document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }))
}

const other = 'name: loom\nunits: mm\nbore: { diameter: 30, length: 40 }\nfeature:\n  keyway: {}\n'

describe('coming back', () => {
  it('a reload brings the job back, and so does its address elsewhere', async () => {
    const { page, context, wrongs } = await visit({ within: await newContext() })
    await openInvented(page, 'a cider-mill pulley')
    await type(page, 'Length', '41.5')
    const spec = await untilSpec(page, /length: 41\.5\n/)
    // Kept as soon as it stands in the address.
    const before = new URL(page.url()).hash
    expect(before).toMatch(/^#job=/)
    await page.reload()
    await page.waitForSelector('.findings .finding')
    expect(await specOf(page)).toBe(spec)
    const address = new URL(page.url())
    const elsewhere = await visit({ within: await newContext(), at: address.hash })
    await elsewhere.page.waitForSelector('.findings .finding')
    expect(await specOf(elsewhere.page)).toBe(spec)
    // With nothing in the address, this browser still has it.
    const bare = await visit({ within: context })
    await bare.page.waitForSelector('.findings .finding')
    expect(await specOf(bare.page)).toBe(spec)
    expect([...wrongs, ...elsewhere.wrongs, ...bare.wrongs]).toEqual([])
  })

  it('a job that is typed from nothing is kept as it is typed, and nothing is laid over it unasked', async () => {
    const { page, wrongs } = await visit()
    // A page on which nothing is told keeps nothing.
    expect(new URL(page.url()).hash).toBe('')
    await type(page, 'Bore', '24')
    await type(page, 'Length', '38')
    const spec = await untilSpec(page, /length: 38\b/)
    await page.waitForFunction(() => location.hash.startsWith('#job='))
    await page.reload()
    await page.waitForSelector('.findings .finding')
    expect(await specOf(page)).toBe(spec)
    await type(page, 'Length', '39')
    await untilSpec(page, /length: 39\b/)
    await page.evaluate(dropped, [{ name: 'loom.yaml', text: other }])
    await page.getByText('This job has changes not kept as a file.').waitFor()
    expect(wrongs).toEqual([])
  })

  it('an address that carries nothing readable is passed over', async () => {
    const { page, wrongs } = await visit()
    const home = page.url()
    for (const at of [
      '#job=AAAA',
      `#job=${'A'.repeat(9000)}`,
      ...(thorough ? ['#job=', '#nothing', '#job=<script>'] : []),
    ]) {
      await page.goto('about:blank')
      await page.goto(`${home}${at}`)
      await page.getByText('Nothing is told yet.').first().waitFor()
      expect([at, wrongs]).toEqual([at, []])
    }
  })

  it('two tabs: neither writes over the other, and each hears of what the other keeps', async () => {
    const context = await newContext()
    const one = await visit({ within: context })
    await openInvented(one.page, 'a cider-mill pulley')
    const two = await visit({ within: context })
    await two.page.waitForSelector('.findings .finding')
    await type(two.page, 'Length', '44')
    await untilSpec(two.page, /length: 44\n/)
    await one.page.getByText('Another tab has kept a job in this browser.').waitFor()
    expect(await specOf(one.page)).toContain('length: 38\n')
    await one.page.getByRole('button', { name: 'Take the other' }).click()
    await untilSpec(one.page, /length: 44\n/)
    expect([...one.wrongs, ...two.wrongs]).toEqual([])
  })

  it('works with no line and no server, once it has been there', { timeout: 120_000 }, async () => {
    const { page, context, wrongs } = await visit({
      within: await newContext({ serviceWorkers: 'allow' }),
      sheets: true,
    })
    await openInvented(page, 'a cider-mill pulley')
    await page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated')
    await context.setOffline(true)
    await page.reload()
    await page.waitForSelector('.findings .finding')
    await type(page, 'Length', '43')
    await untilSpec(page, /length: 43\n/)
    // What is loaded only when it is asked for is there too: writers, faces, kernel.
    await page.waitForSelector('.piece img')
    for (const [button, file] of [
      ['Job card, PDF', 'card.pdf'],
      ['Setting step, STL', 'setting-step.mm.stl'],
    ] as const) {
      const download = page.waitForEvent('download', { timeout: 60_000 })
      await page.getByRole('button', { name: button, exact: true }).click()
      expect((await download).suggestedFilename()).toBe(file)
      await page.waitForFunction(() => document.querySelector('.under-way')?.textContent === '')
    }
    expect(wrongs).toEqual([])
  })

  it('a browser that keeps nothing is told of', async () => {
    const context = await newContext()
    await context.addInitScript(() => {
      Object.defineProperty(window, 'localStorage', {
        get: () => {
          throw new DOMException('refused', 'SecurityError')
        },
      })
    })
    const { page, wrongs } = await visit({ within: context })
    await page.locator('.notice').getByText('This browser will not hold the job.').waitFor()
    await openInvented(page, 'a cider-mill pulley')
    expect(wrongs).toEqual([])
  })

  it.runIf(thorough)('a job that another version worked out otherwise says what was and what is', async () => {
    const { page, wrongs } = await visit()
    await openInvented(page, 'a boat-winch gear')
    await page.waitForFunction(() => localStorage.getItem('borewright.numbers') !== null)
    const older = async (change: Readonly<Record<string, number>>): Promise<void> => {
      await page.evaluate((moved) => {
        const kept = JSON.parse(localStorage.getItem('borewright.numbers') ?? '{}')
        kept.version = '0.0.1'
        for (const [word, by] of Object.entries(moved)) kept.numbers[word] += by
        localStorage.setItem('borewright.numbers', JSON.stringify(kept))
      }, change)
      await page.reload()
      await page.waitForSelector('.findings .finding')
    }
    // Another version, and the same numbers: nothing to be said.
    await older({})
    expect(await page.locator('.old-and-new').count()).toBe(0)
    await older({ Projection: 0.5, Passes: -3 })
    const told = page.locator('.old-and-new')
    await told.getByText('A card printed from the old version should be printed again.').waitFor()
    expect(await told.locator('p').first().textContent()).toMatch(
      /^This job was made by version 0\.0\.1; this is \d+\.\d+\.\d+\. Two numbers came out otherwise:$/,
    )
    expect(await told.locator('dt').allTextContents()).toEqual(['Projection', 'Passes'])
    const projection = await page.inputValue('#at-tooling-bar-projection')
    expect(await told.locator('dd').first().textContent()).toBe(
      `${projection}, was ${(Number(projection) + 0.5 / 25.4).toFixed(3)}.`,
    )
    await told.getByRole('button', { name: 'Go on with the new' }).click()
    expect(await told.count()).toBe(0)
    await page.reload()
    await page.waitForSelector('.findings .finding')
    expect(await told.count()).toBe(0)
    expect(wrongs).toEqual([])
  })

  it('units and light are kept', async () => {
    const { page } = await visit()
    await page.getByLabel('Strong', { exact: true }).check()
    await page.getByLabel('inch', { exact: true }).check()
    await page.reload()
    await page.waitForSelector('.verdict .word')
    expect(await page.getByLabel('Strong', { exact: true }).isChecked()).toBe(true)
    expect(await page.getByLabel('inch', { exact: true }).isChecked()).toBe(true)
    expect(await page.evaluate(() => document.documentElement.dataset['light'])).toBe('strong')
  })
})

describe('opening a file', () => {
  it('a spec that is dropped is laid on the page', async () => {
    const { page, wrongs } = await visit()
    await page.evaluate(dropped, [{ name: 'loom.yaml', text: other }])
    await page.waitForSelector('.findings .finding')
    expect(await page.getByLabel('Name of the job').inputValue()).toBe('loom')
    expect(await specOf(page)).toBe(other)
    expect(wrongs).toEqual([])
  })

  it('a spec that cannot be read leaves the job as it is, and each fault is named', async () => {
    const { page } = await visit()
    await openInvented(page, 'a cider-mill pulley')
    const before = await specOf(page)
    const bad = other
      .replace('diameter: 30', 'diameter: "1,0,0"')
      .replace('keyway: {}', 'keyway: {}\ntooling: { bar: { infead: 0.02 } }')
    await page.evaluate(dropped, [{ name: 'loom.yaml', text: bad }])
    const notice = page.locator('.notice')
    await notice
      .getByText('loom.yaml was not opened: 2 things in it cannot be read. The job on the page is as it was.')
      .waitFor()
    expect(await notice.textContent()).toContain('bore.diameter')
    expect(await notice.textContent()).toContain('Was infeed meant?')
    expect(await specOf(page)).toBe(before)
    await notice.getByRole('button', { name: 'Leave it' }).click()
    expect(await notice.count()).toBe(0)
    await page.evaluate(dropped, [{ name: 'loom.yaml', text: bad }])
    await notice.getByRole('button', { name: 'Open it with what can be read' }).click()
    await page.getByText('Bore cannot be used as it stands.').waitFor()
  })

  it('what is no spec at all is said to be none', async () => {
    const { page } = await visit()
    await page.evaluate(dropped, [{ name: 'photo.jpg', text: 'ÿØÿà' }])
    await page.getByText('photo.jpg is not a spec. A spec is a .yaml or .json text.').waitFor()
    await page.getByRole('button', { name: 'Leave it' }).click()
    await page.evaluate(dropped, [{ name: 'list.yaml', text: 'bore: [1, {' }])
    await page.getByText(/list\.yaml was not opened/).waitFor()
    await page.getByRole('button', { name: 'Leave it' }).click()
    await page.evaluate(dropped, [{ name: 'huge.yaml', text: `# ${'x'.repeat(1_100_000)}` }])
    await page.getByText('huge.yaml is far too large for a spec.').waitFor()
  })

  it('a spec that names a shop file wants it too', async () => {
    const { page, wrongs } = await visit()
    const spec = `${other}shop: bench.yaml\n`
    await page.evaluate(dropped, [{ name: 'loom.yaml', text: spec }])
    await page.getByText('loom.yaml was not opened: it names a shop file, bench.yaml. Drop both at once.').waitFor()
    await page.evaluate(dropped, [
      { name: 'bench.yaml', text: 'bars: [12, 16]\n' },
      { name: 'loom.yaml', text: spec },
    ])
    await page.waitForSelector('.findings .finding')
    expect(['12', '16']).toContain(await page.getByLabel('Bar', { exact: true }).inputValue())
    await page.waitForFunction(() => location.hash.startsWith('#job='))
    await page.reload()
    await page.waitForSelector('.findings .finding')
    expect(['12', '16']).toContain(await page.getByLabel('Bar', { exact: true }).inputValue())
    expect(wrongs).toEqual([])
  })

  it('nothing is lost that was not kept as a file', async () => {
    const { page } = await visit()
    await openInvented(page, 'a cider-mill pulley')
    await type(page, 'Length', '44')
    await untilSpec(page, /length: 44\n/)
    await page.evaluate(dropped, [{ name: 'loom.yaml', text: other }])
    await page.getByText('This job has changes not kept as a file.').waitFor()
    const download = page.waitForEvent('download')
    await page.getByRole('button', { name: 'Keep this job first' }).click()
    expect((await download).suggestedFilename()).toBe('cider-mill-pulley.yaml')
    await untilSpec(page, /name: loom/)
  })

  it('a name that is none is said so, with one that is near', async () => {
    const { page } = await visit()
    await openInvented(page, 'a cider-mill pulley')
    await page.getByLabel('Name of the job').fill('cider mill')
    await page.getByLabel('Name of the job').press('Enter')
    await page.getByText('“cider mill” would be cider-mill.').waitFor()
    expect(await specOf(page)).toContain('name: cider-mill-pulley\n')
  })
})
