import { join, resolve } from 'node:path'
import { type Design, design } from '../design.ts'
import { drawable, type Format, make, partsOf, type Tools } from '../make.ts'
import { type Desk, typed } from './desk.ts'
import { madeBefore, obstacle, put, Unwritable, type Written } from './folder.ts'
import type { Job } from './job.ts'
import { count, wrap } from './lines.ts'
import { headline, openLines } from './telling.ts'
import { openTools } from './tools.ts'
import { exits, type Exit } from './verb.ts'

/** What was asked of `make`, for every spec alike. */
export interface Order {
  readonly to: string
  readonly anyway: boolean
  readonly formats?: readonly Format[]
  readonly parts?: readonly string[]
}

/** Makes one job and says what became of it; its solids in a thread of their own where there is one. */
export const makeJob = async (
  job: Extract<Job, { spec: unknown }>,
  order: Order,
  desk: Desk,
  solids?: Tools['solids'],
): Promise<Exit> => {
  const worked = design(job.spec)
  const shown = join(order.to, job.spec.name)
  const folder = resolve(desk.folder, shown)
  const broken = worked.verdict === 'fail'
  const tell = broken ? desk.complain : desk.say
  tell(headline(worked, desk.width, desk.paint))
  // Refused: what is broken, with its ways out. Else what to mind, in a line each; `check` tells the rest.
  const open = worked.findings.filter(({ verdict }) => (broken ? verdict === 'fail' : verdict !== 'pass'))
  const told = broken ? open : open.map((finding) => ({ ...finding, remedies: [] }))
  for (const line of openLines({ findings: told, spec: job.spec }, desk.width, desk.paint)) tell(line)
  try {
    if (broken && !order.anyway) {
      const stale = (await madeBefore(folder)) ? ` What stands in ${shown} is of an earlier run.` : ''
      desk.complain(`Nothing is written.${stale} To see it drawn all the same, marked on every sheet: --anyway`)
      return exits.broken
    }
    const hindered = (await obstacle(resolve(desk.folder, order.to))) ?? (await obstacle(folder))
    if (hindered !== undefined) {
      desk.complain(hindered)
      return exits.unreadable
    }
    const tools = { ...openTools(), ...(solids && { solids }) }
    const files = await make(worked, { ...order, written: job.written }, tools)
    const written = await put(folder, job.spec.name, files)
    desk.say(account(shown, job.path, worked, order, written, desk))
  } catch (error) {
    if (!(error instanceof Unwritable)) throw error
    desk.complain(error.message)
    return exits.unreadable
  }
  return broken ? exits.broken : exits.sound
}

/** What was written, a line for each part, and what to open first. */
const account = (
  shown: string,
  path: string,
  worked: Design,
  order: Order,
  { written, removed, kept }: Written,
  desk: Desk,
): string => {
  const parts = partsOf(worked)
  const partOf = (name: string): string | undefined =>
    parts.find((part) => name.startsWith(part) && /^[.-]/.test(name.slice(part.length)))
  const of = (part: string | undefined): readonly string[] => written.filter((name) => partOf(name) === part)
  const column = Math.max(0, ...parts.map((part) => part.length))
  const absent = (order.parts ?? []).filter((part) => !parts.includes(part))
  const named = parts.filter((part) => of(part).length > 0)
  const drawn = new Set(drawable(worked).map((part) => part.name))
  const undrawn = parts.filter((part) => !drawn.has(part))
  return [
    ...(undrawn.length > 0
      ? [wrap(`${undrawn.join(', ')} cannot be drawn: what is broken leaves no shape to draw.`, desk.width)]
      : []),
    `${count(written.length, 'file')} in ${desk.paint.strong(`${shown}/`)}`,
    ...named.map((part) =>
      wrap(
        of(part)
          .map((name) => name.slice(part.length))
          .join(' '),
        desk.width,
        `  ${part.padEnd(column)}  `,
      ),
    ),
    wrap(of(undefined).join(' '), desk.width, '  '),
    ...absent.map((part) => `  This job has no ${part}.`),
    ...(worked.verdict === 'pass' ? [] : [`  Ways out and sizes: ${desk.called} check ${typed(path)}`]),
    ...(removed.length > 0 ? [wrap(`removed, of an earlier run: ${removed.join(', ')}`, desk.width, '  ')] : []),
    ...(kept.length > 0 ? [wrap(`left, since somebody changed it: ${kept.join(', ')}`, desk.width, '  ')] : []),
    ...openFirst(written).map((name) => `  Open ${join(shown, name)} first, and print it at 100 %.`),
  ].join('\n')
}

/** Card and drawings in one, else the drawings. */
const openFirst = (written: readonly string[]): readonly string[] =>
  ['packet.pdf', 'drawings.pdf', 'card.html'].filter((name) => written.includes(name)).slice(0, 1)
