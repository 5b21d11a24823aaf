import { execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

/** A browser to be started: its program, and what it wants of its surroundings. */
export interface Found {
  readonly program: string
  readonly args: readonly string[]
  readonly env: Readonly<Record<string, string>>
}

const root = join(import.meta.dirname, '../..')
const own = join(root, 'node_modules/.cache/borewright-browser')
const installed = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
]

const onPath = (name: string): string | undefined => {
  if (name.startsWith('/')) return existsSync(name) ? name : undefined
  try {
    return execFileSync('sh', ['-c', `command -v ${name}`], { encoding: 'utf8' }).trim() || undefined
  } catch {
    return undefined
  }
}

const flags = ['--no-sandbox', '--disable-dev-shm-usage']
/** Lays the page down by the processor, straight away: five times as quick as by a graphics card that is imitated. No solids then. */
export const plainly = ['--disable-gpu']
/** Imitates the graphics card that solids want. */
export const withSolids = ['--use-angle=swiftshader', '--enable-unsafe-swiftshader']

/** The browser that is named, else one that is installed, else the one that the tests bring along. None is a failure. */
export const findBrowser = async (): Promise<Found> => {
  const named = process.env['CHROME_PATH']
  if (named) {
    if (!existsSync(named)) throw new Error(`CHROME_PATH names ${named}, and there is no such file`)
    return { program: named, args: flags, env: {} }
  }
  const there = installed.map(onPath).find((path) => path !== undefined)
  if (there !== undefined) return { program: there, args: flags, env: {} }
  if (process.platform !== 'linux' || process.arch !== 'x64')
    throw new Error('No Chromium or Chrome was found: install one, or name it in CHROME_PATH.')
  return unpacked()
}

/** The browser from npm, unpacked once into a folder of our own, with the libraries and letters that it brings. */
const unpacked = async (): Promise<Found> => {
  mkdirSync(own, { recursive: true })
  // It unpacks its libraries where it believes to be in the surroundings that it was made for, and all into the folder for passing files.
  const kept = {
    aws: process.env['AWS_EXECUTION_ENV'],
    folder: process.env['TMPDIR'],
    libraries: process.env['LD_LIBRARY_PATH'],
  }
  process.env['AWS_EXECUTION_ENV'] = 'AWS_Lambda_nodejs20.x'
  process.env['TMPDIR'] = own
  try {
    const { default: chromium } = await import('@sparticuz/chromium')
    const program = await chromium.executablePath()
    const fonts = join(own, 'fonts.conf')
    writeFileSync(
      fonts,
      `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig><dir>${join(own, 'fonts')}</dir><dir>/usr/share/fonts</dir><dir>${join(root, 'node_modules/dejavu-fonts-ttf/ttf')}</dir><cachedir>${join(own, 'font-cache')}</cachedir></fontconfig>\n`,
    )
    return {
      program,
      args: flags,
      env: { LD_LIBRARY_PATH: join(own, 'al2023/lib'), FONTCONFIG_FILE: fonts, HOME: own },
    }
  } finally {
    for (const [name, value] of [
      ['AWS_EXECUTION_ENV', kept.aws],
      ['TMPDIR', kept.folder],
      ['LD_LIBRARY_PATH', kept.libraries],
    ] as const)
      if (value === undefined) delete process.env[name]
      else process.env[name] = value
  }
}
