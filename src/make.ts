import { type Part, sideBySide } from '../generators/part.ts'
import { about } from './checks/families.ts'
import { parts } from '../generators/set.ts'
import type { Design } from './design.ts'
import { laySet } from './drawing/set.ts'
import type { Sheet } from './drawing/sheet.ts'
import type { Kernel, Mesh } from './solid/mesh.ts'
import { canonical, json } from './writers/json.ts'
import type { Faces } from './writers/card-files.ts'
import type { Fonts } from './writers/fonts.ts'
import { report } from './writers/report.ts'

/** Formats that can be asked for. `report.json` is made always. */
export const formats = ['pdf', 'html', 'svg', 'dxf', 'dxf-live', 'stl', '3mf', 'profile'] as const
/** One of the formats that can be asked for. */
export type Format = (typeof formats)[number]

/** What is made when nothing is said: all but the DXF with live dimensions. */
export const usual: readonly Format[] = formats.filter((format) => format !== 'dxf-live')

/** Names of all parts that there can be, in the order in which they are made. */
export const partNames: readonly string[] = parts.map((part) => part.name)

/** Names of the parts that a design has. */
export const partsOf = (design: Design): readonly string[] =>
  parts.filter((part) => part.belongs(design)).map((part) => part.name)

/** A file to be: a bare name and its bytes. */
export interface MadeFile {
  readonly name: string
  readonly bytes: Uint8Array
}

/** What is to be made of a design; all may be left out. */
export interface Wanted {
  /** Left out: `usual`. */
  readonly formats?: readonly Format[]
  /** Names of parts; left out: every part that the design has. */
  readonly parts?: readonly string[]
  /** Spec and shop file as they were written, to be put beside what is made of them. */
  readonly written?: readonly MadeFile[]
}

/** What making needs of the computer, opened when a format first asks for it. */
export interface Tools {
  readonly kernel: () => Promise<Kernel>
  readonly fonts: () => Promise<Fonts>
  /** The job card's. */
  readonly faces: () => Promise<Faces>
  /** Makes the solids' files elsewhere, at the same time as the others, where the computer has a core to spare. */
  readonly solids?: (design: Design, wanted: Wanted) => Promise<readonly MadeFile[]>
}

/**
 * The files of a design: report, drawings of the whole set as one PDF, the job card by itself and in a packet with them, and for each part its sheets, solid and profile. Pure but for the
 * tools: the same design gives the same bytes. It makes whatever it is given, sound or not; a broken rule stands on every sheet.
 */
export const make = async (design: Design, wanted: Wanted, tools: Tools): Promise<MadeFile[]> => {
  const asked = new Set(wanted.formats ?? usual)
  const carved = elsewhere(design, wanted, asked, tools)
  const drawn = drawable(design)
  const made = drawn.filter((part) => wanted.parts?.includes(part.name) ?? true)
  const sheets = ['pdf', 'svg', 'dxf', 'dxf-live'].some((format) => asked.has(format as Format))
    ? (await sheetsOf(design, drawn)).filter((sheet) => made.some((part) => part.name === sheet.part))
    : []
  const files: MadeFile[] = [...(wanted.written ?? []), { name: 'report.json', bytes: utf8(json(report(design))) }]
  if (asked.has('pdf') && sheets.length > 0) {
    const { pdf } = await import('./writers/pdf.ts')
    files.push({ name: 'drawings.pdf', bytes: await pdf(sheets, await tools.fonts()) })
  }
  // The card is of the whole job: parts that are asked for by name are had without it.
  if (!wanted.parts && (asked.has('html') || asked.has('pdf'))) {
    const { cardFiles } = await import('./writers/card-files.ts')
    files.push(...(await cardFiles(design, sheets, { html: asked.has('html'), pdf: asked.has('pdf') }, tools)))
  }
  const plate: Named[] = []
  for (const part of made) {
    files.push(...(await filesOf(part, design, sheets, asked)))
    if (carved) files.push(...solidsIn(await carved, part.name))
    else if (solid(asked)) files.push(...(await solidsOf(part, design, asked, tools, plate)))
  }
  if (carved) files.push(...solidsIn(await carved, 'gauges'))
  if (plate.length > 1) files.push({ name: 'gauges.3mf', bytes: (await import('./writers/3mf.ts')).threeMf(plate) })
  return files
}

const solid = (asked: ReadonlySet<Format>): boolean => asked.has('stl') || asked.has('3mf')

/** What is carved elsewhere meanwhile; undefined where nothing is, or where there is no elsewhere. */
const elsewhere = (
  design: Design,
  { parts }: Wanted,
  asked: ReadonlySet<Format>,
  { solids }: Tools,
): Promise<readonly MadeFile[]> | undefined => {
  if (!solids || !solid(asked)) return undefined
  const formats = [...asked].filter((format) => format === 'stl' || format === '3mf')
  const files = solids(design, { formats, ...(parts && { parts }) })
  // Whoever waits for it hears of it; until then it is nobody's.
  files.catch(() => undefined)
  return files
}

/** Of files carved elsewhere, those of one part. */
const solidsIn = (files: readonly MadeFile[], part: string): readonly MadeFile[] =>
  files.filter(({ name }) => name === `${part}.mm.stl` || name === `${part}.3mf`)

interface Named {
  readonly name: string
  readonly mesh: Mesh
}

const allFinite = (value: unknown): boolean =>
  typeof value === 'number'
    ? Number.isFinite(value)
    : typeof value !== 'object' || value === null || Object.values(value).every(allFinite)

