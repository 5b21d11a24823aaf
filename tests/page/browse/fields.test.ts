import { describe, expect, it } from 'vitest'
import type { Page } from 'playwright-core'
import { parse } from 'yaml'
import { chosen } from '../../../src/page/rows/chosen.ts'
import { known } from '../../../src/page/rows/known.ts'
import { press } from '../../../src/page/rows/press.ts'
import type { Row } from '../../../src/page/rows/row.ts'
import { shop } from '../../../src/page/rows/shop.ts'
import { placeOf, standsAt } from '../../../src/spec/place.ts'
import { browsing, openInvented, specOf, untilSpec, visit } from './visit.ts'
import { thorough } from '../../thorough.ts'

browsing()

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
      return row.kind.of === 'texts' ? [['M5, M6', ['M5', 'M6']]] : [['15, 18', [15, 18]]]
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

/**
 * Takes the lines of one job, each once, in mm and in inches by turns. What is chosen from words may take other lines away: it is undone at
 * once. All the rest lies one upon the other, and is undone at the end, step by step.
 */
const tryRows = async (page: Page, rows: readonly Row[]): Promise<{ tried: number; wrong: readonly unknown[] }> => {
  const wrong: unknown[] = []
  let tried = 0
  const open = (): Promise<void> =>
    page.evaluate(() => {
      for (const each of document.querySelectorAll('.told details, .other details')) each.setAttribute('open', '')
    })
  const spec = async (): Promise<string> => (await page.textContent('pre.spec')) ?? ''
  const until = (was: string, same: boolean): Promise<unknown> =>
    page.waitForFunction(([before, is]) => (document.querySelector('pre.spec')?.textContent === before) === is, [
      was,
      same,
    ] as const)
  const undo = async (): Promise<void> => {
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur())
    await page.keyboard.press('Control+z')
  }
  const first = await spec()
  let steps = 0
  await open()
  for (const row of rows) {
    const blank = page.locator(`#at-${row.path.replaceAll('.', '-')}`)
    if ((await blank.count()) === 0) continue
    const each = samples(row)
    const [typed, says] = each[tried % Math.max(1, each.length)] ?? []
    if (typed === undefined) continue
    tried += 1
    const before = await spec()
    if (row.kind.is === 'word' || row.kind.is === 'flag') await blank.selectOption({ value: typed })
    else {
      await blank.fill(typed)
      await blank.press('Enter')
    }
    const stood = JSON.stringify(standsAt(parse(before), placeOf(row.path))) === JSON.stringify(says)
    if (!stood) await until(before, false).catch(() => wrong.push([row.path, typed, 'not taken']))
    const now = standsAt(parse(await spec()), placeOf(row.path))
    if (JSON.stringify(now) !== JSON.stringify(says)) wrong.push([row.path, typed, now])
    if (stood) continue
    if (row.kind.is === 'word' || row.kind.is === 'flag') {
      await undo()
      await until(before, true).catch(() => wrong.push([row.path, typed, 'not undone']))
      await open()
    } else steps += 1
  }
  for (let step = 0; step < steps; step++) await undo()
  await until(first, true).catch(() => wrong.push(['at the end', 'not undone']))
  return { tried, wrong }
}

const of = (feature: string): readonly Row[] =>
  known.flatMap(({ rows }) => rows).filter(({ path }) => path.startsWith(`feature.${feature}.`))
const apart = (row: Row): boolean => /^feature\.(?:spline|socket|slit|groove)|^bore\.blind/.test(row.path)

describe('every line of the form', { timeout: 180_000 }, () => {
  it('takes what is typed into it, in mm and in inches, and puts it where it belongs in the spec', async () => {
    const { page, wrongs } = await visit()
    await openInvented(page, 'a cider-mill pulley')
    await specOf(page)
    const rows = [...known.flatMap((group) => group.rows).filter((row) => !apart(row)), ...chosen]
    const { tried, wrong } = await tryRows(page, rows)
    expect(wrong).toEqual([])
    expect(tried).toBeGreaterThan(60)
    expect(wrongs).toEqual([])
  })

  it('nothing of the feature before is shown as a size of another', async () => {
    const { page, wrongs } = await visit()
    await openInvented(page, 'a cider-mill pulley')
    await page.getByLabel('Feature', { exact: true }).selectOption('spline')
    await untilSpec(page, /spline:/)
    for (const label of ['How many', 'Width', 'Over the floors'])
      expect([label, await page.getByLabel(label, { exact: true }).getAttribute('placeholder')]).toEqual([label, ''])
    // Another feature is one change, and one way back.
    await page.getByText('Changed since it was opened: 1').click()
    await page.getByText('Feature: keyway to splines').waitFor()
    await page.getByRole('button', { name: 'Undo feature' }).click()
    await untilSpec(page, /keyway: \{ standard: iso-773/)
    expect(wrongs).toEqual([])
  })

  it.runIf(thorough)('and so do those of the other features, and of a blind bore', async () => {
    const { page, wrongs } = await visit()
    await openInvented(page, 'a cider-mill pulley')
    await specOf(page)
    for (const feature of ['spline', 'socket', 'slit', 'groove']) {
      await page.getByLabel('Feature', { exact: true }).selectOption(feature)
      await untilSpec(page, new RegExp(`${feature}:`))
      const { tried, wrong } = await tryRows(page, of(feature))
      expect([feature, wrong]).toEqual([feature, []])
      expect([feature, tried >= 3]).toEqual([feature, true])
    }
    await page.getByLabel('Feature', { exact: true }).selectOption('keyway')
    await page.getByLabel('Far end', { exact: true }).selectOption('within')
    await untilSpec(page, /blind:/)
    const blind = await tryRows(
      page,
      known.flatMap(({ rows }) => rows).filter(({ path }) => path.startsWith('bore.blind.')),
    )
    expect(blind).toEqual({ tried: 3, wrong: [] })
    expect(wrongs).toEqual([])
  })

  it.runIf(thorough)('and so do those of press and broach, and of what is on hand', async () => {
    const { page, wrongs } = await visit()
    await openInvented(page, 'a boat-winch gear')
    await specOf(page)
    const { tried, wrong } = await tryRows(
      page,
      [...press, ...shop].flatMap((group) => group.rows),
    )
    expect(wrong).toEqual([])
    expect(tried).toBeGreaterThan(35)
    expect(wrongs).toEqual([])
  })
})
