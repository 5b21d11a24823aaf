import { exits, type Verb, word } from './verb.ts'

const standards = ['iso-773', 'asme-b17.1'] as const

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
    const { tell } = await import('../spec/print.ts')
    const { keyFor, keyTelling } = await import('./key-sizes.ts')
    // `key 1-1/4 in` without quotes comes as two words.
    const shown = asked.things.join(' ')
    const diameter = readLength(shown, 'mm')
    if (diameter === undefined) {
      desk.complain(`'${shown}' is no length: write 25, "25 mm", "1-1/4 in" or "1.25 in".`)
      return exits.unreadable
    }
    const bare = readLength(shown, 'in') !== diameter
    const units = !bare && !/m\s*$/i.test(shown) ? 'in' : 'mm'
    const standard = word(asked, 'standard') ?? (units === 'in' ? 'asme-b17.1' : 'iso-773')
    const read = readSpec({
      name: 'key',
      units,
      bore: { diameter: `${diameter} mm`, length: `${2 * diameter} mm` },
      feature: { keyway: { standard } },
    })
    if ('complaints' in read) {
      const hint = bare ? ' (A bare number is mm: for inches write the unit, "1-1/4 in".)' : ''
      for (const complaint of read.complaints) desk.complain(`${shown}: ${tell(complaint)}${hint}`)
      return exits.unreadable
    }
    const sizes = keyFor(read.spec)
    if (asked.switches.has('json')) {
      const { json } = await import('../writers/json.ts')
      desk.say(json(sizes).trimEnd())
    } else desk.say(keyTelling(sizes, units, bare ? `'${shown}' read as mm` : undefined, desk.width, desk.paint))
    return exits.sound
  },
}