/** Whether a part of a broken job comes out at all: sizes that make no sense together leave nothing to draw. */
const comesOut = (part: Part, design: Design): boolean => {
  try {
    return allFinite(part.drawing(design)) && allFinite(part.solid(design))
  } catch {
    return false
  }
}

/** The parts that can be drawn: all of a job in which nothing is broken; of a broken one those whose sizes make sense. */
export const drawable = (design: Design): readonly Part[] =>
  parts.filter((part) => part.belongs(design) && (design.verdict !== 'fail' || comesOut(part, design)))

/** First eight hexadecimal digits of the SHA-256 of spec and shop as read, whatever the order of their names. Stands on every sheet. */
export const checksum = async (design: Design): Promise<string> => {
  const digest = await crypto.subtle.digest('SHA-256', utf8(canonical(design.spec.written)))
  return [...new Uint8Array(digest, 0, 4)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}

/** The whole set is laid, so that a sheet keeps its number whichever parts are asked for. */
const sheetsOf = async (design: Design, drawn: readonly Part[]): Promise<readonly Sheet[]> => {
  const { spec, findings } = design
  const broken = findings.filter((finding) => finding.verdict === 'fail')
  /** Every sheet of a broken job is marked: with what is broken of the part itself or of the whole job, else with what is broken elsewhere. */
  const bandOf = (part: string): string | undefined => {
    const { of } = drawn.find(({ name }) => name === part) ?? { of: 'job' }
    const own = broken.filter(({ rule }) => ['job', of].includes(about(rule)))
    const [first, ...others] = own.length > 0 ? own : broken
    const more = others.length > 0 ? ` ${others.length} more.` : ''
    return first && `DO NOT MAKE${own.length > 0 ? '' : ' YET, broken elsewhere'}: ${first.reason}${more}`
  }
  return laySet(
    drawn.map((part) => part.drawing(design)),
    {
      ...spec.drafting,
      units: spec.units,
      job: spec.name,
      checksum: await checksum(design),
      verdict: verdictWords(design),
    },
    bandOf,
  )
}

/** `sound`, `sound, 2 cautions`, `not all told, 1 unknown`, `broken, 1 rule`. */
const verdictWords = ({ findings, verdict }: Design): string => {
  const of = (asked: Design['verdict']): number => findings.filter((finding) => finding.verdict === asked).length
  const counted = (number: number, one: string): string => `${number} ${one}${number === 1 ? '' : 's'}`
  switch (verdict) {
    case 'pass':
      return 'sound'
    case 'caution':
      return `sound, ${counted(of('caution'), 'caution')}`
    case 'unknown':
      return `not all told, ${of('unknown')} unknown`
    case 'fail':
      return `broken, ${counted(of('fail'), 'rule')}`
  }
}

const filesOf = async (
  part: Part,
  design: Design,
  sheets: readonly Sheet[],
  asked: ReadonlySet<Format>,
): Promise<MadeFile[]> => {
  const files: MadeFile[] = []
  const own = sheets.filter((sheet) => sheet.part === part.name)
  for (const [at, sheet] of own.entries()) {
    const stem = at === 0 ? part.name : `${part.name}-${at + 1}`
    if (asked.has('svg'))
      files.push({ name: `${stem}.svg`, bytes: utf8((await import('./writers/svg.ts')).svg(sheet)) })
    if (asked.has('dxf'))
      files.push({ name: `${stem}.dxf`, bytes: utf8((await import('./writers/dxf.ts')).dxf(sheet)) })
    if (asked.has('dxf-live'))
      files.push({ name: `${stem}.live.dxf`, bytes: utf8((await import('./writers/dxf-live.ts')).liveDxf(sheet)) })
  }
  if (asked.has('profile') && part.profile) {
    const { profileDxf, profileSvg } = await import('./writers/profile.ts')
    const profile = part.profile(design)
    files.push(
      { name: `${profile.name}.profile.dxf`, bytes: utf8(profileDxf(profile)) },
      { name: `${profile.name}.profile.svg`, bytes: utf8(profileSvg(profile)) },
    )
  }
  return files
}

/** Solids of one part; what of it is printed goes on the `plate` too. */
const solidsOf = async (
  part: Part,
  design: Design,
  asked: ReadonlySet<Format>,
  tools: Tools,
  plate: Named[],
): Promise<MadeFile[]> => {
  const { carveAll } = await import('./solid/mesh.ts')
  const kernel = await tools.kernel()
  const prints = part.prints?.(design) ?? [{ name: part.name, solid: part.solid(design) }]
  let named: Named[]
  let whole: Mesh | undefined
  try {
    const bodies = prints.map(({ solid }) => solid)
    // Several bodies side by side are a solid of their own.
    const together = prints.length > 1 && asked.has('stl') ? [sideBySide(prints)] : []
    const meshes = carveAll(kernel, [...bodies, ...together])
    named = prints.flatMap(({ name }, at) => (meshes[at] ? [{ name, mesh: meshes[at] }] : []))
    whole = meshes[together.length > 0 ? prints.length : 0]
  } catch (error) {
    // A broken job may describe no body: its sheet stands without a solid. In a sound one it is a bug.
    if (design.verdict === 'fail') return []
    throw error
  }
  const files: MadeFile[] = []
  // STL states no unit: its name does.
  if (asked.has('stl') && whole)
    files.push({ name: `${part.name}.mm.stl`, bytes: (await import('./writers/stl.ts')).stl(whole) })
  if (asked.has('3mf')) {
    files.push({ name: `${part.name}.3mf`, bytes: (await import('./writers/3mf.ts')).threeMf(named) })
    if (part.prints) plate.push(...named)
  }
  return files
}

const utf8 = (text: string): Uint8Array<ArrayBuffer> => new TextEncoder().encode(text)
