import { relative } from 'node:path'

/** All that a verb sees of the person and the computer besides the files. */
export interface Desk {
  /** The folder that relative paths start from. */
  readonly folder: string
  /** How this program was called, for commands that are to be typed next: `borewright`, `node dist/borewright.js`. */
  readonly called: string
  /** A person sits at both ends: questions may be asked, progress may be shown. */
  readonly attended: boolean
  readonly width: number
  readonly paint: Paint
  /** A line, or several, for whoever asked. */
  readonly say: (text: string) => void
  /** A line, or several, of what is wrong. */
  readonly complain: (text: string) => void
}

export type Paint = Readonly<Record<'strong' | 'good' | 'careful' | 'bad' | 'quiet', (text: string) => string>>

const colours = { strong: [1, 22], good: [32, 39], careful: [33, 39], bad: [31, 39], quiet: [2, 22] } as const

/** Colours for a terminal; plain text where `colour` is false. */
export const paint = (colour: boolean): Paint => {
  const brush =
    ([on, off]: readonly [number, number]) =>
    (text: string) =>
      colour && text !== '' ? `\u001b[${on}m${text}\u001b[${off}m` : text
  return {
    strong: brush(colours.strong),
    good: brush(colours.good),
    careful: brush(colours.careful),
    bad: brush(colours.bad),
    quiet: brush(colours.quiet),
  }
}

/** Characters on a line. A terminal that reports none, or fewer than anything can be read in, is taken for 80; a pipe for 100. */
export const widthOf = (columns: number | undefined): number =>
  columns === undefined ? 100 : columns < 40 ? 80 : Math.min(columns, 110)

/** How to call the program again, told from the path that it was started by: the name of its link, or `node` and the file. */
export const calledAs = (started: string, folder: string): string => {
  const installed = started.split(/[\\/]/).includes('node_modules')
  if (installed || !/\.[cm]?[jt]s$/.test(started)) return 'borewright'
  const near = relative(folder, started)
  return `node ${typed(near.startsWith('..') ? started : near)}`
}

/** A word as it has to be typed at a shell: in quotes where it has blanks or signs in it. */
export const typed = (word: string): string =>
  /^[\w./\\:,@%+-]+$/.test(word) ? word : `"${word.replace(/["$`]/g, '\\$&')}"`

/**
 * The desk of this run: colour only at a terminal and without NO_COLOR (no-color.org: any value but the empty one). `allSaid`: whether
 * everything that was said has been handed on. What costs time to find out is found out when it is asked for.
 */
export const deskOf = (running: NodeJS.Process): Desk & { readonly allSaid: () => boolean } => {
  const used = new Set<NodeJS.WriteStream>()
  const write = (stream: NodeJS.WriteStream, text: string): void => {
    used.add(stream)
    stream.write(`${text}\n`)
  }
  return {
    folder: running.cwd(),
    get called() {
      return calledAs(running.argv[1] ?? '', running.cwd())
    },
    get attended() {
      return running.stdout.isTTY === true && running.stdin.isTTY === true
    },
    width: widthOf(running.stdout.columns),
    paint: paint(running.stdout.isTTY === true && !running.env['NO_COLOR'] && running.env['TERM'] !== 'dumb'),
    say: (text) => write(running.stdout, text),
    complain: (text) => write(running.stderr, text),
    allSaid: () => [...used].every((stream) => stream.writableLength === 0),
  }
}
