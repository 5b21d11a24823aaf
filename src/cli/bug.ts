import about from '../../package.json' with { type: 'json' }

/** What is said of an error that nobody foresaw. */
export const bugWords = (thrown: unknown): readonly string[] => [
  `borewright ${about.version} has a bug: ${thrown instanceof Error ? (thrown.stack ?? thrown.message) : String(thrown)}`,
  'Please report this with the spec that led to it. Do not rely on files of this run.',
]
