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
/** Pages that are used again by the next test of the file, by what was put into them: a new one takes as long to start as many a test. */
const kept = new Map<string, { readonly page: Page; readonly context: BrowserContext }>()
/** What the page that is being looked at should not have done. */
let wrongsNow: string[] = []

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
    for (const { page } of kept.values()) if (page.url() !== nowhere) await page.goto(nowhere)
  })
  afterAll(async () => {
    kept.clear()
    await browser?.close()
  })
}
const nowhere = 'about:blank'
const usual = { width: 1400, height: 900 }

const opened = async (options: BrowserContextOptions): Promise<BrowserContext> => {
  if (!browser) throw new Error('no browser was started')
  return browser.newContext({
    viewport: usual,
    acceptDownloads: true,
    // Keeping every file for a day with no line is tested by itself.
    serviceWorkers: 'block',
    ...options,
  })
}

/** A browser that nobody has used before; gone after the test. */
export const newContext = async (options: BrowserContextOptions = {}): Promise<BrowserContext> => {
  const context = await opened(options)
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

export interface Visiting {
  readonly viewport?: { readonly width: number; readonly height: number }
  /** The browser that it is visited with. Left out: one that looks as if nobody had used it before. */
  readonly within?: BrowserContext
  /** What stands behind the address. */
  readonly at?: string
  /** Whether sheets and card are laid when the job is still. */
  readonly sheets?: boolean
  /** What runs in the page before anything else does. */
  readonly first?: () => void
}

/** Opens the page. Of two visits of one test, one at most does without `within`. */
export const visit = async ({ within, viewport, at = '', sheets = false, first }: Visiting = {}): Promise<Visit> => {
  const home = inject('address')
  const inside = `${sheets} ${first?.toString() ?? ''}`
  let known = within ? undefined : kept.get(inside)
  if (known && known.page.url() !== nowhere) throw new Error('this page is being looked at already')
  if (!known) {
    const context = within ?? (await opened({}))
    const page = await context.newPage()
    if (!sheets) await page.addInitScript(neverStill, still)
    if (first) await page.addInitScript(first)
    known = { page, context }
    const wrongs: string[] = []
    if (within) {
      heard(known, home, () => wrongs)
      await page.goto(`${home}${at}`)
      await page.waitForSelector('.verdict .word')
      return { ...known, wrongs }
    }
    heard(known, home, () => wrongsNow)
    kept.set(inside, known)
  }
  const { page } = known
  wrongsNow = []
  const wrongs = wrongsNow
  await page.setViewportSize(viewport ?? usual)
  await page.emulateMedia({ media: null, colorScheme: null, reducedMotion: null, forcedColors: null })
  const storage = await known.context.newCDPSession(page)
  await storage.send('Storage.clearDataForOrigin', { origin: new URL(home).origin, storageTypes: 'all' })
  await storage.detach()
  await page.goto(`${home}${at}`)
  await page.waitForSelector('.verdict .word')
  return { ...known, wrongs }
}

const heard = (
  { page, context }: { readonly page: Page; readonly context: BrowserContext },
  home: string,
  wrongs: () => string[],
): void => {
  page.on('console', (message) => {
    if (message.text() !== 'Service Worker registration blocked by Playwright')
      wrongs().push(`console ${message.type()}: ${message.text()}`)
  })
  page.on('pageerror', (error) => wrongs().push(`error: ${error.message}`))
  page.on('requestfailed', (request) => {
    // What was under way when the page was left has not failed.
    const why = request.failure()?.errorText
    if (why !== 'net::ERR_ABORTED') wrongs().push(`failed: ${request.url()} ${why}`)
  })
  context.on('request', (request) => {
    if (!request.url().startsWith(home) && !request.url().startsWith('blob:') && request.url() !== nowhere)
      wrongs().push(`away: ${request.url()}`)
  })
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
