import { readdir, readFile, stat } from 'node:fs/promises'
import { basename, dirname, extname, resolve } from 'node:path'
import type { MadeFile } from '../make.ts'
import type { Complaint } from '../spec/complaint.ts'
import { parse } from '../spec/parse.ts'
import { tellOf } from '../spec/print.ts'
import { readSpec, shopPath } from '../spec/read.ts'
import type { Spec } from '../spec/spec.ts'
import { suggest } from './suggest.ts'

/** A spec as read from its file, or what is wrong with it: a line for each complaint. */
export type Job =
  | { readonly path: string; readonly spec: Spec; readonly written: readonly MadeFile[] }
  | { readonly path: string; readonly wrong: string }

/** Larger than any spec, smaller than what chokes a parser. Bytes. */
const largest = 1_000_000

/** Reads the spec at a path, and the shop file that it names (from the spec's own folder). Never throws for what a person wrote. */
export const readJob = async (path: string, folder: string): Promise<Job> => {
  const at = resolve(folder, path)
  const read = await document(at, path)
  if ('wrong' in read) return { path, wrong: read.wrong }
  const named = shopPath(read.document)
  const shopShown = `${named} (the shop file of ${path})`
  const shop =
    named === undefined ? undefined : await document(resolve(dirname(at), named), shopShown, 'shop file', basename(at))
  if (shop !== undefined && 'wrong' in shop) return { path, wrong: shop.wrong }
  const outcome = readSpec(read.document, shop?.document)
  if ('complaints' in outcome) {
    const ofShop = outcome.complaints.filter((each) => shop !== undefined && inShop.test(each.path))
    const ofSpec = outcome.complaints.filter((each) => !ofShop.includes(each))
    const bare = ofShop.map((each) => ({ ...each, path: each.path.replace(inShop, '') }))
    return { path, wrong: [...told(path, ofSpec), ...told(shopShown, bare, 'shop file')].join('\n') }
  }
  return {
    path,
    spec: outcome.spec,
    written: [
      { name: `spec${ending(at)}`, bytes: read.bytes },
      ...(shop === undefined || named === undefined ? [] : [{ name: `shop${ending(named)}`, bytes: shop.bytes }]),
    ],
  }
}

/** Complaints, by place in the list, of specs whose name an earlier one has: the later would write over it. Unreadable ones are none. */
export const twins = async (paths: readonly string[], folder: string): Promise<ReadonlyMap<number, string>> => {
  const taken = new Map<string, string>()
  const wrong = new Map<number, string>()
  for (const [at, path] of paths.entries()) {
    const read = await document(resolve(folder, path), path)
    const name = 'document' in read ? nameIn(read.document) : undefined
    if (name === undefined) continue
    // As a folder name, on computers that do not tell capitals apart.
    const earlier = taken.get(name.toLowerCase())
    if (earlier === undefined) taken.set(name.toLowerCase(), path)
    else wrong.set(at, `${path}: its name, ${name}, is also that of ${earlier}, whose folder it would write over.`)
  }
  return wrong
}

const nameIn = (read: unknown): string | undefined => {
  const name = typeof read === 'object' && read !== null && 'name' in read ? read.name : undefined
  return typeof name === 'string' ? name : undefined
}

/** What is said of the shop has its own file to stand in. */
const inShop = /^shop(?:\.|(?=\[)|$)/

const ending = (path: string): string => (extname(path).toLowerCase() === '.json' ? '.json' : '.yaml')

type Document = { readonly document: unknown; readonly bytes: Uint8Array } | { readonly wrong: string }

/** `not`: a file that it cannot have been meant to be. */
const document = async (at: string, shown: string, what = 'spec', not?: string): Promise<Document> => {
  let bytes: Uint8Array
  try {
    const found = await stat(at)
    if (found.isDirectory()) return { wrong: `${shown} is a folder: a ${what} is one file.` }
    if (found.isCharacterDevice() || found.isBlockDevice())
      return { wrong: `${shown} is a device: a ${what} is one file.` }
    if (found.size > largest) return { wrong: `${shown} is far too large for a ${what} (${found.size} bytes).` }
    bytes = await readFile(at)
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined
    if (code === 'ENOENT' || code === 'ENOTDIR')
      return { wrong: `${shown}: there is no such file.${await alike(at, not)}` }
    return { wrong: `${shown} cannot be read: ${error instanceof Error ? error.message : String(error)}` }
  }
  const text = new TextDecoder().decode(bytes)
  if (notText.test(text)) return { wrong: `${shown} is not a text file: a ${what} is YAML or JSON, in UTF-8.` }
  const read = parse(text)
  return 'complaints' in read
    ? { wrong: told(shown, read.complaints, what).join('\n') }
    : { document: read.document, bytes }
}

/** Control characters that stand in no text. */
// oxlint-disable-next-line no-control-regex
const notText = /[\u0000-\u0008\u000e-\u001a\u001c-\u001f]/

const told = (path: string, complaints: readonly Complaint[], what = 'spec'): string[] =>
  complaints.map((complaint) => `${path}: ${tellOf(`the ${what}`, complaint)}`)

const alike = async (at: string, not?: string): Promise<string> => {
  const names = await readdir(dirname(at)).catch(() => [])
  return suggest(
    basename(at),
    names.filter((name) => /\.(ya?ml|json)$/i.test(name) && name !== not),
  )
}
