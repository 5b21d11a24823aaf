import { execFile, execFileSync } from 'node:child_process'
import { readdirSync } from 'node:fs'
import { join } from 'node:path'

/** Programs that are not ours, as Debian names their packages. */
export const packages = {
  admesh: 'admesh',
  pdfinfo: 'poppler-utils',
  pdftoppm: 'poppler-utils',
  'prusa-slicer': 'prusa-slicer',
  slic3r: 'slic3r',
  xmllint: 'libxml2-utils',
} as const
export type Program = keyof typeof packages

const answers = (command: string, ...words: string[]): boolean => {
  try {
    execFileSync(command, words, { stdio: 'ignore', timeout: 60_000 })
    return true
  } catch {
    return false
  }
}

/** Whether the program is on this machine. */
export const has = (program: Program): boolean => answers('sh', '-c', `command -v ${program}`)

/** Python that has the reader of DXF; Debian's own is asked by its path. */
export const python = ['/usr/bin/python3', 'python3'].find((each) => answers(each, '-c', 'import ezdxf'))

/** Runs a program and gives what it said, on either stream; throws where it left with another status than 0. */
export const said = (command: string, words: readonly string[], timeout = 60_000): Promise<string> =>
  new Promise((resolve, reject) => {
    execFile(command, words, { timeout, maxBuffer: 1e8 }, (error, out, err) =>
      error ? reject(new Error(`${command} ${words.join(' ')}: ${error.message}\n${out}${err}`)) : resolve(out + err),
    )
  })

const examples = join(import.meta.dirname, '../../output/examples')

/** Every file of the examples whose name ends so. */
export const ofExamples = (ending: string): readonly string[] =>
  readdirSync(examples, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith(ending))
    .toSorted()
    .map((name) => join(examples, name))

/** `cider-mill-pulley/plug-gauge.3mf` */
export const called = (path: string): string => path.slice(examples.length + 1)
