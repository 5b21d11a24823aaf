import type { Complaint } from '../spec/complaint.ts'
import { exits, type Verb, word } from './verb.ts'

const standards = ['iso-773', 'asme-b17.1'] as const
/** The largest shaft, in, that ASME B17.1 has a key for. */
const mostInches = 30

export const key: Verb = {
  name: 'key',
  takes: 'SHAFT',
  things: [1, 4],
  says: 'the key for a shaft (25, "1-1/4 in"; a bare number is mm), with every depth and how to measure it',
  flags: [
    {
      name: 'standard',
      takes: 'NAME',
      says: 'whose tables; left out: iso-773 for mm, asme-b17.1 for inches',
      among: standards,
    },
    { name: 'json', says: 'print the sizes as JSON, mm' },
  ],
  run: async (asked, desk) => {
    const { readLength } = await import('../spec/length.ts')
    const { readSpec } = await import('../spec/read.ts')
    const { keyFor, keyTelling } = await import('./key-sizes.ts')
    // `key 1-1/4 in` without quotes comes as two words.
    const shown = asked.things.join(' ')
    const chosen = word(asked, 'standard')
    const asMm = readLength(shown, 'mm')
    const bare = asMm !== readLength(shown, 'in')
    // A bare fraction beside the inch tables can only be inches.
    const fractional = bare && chosen === 'asme-b17.1' && shown.includes('/')
    const diameter = fractional ? readLength(shown, 'in') : asMm
    if (diameter === undefined || diameter === 0) {
      desk.complain(`'${shown}' is no length: write 25, "25 mm", "1-1/4 in" or "1.25 in".`)
      return exits.unreadable
    }
    const units = fractional || (!bare && !/m\s*$/i.test(shown)) ? 'in' : 'mm'
    const standard = chosen ?? (units === 'in' ? 'asme-b17.1' : 'iso-773')
    const read = readSpec({
      name: 'key',
      units,
      bore: { diameter: `${diameter} mm`, length: `${diameter} mm` },
      feature: { keyway: { standard } },
    })
    if ('complaints' in read) {
      // Only where that is an inch shaft with a key of its own.
      const inches = bare && !fractional && (readLength(shown, 'in') ?? Infinity) <= mostInches * 25.4
      const hint = inches ? ` A bare number is mm: for inches write "${shown} in".` : ''
      desk.complain(`${shown}: ${beyond(read.complaints, standard)}.${hint}`)
      return exits.unreadable
    }
    const sizes = keyFor(read.spec)
    if (asked.switches.has('json')) {
      const { json } = await import('../writers/json.ts')
      desk.say(json(sizes).trimEnd())
    } else
      desk.say(
        keyTelling(
          sizes,
          units,
          bare ? `'${shown}' read as ${fractional ? 'inches' : 'mm'}` : undefined,
          desk.width,
          desk.paint,
        ),
      )
    return exits.sound
  },
}

/** Why there is no key for a shaft, in words of the shaft: the spec that it is looked up by is nobody's but ours. */
const beyond = (complaints: readonly Complaint[], standard: string): string => {
  const accepted = (path: string): string | undefined => complaints.find((each) => each.path === path)?.accepted
  const shafts = accepted('bore.diameter')
  if (shafts !== undefined)
    return `no key is known for it; known are those for ${shafts.split(';')[0]?.replace(/^a bore/, 'shafts')}`
  const keys = accepted('feature.keyway.standard')
  if (keys !== undefined) return keys.split(':')[0] ?? keys
  const limits = /up to [\d.]+ (?:mm|in)/.exec(accepted('bore.tolerance') ?? '')?.[0]
  return `no limits are known for a hub of this size${limits === undefined ? '' : ` (H7 is known ${limits})`}, so none can be given by ${standard}`
}
