import { spawn } from 'node:child_process'
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** The built page: beside the bundled program, or where it was built when run from the sources; `undefined` where there is none. */
export const pageFolder = (): string | undefined =>
  ['page/', '../../dist/page/']
    .map((place) => fileURLToPath(new URL(place, import.meta.url)))
    .find((folder) => existsSync(join(folder, 'index.html')))

/** Asks the computer to open an address; false where it has nobody to ask. */
export const openInBrowser = (address: string): boolean => {
  const [command, ...words] =
    process.platform === 'darwin'
      ? ['open', address]
      : process.platform === 'win32'
        ? ['cmd', '/c', 'start', '', address]
        : ['xdg-open', address]
  if (process.platform === 'linux' && !process.env['DISPLAY'] && !process.env['WAYLAND_DISPLAY']) return false
  const asked = spawn(command ?? '', words, { stdio: 'ignore', detached: true })
  // Nobody there to open it: the address has been said.
  asked.on('error', () => undefined)
  asked.unref()
  return true
}

/** Until Ctrl+C, or until the program is told to end. */
export const untilStopped = (): Promise<void> =>
  new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => resolve())
  })
