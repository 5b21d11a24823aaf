import boldFace from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf?url'
import face from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf?url'
import { zipSync } from 'fflate'
import cardBold from '../../writers/faces/AtkinsonHyperlegibleNext-Bold.ttf?url'
import cardBoldWeb from '../../writers/faces/AtkinsonHyperlegibleNext-Bold.woff2?url'
import cardFace from '../../writers/faces/AtkinsonHyperlegibleNext-Regular.ttf?url'
import cardFaceWeb from '../../writers/faces/AtkinsonHyperlegibleNext-Regular.woff2?url'
import wasm from 'manifold-3d/manifold.wasm?url'
import { type Design, design, sizesOf } from '../../design.ts'
import { drawable, type Format, make, type MadeFile, type Tools, usual } from '../../make.ts'
import { parse } from '../../spec/parse.ts'
import { readSpec, shopPath } from '../../spec/read.ts'
import type { Spec } from '../../spec/spec.ts'
import { json } from '../../writers/json.ts'
import { type Facets, facetsOf } from '../solid-view/facets.ts'
import type { Carved, Carving, JobMade, Makes } from './makes.ts'
import type { Hands } from './talk.ts'

const bytes = async (address: string): Promise<Uint8Array> => {
  const answer = await fetch(address)
  if (!answer.ok) throw new Error(`${address} cannot be had: ${answer.status}`)
  return new Uint8Array(await answer.arrayBuffer())
}

const once = <Thing>(open: () => Promise<Thing>): (() => Promise<Thing>) => {
  let opened: Promise<Thing> | undefined
  return () => {
    opened ??= open()
    // Asked again after a failure, it is tried again.
    opened.catch(() => {
      opened = undefined
    })
    return opened
  }
}

const tools: Tools = {
  kernel: once(async () => {
    const { openKernel } = await import('../../solid/mesh.ts')
    return openKernel(await bytes(wasm))
  }),
  fonts: once(async () => {
    const [regular, bold] = await Promise.all([bytes(face), bytes(boldFace)])
    return { regular, bold }
  }),
  faces: once(async () => {
    const [regular, bold, webRegular, webBold] = await Promise.all(
      [cardFace, cardBold, cardFaceWeb, cardBoldWeb].map((address) => bytes(address)),
    )
    if (!regular || !bold || !webRegular || !webBold) throw new Error('the card’s faces cannot be had')
    return { print: { regular, bold }, web: { regular: webRegular, bold: webBold } }
  }),
}

const utf8 = (text: string): Uint8Array<ArrayBuffer> => new TextEncoder().encode(text)

/** The job read from its own text, as the command line reads it. */
const read = ({ text, shop }: JobMade): { readonly spec: Spec; readonly written: readonly MadeFile[] } => {
  const parsed = parse(text)
  const shopParsed = shop === undefined ? undefined : parse(shop)
  if ('complaints' in parsed || (shopParsed && 'complaints' in shopParsed)) throw new Error('the text cannot be read')
  const outcome = readSpec(parsed.document, shopParsed?.document)
  if ('complaints' in outcome) throw new Error('the spec has complaints')
  const named = shopPath(parsed.document)
  const ending = named?.toLowerCase().endsWith('.json') ? '.json' : '.yaml'
  return {
    spec: outcome.spec,
    written: [
      { name: 'spec.yaml', bytes: utf8(text) },
      ...(shop === undefined || named === undefined ? [] : [{ name: `shop${ending}`, bytes: utf8(shop) }]),
    ],
  }
}

const worked = (job: JobMade): Design => design(read(job).spec)

/** The files, in the order of the command line. The kernel is asked for once for each solid, which tells how far they are. */
const filesOf = async (
  job: JobMade,
  formats: readonly Format[],
  parts: readonly string[] | undefined,
  step: (step: unknown) => void,
): Promise<MadeFile[]> => {
  const { spec, written } = read(job)
  const whole = design(spec)
  const names = drawable(whole)
    .map((part) => part.name)
    .filter((name) => parts?.includes(name) ?? true)
  let at = 0
  const kernel: Tools['kernel'] = () => {
    step({ part: names[at] ?? '', at, of: names.length })
    at += 1
    return tools.kernel()
  }
  return make(whole, { formats, ...(parts && { parts }), written }, { ...tools, kernel })
}

const hex = (digest: ArrayBuffer): string =>
  [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('')

/** The list of what was made, as the command line writes it. */
const manifest = async (name: string, files: readonly MadeFile[]): Promise<MadeFile> => ({
  name: 'manifest.json',
  bytes: utf8(
    json({
      format: 'borewright-manifest/1',
      name,
      files: (
        await Promise.all(
          files.map(async (file) => ({
            name: file.name,
            size: file.bytes.length,
            sha256: hex(await crypto.subtle.digest('SHA-256', file.bytes as Uint8Array<ArrayBuffer>)),
          })),
        )
      ).toSorted((a, b) => (a.name < b.name ? -1 : 1)),
    }),
  ),
})

/** No clock: every file of a zip is of the first day that a zip can say. */
const firstDay = new Date(1980, 0, 1)

/** What was carved last, by its recipe: most of what is told changes few parts. */
const carved = new Map<string, Facets>()

/** Makes files, sheets and solids. */
export const making: Hands<Makes> = {
  parts: async (job) => {
    const whole = worked(job)
    const files = await make(whole, { formats: ['svg'] }, tools)
    return drawable(whole).map(({ name, title, profile }) => ({
      name,
      title,
      profile: profile !== undefined,
      sheets: files
        .filter((file) => file.name === `${name}.svg` || new RegExp(`^${name}-\\d+\\.svg$`).test(file.name))
        .map((file) => ({ name: file.name, svg: new TextDecoder().decode(file.bytes) })),
    }))
  },

  card: async (job) => {
    const files = await make(worked(job), { formats: ['html'] }, tools)
    const html = files.find((file) => file.name === 'card.html')
    if (!html) return undefined
    const text = new TextDecoder().decode(html.bytes)
    const within = (tag: string): string => new RegExp(`<${tag}>([^]*)</${tag}>`).exec(text)?.[1] ?? ''
    return { style: within('style'), main: within('main') }
  },

  files: ({ formats = usual, parts, ...job }, step) => filesOf(job, formats, parts, step),

  solids: async ({ verdict, ...job }, step) => {
    const whole: Design = { ...sizesOf(read(job).spec), findings: [], verdict }
    const parts = drawable(whole)
    const kernel = await tools.kernel()
    const { carve } = await import('../../solid/mesh.ts')
    const before = new Map(carved)
    carved.clear()
    for (const [at, { name, title, solid }] of parts.entries()) {
      step({ part: name, at, of: parts.length } satisfies Carving)
      const recipe = solid(whole)
      const written = JSON.stringify(recipe)
      // Coarser than a file: it is looked at, not made.
      const facets = before.get(written) ?? facetsOf(carve(kernel, recipe, 0.03))
      carved.set(written, facets)
      step({ part: name, title, facets } satisfies Carved)
    }
    return parts.length
  },

  everything: async (job, step) => {
    const files = await filesOf(job, usual, undefined, step)
    const { name } = read(job).spec
    const all = [...files, await manifest(name, files)]
    const folder = Object.fromEntries(all.map((file) => [`${name}/${file.name}`, file.bytes]))
    return { zip: zipSync(folder, { level: 6, mtime: firstDay }), count: all.length }
  },
}
