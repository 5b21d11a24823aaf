import { effect, signal } from '@preact/signals'
import type { Complaint } from '../spec/complaint.ts'
import { isMapping, standsAt } from '../spec/place.ts'
import { fault, outcome, working } from './answers.ts'
import { changes, type Opened, open, opened } from './job.ts'
import { keep, kept, whenKeptElsewhere } from './keeping.ts'
import { showIn, shownUnits } from './shown-in.ts'
import { atMachine, machineAddress } from './where.ts'

/** A file that could not be laid on the page, and what can be done about it. */
export interface Refused {
  readonly name: string
  readonly complaints: readonly Complaint[]
  /** What can be read of it all the same. */
  readonly readable?: Opened
  /** The shop file that it names and that did not come with it. */
  readonly wants?: string
}

export const refused = signal<Refused | undefined>(undefined)
/** A job that waits until it is known what becomes of the one on the page. */
export const waiting = signal<{ readonly name: string; readonly job: Opened } | undefined>(undefined)
/** What another tab has kept meanwhile. */
export const elsewhere = signal<string | undefined>(undefined)
/** The text as it was last kept as a file. */
const filed = signal<string | undefined>(undefined)
/** Whether a job was opened, or it is a first visit. */
export const visited = signal(false)

/** Larger than any spec, bytes. */
const largest = 1_000_000

/** Lays a job on the page, in its own units. */
const lay = (job: Opened): void => {
  refused.value = undefined
  waiting.value = undefined
  open(job)
  filed.value = job.text
  visited.value = true
  showIn(standsAt(job.document, ['units']) === 'in' ? 'in' : 'mm')
}

/** What goes wrong here is our own fault, and the page says so. */
const ours = (error: unknown): void => {
  fault.value = error instanceof Error ? (error.stack ?? error.message) : String(error)
}

/** Opens the texts of a spec, and of a shop file if it came with it. */
export const openTexts = async (name: string, text: string, shop?: string): Promise<void> => {
  const answer = await working.ask('open', { text, ...(shop !== undefined && { shop }) })
  if ('unreadable' in answer) {
    refused.value = { name, complaints: answer.unreadable }
    return
  }
  const job: Opened = { text, document: answer.document, ...(shop !== undefined && { shop }) }
  if (answer.names !== undefined && shop === undefined) {
    refused.value = {
      name,
      complaints: answer.complaints.filter(({ path }) => path !== 'shop'),
      readable: job,
      wants: answer.names,
    }
    return
  }
  if (answer.complaints.length > 0) refused.value = { name, complaints: answer.complaints, readable: job }
  else if (unfiled()) waiting.value = { name, job }
  else lay(job)
}

/** Whether a job lies on the page: one that was opened, or one that is being typed. */
const laid = (): boolean => visited.value || changes.value.length > 0

/** What is on the page and in no file would be lost. */
const unfiled = (): boolean => changes.value.length > 0 && outcome.value?.text !== filed.value

export const layAnyway = (): void => {
  const job = waiting.value?.job ?? refused.value?.readable
  if (job) lay(job)
}
export const leaveIt = (): void => {
  refused.value = undefined
  waiting.value = undefined
}

/** Opens what was dropped or chosen: a spec, or a spec with its shop file. */
export const openFiles = async (files: readonly File[]): Promise<void> => {
  const [first] = files
  if (!first) return
  const odd = files.find((file) => file.size > largest || !/\.(?:ya?ml|json|txt)$/i.test(file.name))
  if (odd) {
    refused.value = { name: odd.name, complaints: [] }
    return
  }
  const texts = await Promise.all(files.map(async (file) => ({ name: file.name, text: await file.text() })))
  // Two at once are a spec and its shop file: the spec is the one that names a bore.
  const spec = texts.find(({ text }) => /^\s*["']?bore["']?\s*:/m.test(text)) ?? texts[0]
  const shop = texts.find((each) => each !== spec)
  if (spec) await openTexts(spec.name, spec.text, shop?.text).catch(ours)
}

/** An invented job, made up for show. */
export const openInvented = async (name: string): Promise<void> => {
  const { invented } = await import('./invented.ts')
  const text = invented[name]
  if (text === undefined) return
  await working
    .ask('open', { text })
    .then((answer) => {
      if ('document' in answer) lay({ text, document: answer.document })
    })
    .catch(ours)
}

/** Hands a file to the browser. */
export const handOver = (name: string, bytes: Uint8Array | string, type = 'application/octet-stream'): void => {
  const address = URL.createObjectURL(new Blob([bytes as BlobPart], { type }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), 60_000)
}

/** The spec as a file. */
export const keepJob = (): void => {
  const text = outcome.value?.text ?? opened.value.text
  const name = standsAt(outcome.value?.design?.spec.written.document, ['name'])
  handOver(`${typeof name === 'string' ? name : 'job'}.yaml`, text, 'application/yaml')
  filed.value = text
}

const carried = (address: string): string | undefined => /^#job=([\w-]+)$/.exec(address)?.[1]

/** The job that goes with an address that carries none: at the machine. */
const keptBeside = (state: unknown): string | undefined =>
  location.hash === machineAddress && isMapping(state) && typeof state['job'] === 'string' ? state['job'] : undefined

/** Lays what an address carries on the page; false where it carries nothing. */
const fromAddress = async (): Promise<boolean> => {
  const link = carried(location.hash) ?? keptBeside(history.state)
  const found = link === undefined ? undefined : await working.ask('unpack', link)
  if (!found) return false
  const answer = await working.ask('open', found)
  if (!('document' in answer)) return false
  open({ ...found, document: answer.document })
  filed.value = found.text
  visited.value = true
  return true
}

const fromBrowser = async (): Promise<void> => {
  const link = kept('job')
  const found = link === undefined ? undefined : await working.ask('unpack', link)
  if (!found) return
  const answer = await working.ask('open', found)
  if (!('document' in answer)) return
  open({ ...found, document: answer.document })
  visited.value = true
}

/** Takes the job that another tab has kept. */
export const takeElsewhere = async (): Promise<void> => {
  elsewhere.value = undefined
  await fromBrowser().catch(ours)
}

/** Brings back the job of the address, or the one that this browser kept, if any; then `go` on, and both are kept in step with the page. */
export const comeAndGo = async (go: () => void): Promise<void> => {
  const linked = await fromAddress().catch(() => false)
  if (!linked) await fromBrowser().catch(() => undefined)
  go()
  if (kept('units') === undefined) shownUnits.value = standsAt(opened.value.document, ['units']) === 'in' ? 'in' : 'mm'
  let last: string | undefined
  effect(() => {
    const link = outcome.value?.link
    if (link === undefined || !laid()) return
    history.replaceState({ job: link }, '', atMachine.value ? machineAddress : `#job=${link}`)
    if (link === last) return
    last = link
    keep('job', link)
  })
  addEventListener('hashchange', () => {
    if (carried(location.hash) !== undefined && carried(location.hash) !== last) void fromAddress()
  })
  whenKeptElsewhere('job', (link) => {
    elsewhere.value = link === last ? undefined : link
  })
}
