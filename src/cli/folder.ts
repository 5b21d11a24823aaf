import { createHash } from 'node:crypto'
import { mkdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import type { MadeFile } from '../make.ts'
import { json } from '../writers/json.ts'
import { inTurn, passingName } from './turn.ts'

/** `manifest.json` of a made folder: what stands there and is ours. */
export interface Manifest {
  readonly format: 'borewright-manifest/1'
  readonly name: string
  readonly files: readonly { readonly name: string; readonly size: number; readonly sha256: string }[]
}

const manifestName = 'manifest.json'

/** The folder cannot be written to, for a reason that a person can mend: one sentence. */
export class Unwritable extends Error {}

export interface Written {
  readonly written: readonly string[]
  /** Files of an earlier run that are not made any more. */
  readonly removed: readonly string[]
  /** Files of an earlier run, not made any more, that somebody has changed since: left alone. */
  readonly kept: readonly string[]
}

/**
 * Puts files into a folder, together with their manifest. Each is written under a passing name and then renamed, so that no
 * half-written file stands there under its own. Only files that an earlier manifest lists are ever replaced or removed. Two runs into one
 * folder take turns. Throws `Unwritable`.
 */
export const put = async (folder: string, name: string, files: readonly MadeFile[]): Promise<Written> => {
  await refuseForeign(folder, files)
  const written = await mendable(folder, async () => {
    await makeFolder(folder)
    return inTurn(folder, () => replaceAll(folder, name, files))
  })
  if (written === undefined) throw new Unwritable(`${folder}: another run is writing there. Try again when it is done.`)
  return written.answer
}

/** The files that an earlier run made; throws where one of ours would fall on a file of somebody else. */
const refuseForeign = async (folder: string, files: readonly MadeFile[]) => {
  const earlier = await manifestOf(folder)
  for (const file of files) {
    if (earlier.has(file.name) || file.name === manifestName) continue
    const there = await bytesOf(join(folder, file.name))
    if (there !== undefined && !sameBytes(there, file.bytes))
      throw new Unwritable(
        `${join(folder, file.name)} is there already and was not made by borewright: move it, or choose another folder with --to.`,
      )
  }
  return earlier
}

const replaceAll = async (folder: string, name: string, files: readonly MadeFile[]): Promise<Written> => {
  const earlier = await refuseForeign(folder, files)
  const now = files.map((file) => ({ name: file.name, size: file.bytes.length, sha256: sha256(file.bytes) }))
  const listed = new Set(now.map((file) => file.name))
  const gone = [...earlier.values()].filter((file) => !listed.has(file.name))
  // Claimed first: if the run is cut short, the next one still knows these files for ours.
  if (now.some((file) => !earlier.has(file.name))) await place(folder, manifestFile(name, [...now, ...gone]))
  for (const file of files) await place(folder, file)
  const removed: string[] = []
  const kept: string[] = []
  for (const file of gone) {
    const there = await bytesOf(join(folder, file.name))
    if (there === undefined) continue
    if (sha256(there) === file.sha256) {
      await rm(join(folder, file.name))
      removed.push(file.name)
    } else kept.push(file.name)
  }
  await place(folder, manifestFile(name, now))
  return { written: [...now.map((file) => file.name), manifestName], removed, kept }
}

/** Whether files of an earlier run stand in the folder. */
export const madeBefore = async (folder: string): Promise<boolean> => (await manifestOf(folder)).size > 0

/** Says what keeps a folder from being made at that path, before any work is done; `undefined` when nothing does. */
export const obstacle = async (folder: string): Promise<string | undefined> => {
  const found = await stat(folder).catch(() => undefined)
  return found === undefined || found.isDirectory() ? undefined : `${folder} is a file: a folder is wanted there.`
}

const manifestFile = (name: string, files: Manifest['files']): MadeFile => ({
  name: manifestName,
  bytes: new TextEncoder().encode(
    json({
      format: 'borewright-manifest/1',
      name,
      files: files.toSorted((a, b) => (a.name < b.name ? -1 : 1)),
    } satisfies Manifest),
  ),
})

/** The listed files by name; empty where there is no manifest of ours. Names that are no bare file names are not believed. */
const manifestOf = async (folder: string): Promise<ReadonlyMap<string, Manifest['files'][number]>> => {
  const bytes = await bytesOf(join(folder, manifestName))
  if (bytes === undefined) return new Map()
  let read: unknown
  try {
    read = JSON.parse(new TextDecoder().decode(bytes))
  } catch {
    read = undefined
  }
  const manifest = read as Partial<Manifest> | null | undefined
  if (manifest?.format !== 'borewright-manifest/1' || !Array.isArray(manifest.files))
    throw new Unwritable(
      `${join(folder, manifestName)} was not made by borewright: move it, or choose another folder with --to.`,
    )
  return new Map(
    (manifest.files as Manifest['files'])
      .filter(
        (file) => typeof file?.name === 'string' && /^[\w-][\w.-]*$/.test(file.name) && file.name !== manifestName,
      )
      .map((file) => [file.name, file]),
  )
}

const place = async (folder: string, file: MadeFile): Promise<void> => {
  const passing = join(folder, passingName(file.name))
  try {
    await writeFile(passing, file.bytes)
    await rename(passing, join(folder, file.name))
  } catch (error) {
    await rm(passing, { force: true })
    throw error
  }
}

/** Makes a folder and those above it that are missing, one level at a time: asked for all at once, some places never answer. */
const makeFolder = async (folder: string): Promise<void> => {
  if (await isFolder(folder)) return
  const above = dirname(folder)
  if (above !== folder) await makeFolder(above)
  try {
    await mkdir(folder)
  } catch (error) {
    // Made by somebody else meanwhile.
    if (await isFolder(folder)) return
    const code = error instanceof Error && 'code' in error ? error.code : undefined
    if (code === 'ENOENT') throw new Unwritable(`${folder} cannot be made: ${above} takes no folders.`)
    throw error
  }
}

const isFolder = async (path: string): Promise<boolean> =>
  (await stat(path).catch(() => undefined))?.isDirectory() === true

/** What the computer refuses (no room, no right, a file in the way) is the person's to mend, and no bug. */
const mendable = async <Answer>(folder: string, work: () => Promise<Answer>): Promise<Answer> => {
  try {
    return await work()
  } catch (error) {
    if (error instanceof Error && 'code' in error) throw new Unwritable(`${folder} cannot be written: ${error.message}`)
    throw error
  }
}

const bytesOf = async (path: string): Promise<Uint8Array | undefined> => {
  try {
    return await readFile(path)
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined
    if (code === 'ENOENT' || code === 'ENOTDIR') return undefined
    throw new Unwritable(`${path} cannot be read: ${error instanceof Error ? error.message : String(error)}`)
  }
}

const sameBytes = (a: Uint8Array, b: Uint8Array): boolean => Buffer.compare(a, b) === 0
const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')
