/** All that a verb sees of the person and the computer besides the files. */
export interface Desk {
  /** The folder that relative paths start from. */
  readonly folder: string
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

/** The desk of this run: colour only at a terminal and without NO_COLOR (no-color.org: any value but the empty one). */
export const deskOf = (running: NodeJS.Process): Desk => {
  const attended = running.stdin.isTTY === true && running.stdout.isTTY === true
  return {
    folder: running.cwd(),
    attended,
    width: Math.min(running.stdout.columns ?? 100, 110),
    paint: paint(running.stdout.isTTY === true && !running.env['NO_COLOR'] && running.env['TERM'] !== 'dumb'),
    say: (text) => void running.stdout.write(`${text}\n`),
    complain: (text) => void running.stderr.write(`${text}\n`),
  }
}
