import { spawn } from 'node:child_process'
import { inject } from 'vitest'

const program = inject('program')

export interface Ran {
  readonly status: number | null
  readonly out: string
  readonly err: string
}

/** Runs the bundled program as a process of its own, in `folder`, with nothing at a terminal. */
export const run = (
  folder: string,
  words: readonly string[],
  more: Readonly<Record<string, string>> = {},
): Promise<Ran> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [program, ...words], {
      cwd: folder,
      env: { ...process.env, ...more },
      stdio: ['pipe', 'pipe', 'pipe'],
    })
    let [out, err] = ['', '']
    child.stdout.setEncoding('utf8').on('data', (text: string) => (out += text))
    child.stderr.setEncoding('utf8').on('data', (text: string) => (err += text))
    child.on('error', reject)
    child.on('close', (status) => resolve({ status, out, err }))
    child.stdin.end()
  })
