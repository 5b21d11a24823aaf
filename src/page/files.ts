import { signal } from '@preact/signals'
import type { Format } from '../make.ts'
import { drawing, fault, making, outcome, settled } from './answers.ts'
import { handOver } from './coming-and-going.ts'
import { opened } from './job.ts'
import { layCard } from './printing.ts'
import { still } from './still.ts'
import type { Carving, JobMade, PartShown } from './workers/makes.ts'
import { Ended } from './workers/talk.ts'

/** The parts of the job with their sheets, drawn when the job has been still for a while. */
export const parts = signal<readonly PartShown[]>([])
/** What is being made, and how far it is. */
export const carving = signal<Carving | undefined>(undefined)
export const busyWith = signal<string | undefined>(undefined)
/** Why solids do not come. */
export const solidsFailed = signal(false)

const jobMade = (): JobMade | undefined => {
  const text = outcome.value?.text
  if (text === undefined || !outcome.value?.design) return undefined
  return { text, ...(opened.value.shop !== undefined && { shop: opened.value.shop }) }
}

/** Keeps the sheets in step with the job: laid when it has been still for a while, one at a time. */
export const followParts = (): void => {
  let timer: ReturnType<typeof setTimeout> | undefined
  let laid: string | undefined
  let busy = false
  const lay = async (): Promise<void> => {
    const job = jobMade()
    if (busy || !job || job.text === laid) return
    busy = true
    laid = job.text
    try {
      parts.value = await drawing.ask('parts', job)
      layCard(await drawing.ask('card', job))
    } catch (error) {
      if (!(error instanceof Ended)) fault.value = String(error)
    }
    busy = false
    // What was changed meanwhile is laid next.
    void lay()
  }
  settled.subscribe((now) => {
    if (!now?.design) return
    clearTimeout(timer)
    timer = setTimeout(() => void lay(), still)
  })
}

const solids: readonly Format[] = ['stl', '3mf']

const told = async (what: string, make: (job: JobMade) => Promise<void>): Promise<void> => {
  const job = jobMade()
  if (!job || busyWith.value !== undefined) return
  busyWith.value = what
  solidsFailed.value = false
  try {
    await make(job)
  } catch (error) {
    if (error instanceof Ended) return
    if (/wasm|WebAssembly|kernel|memory/i.test(String(error))) solidsFailed.value = true
    else fault.value = error instanceof Error ? (error.stack ?? error.message) : String(error)
    making.end()
  } finally {
    busyWith.value = undefined
    carving.value = undefined
  }
}

const step = (at: unknown): void => {
  carving.value = at as Carving
}

/** One part in one format, as many files as it has sheets; without a part, what is of the whole job. `only`: one file of them. */
export const makeFiles = (part: string | undefined, format: Format, only?: string): Promise<void> =>
  told(`${part ?? only ?? 'all'}.${format}`, async (job) => {
    const files = await making.ask(
      'files',
      { ...job, formats: [format], ...(part !== undefined && { parts: [part] }) },
      solids.includes(format) ? step : undefined,
    )
    for (const file of files) {
      if (only !== undefined && file.name !== only) continue
      // What is printed in one go is of the whole job: of one part it would be another file by the same name.
      if (part !== undefined && file.name === 'gauges.3mf') continue
      if (file.name === 'report.json' || file.name.startsWith('spec.') || file.name.startsWith('shop.')) continue
      handOver(file.name === 'drawings.pdf' && part !== undefined ? `${part}.pdf` : file.name, file.bytes)
    }
  })

/** The report, for other programs. */
export const makeReport = (): Promise<void> =>
  told('report', async (job) => {
    const files = await making.ask('files', { ...job, formats: [] })
    const report = files.find((file) => file.name === 'report.json')
    if (report) handOver(report.name, report.bytes, 'application/json')
  })

/** Every file that the command line writes, in one zip. */
export const makeEverything = (): Promise<void> =>
  told('everything', async (job) => {
    const { zip } = await making.ask('everything', job, step)
    const name = settled.value?.design?.spec.name ?? 'job'
    handOver(`${name}.zip`, zip, 'application/zip')
  })

/** What is under way is dropped. */
export const dropMaking = (): void => making.end()
