import { type Browser, type BrowserContext, type BrowserContextOptions, chromium, type Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, inject } from 'vitest'
import { still } from '../../../src/page/still.ts'
import { plainly } from '../browser.ts'

/** A page that is looked at, and everything that it should not have done. */
export interface Visit {
  readonly page: Page
  readonly context: BrowserContext
  /** Messages in the console, errors, and requests to any other place. */
  readonly wrongs: readonly string[]
}

let browser: Browser | undefined
const contexts: BrowserContext[] = []

/** Starts the browser for one file of tests, and ends it after them. `more`: how it draws. */
export const browsing = (more: readonly string[] = plainly): void => {
  beforeAll(async () => {
    const { program, args, env } = inject('browser')
    const own = Object.fromEntries(
      Object.entries(process.env).filter((entry): entry is [string, string] => entry[1] !== undefined),
    )
    browser = await chromium.launch({ executablePath: program, args: [...args, ...more], env: { ...own, ...env } })
  })
  // What a page still does for itself would hold up the next.
  afterEach(async () => {
    for (const context of contexts.splice(0)) await context.close()
  })
  afterAll(async () => {
    await browser?.close()
  })
}

export const newContext = async (options: BrowserContextOptions = {}): Promise<BrowserContext> => {
  if (!browser) throw new Error('no browser was started')
  const context = await browser.newContext({
    viewport: { width: 1400, height: 900 },
    acceptDownloads: true,
    // Keeping every file for a day with no line is tested by itself.
    serviceWorkers: 'block',
    ...options,
  })
  contexts.push(context)
  return context
}

/** The job is never still for long enough: its sheets and its card, which take far longer than its figure, are not laid. */
const neverStill = (long: number): void => {
  const own = window.setTimeout
  const waiting = (on: TimerHandler, ms?: number, ...more: unknown[]): number =>
    own(on, ms === long ? 2 ** 30 : ms, ...more)
  window.setTimeout = waiting as typeof window.setTimeout
}

/** Opens the page in a context of its own, or in the one that is given. `sheets`: whether they and the card are laid when the job is still. */
export const visit = async (
  options: BrowserContextOptions & {
    readonly within?: BrowserContext
    readonly at?: string
    readonly sheets?: boolean
  } = {},
): Promise<Visit> => {
  const { within, at = '', sheets = false, ...rest } = options
  const context = within ?? (await newContext(rest))
  const page = await context.newPage()
  if (!sheets) await page.addInitScript(neverStill, still)
  const wrongs: string[] = []
  const home = inject('address')
  page.on('console', (message) => {
    if (message.text() !== 'Service Worker registration blocked by Playwright')
      wrongs.push(`console ${message.type()}: ${message.text()}`)
  })
  page.on('pageerror', (error) => wrongs.push(`error: ${error.message}`))
  page.on('requestfailed', (request) => {
    // What was under way when the page was left has not failed.
    const why = request.failure()?.errorText
    if (why !== 'net::ERR_ABORTED') wrongs.push(`failed: ${request.url()} ${why}`)
  })
  context.on('request', (request) => {
    if (!request.url().startsWith(home) && !request.url().startsWith('blob:')) wrongs.push(`away: ${request.url()}`)
  })
  await page.goto(`${home}${at}`)
  await page.waitForSelector('.verdict .word')
  return { page, context, wrongs }
}

/** Lays an invented job on the page, and waits until it is worked out. */
export const openInvented = async (page: Page, called: string): Promise<void> => {
  await page.getByRole('button', { name: called }).click()
  await page.waitForSelector('.findings .finding')
}

/** Types into a blank as a person does, and leaves it. */
export const type = async (page: Page, label: string, text: string): Promise<void> => {
  const blank = page.getByLabel(label, { exact: true })
  await blank.fill(text)
  await blank.press('Enter')
}

/** The spec as text, from the foot of the page. */
export const specOf = async (page: Page): Promise<string> => {
  const open = page.locator('pre.spec')
  if ((await open.count()) === 0) await page.getByRole('button', { name: 'The spec, as text' }).click()
  return (await open.textContent()) ?? ''
}

/** Waits until the spec on the page says something. */
export const untilSpec = async (page: Page, says: RegExp): Promise<string> => {
  await specOf(page)
  await page.waitForFunction(
    ([source, flags]) => new RegExp(source ?? '', flags).test(document.querySelector('pre.spec')?.textContent ?? ''),
    [says.source, says.flags],
  )
  return specOf(page)
}
