import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { chosen } from '../../../src/page/rows/chosen.ts'
import { known } from '../../../src/page/rows/known.ts'
import type { Row } from '../../../src/page/rows/row.ts'
import { placeOf, standsAt } from '../../../src/spec/place.ts'
import { browsing, openInvented, specOf, visit } from './visit.ts'

browsing()

const rows: readonly Row[] = [...known.flatMap((group) => group.rows), ...chosen]

/** Something that can be typed into each kind of blank, in mm and in inches, and what the spec then says. */
const samples = (row: Row): readonly (readonly [string, unknown])[] => {
  switch (row.kind.is) {
    case 'length':
      return [
        ['3', 3],
        ['1/4 in', '1/4 in'],
      ]
    case 'limits':
      return [
        ['3 to 3.1', [3, 3.1]],
        ['1/4 in to .26 in', ['1/4 in', '.26 in']],
      ]
    case 'tolerance':
      return [
        ['G7', 'G7'],
        ['0, +.001 in', [0, '.001 in']],
      ]
    case 'torque':
      return [
        ['90', 90],
        ['800 lbf in', '800 lbf in'],
      ]
    case 'force':
      return [
        ['900', 900],
        ['200 lbf', '200 lbf'],
      ]
    case 'stress':
      return [
        ['400', 400],
        ['62 ksi', '62 ksi'],
      ]
    case 'stiffness':
      return [
        ['4000', 4000],
        ['28550 lbf/in', '28550 lbf/in'],
      ]
    case 'angle':
      return [['8', 8]]
    case 'angles':
      return [['0, 90', [0, 90]]]
    case 'number':
      return [['4', 4]]
    case 'list':
      return [['15, 18', [15, 18]]]
    case 'text':
      return [['mill', 'mill']]
    case 'word':
      return Object.keys(row.kind.words)
        .slice(-1)
        .map((word) => [word, word] as const)
    case 'flag':
      return [['true', true]]
    default:
      return []
  }
}

describe('every line of the form', { timeout: 590_000 }, () => {
  it('takes what is typed into it, in mm and in inches, and puts it where it belongs in the spec', async () => {
    const { page, wrongs } = await visit()
    await openInvented(page, 'a cider-mill pulley')
    await specOf(page)
    const tried: string[] = []
    const wrong: unknown[] = []
    const spec = async (): Promise<string> => (await page.textContent('pre.spec')) ?? ''
    await page.evaluate(() => {
      for (const each of document.querySelectorAll('.told details')) each.setAttribute('open', '')
    })
    for (const row of rows) {
      const id = `#at-${row.path.replaceAll('.', '-')}`
      if ((await page.locator(id).count()) === 0) continue
      for (const [typed, says] of samples(row)) {
        const before = await spec()
        if (row.kind.is === 'word' || row.kind.is === 'flag') await page.locator(id).selectOption({ value: typed })
        else {
          await page.locator(id).fill(typed)
          await page.locator(id).press('Enter')
        }
        const stood = JSON.stringify(standsAt(parse(before), placeOf(row.path))) === JSON.stringify(says)
        if (!stood)
          await page
            .waitForFunction((was) => document.querySelector('pre.spec')?.textContent !== was, before, {
              timeout: 20_000,
            })
            .catch(async () =>
              wrong.push([row.path, typed, 'not taken', await page.locator('.notice').allTextContents()]),
            )
        const now = standsAt(parse(await spec()), placeOf(row.path))
        if (JSON.stringify(now) !== JSON.stringify(says)) wrong.push([row.path, typed, now])
        tried.push(row.path)
        if (!stood) {
          await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur())
          await page.keyboard.press('Control+z')
          await page
            .waitForFunction((was) => document.querySelector('pre.spec')?.textContent === was, before, {
              timeout: 10_000,
            })
            .catch(async () =>
              wrong.push([row.path, typed, 'not undone', await page.locator('.notice').allTextContents()]),
            )
        }
      }
    }
    expect(wrong).toEqual([])
    // All but those of other features, of blind bores, and the choices that are mappings.
    expect(new Set(tried).size).toBeGreaterThan(60)
    expect(wrongs).toEqual([])
  })
})
