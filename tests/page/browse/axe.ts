import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import type { Page } from 'playwright-core'

interface Violation {
  readonly id: string
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[]
}

const path = createRequire(import.meta.url).resolve('axe-core')
const every = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

/**
 * What axe-core finds wrong on the page, or in the first thing that `within` selects; one line for each rule. `colours`: only what another
 * light can change. The policy of the page lets no script in but its own; the checker comes in by the side door.
 */
export const violations = async (
  page: Page,
  rules: 'all' | 'colours' = 'all',
  within?: string,
): Promise<readonly string[]> => {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(await readFile(path, 'utf8'))
  return page.evaluate(
    async ([runOnly, selected]) => {
      const { axe: checker } = window as unknown as {
        axe: { run: (on: Document | string, how: object) => Promise<{ violations: Violation[] }> }
      }
      const found = (await checker.run(selected ?? document, { runOnly, resultTypes: ['violations'] })).violations
      return found.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 200)} ${nodes[0]?.failureSummary ?? ''}`)
    },
    [rules === 'all' ? every : ['color-contrast', 'link-in-text-block'], within] as const,
  )
}
