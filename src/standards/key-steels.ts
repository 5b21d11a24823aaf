import type { Table } from './table.ts'

/** A steel that keys and shafts are made of, N/mm2: yield, the least where a range is printed. */
export interface KeySteel {
  readonly name: string
  readonly aliases: readonly string[]
  readonly yield: number
  readonly source: string
}

const sheet = 'table of EN materials on a tribology reference page, under 16 mm'
const shigley = 'from memory (Shigley Table A-20)'
const row = (name: string, aliases: readonly string[], strength: number, source: string): KeySteel => ({
  name,
  aliases,
  yield: strength,
  source,
})

/** Columns: name, other names, yield. */
export const keySteels: Table<KeySteel> = {
  source: `${sheet}; ${shigley}`,
  scope: 'steels as keys and shafts are bought: cold drawn, rolled or tempered by the mill',
  rows: [
    row('E295', ['st 50-2', 'st50'], 295, sheet),
    row('E335', ['st 60-2', 'st60'], 335, sheet),
    row('E360', ['st 70-2', 'st70'], 360, sheet),
    row('S355', ['s355jr', 'st52'], 355, sheet),
    row('key steel', ['c45+c', 'c45 drawn'], 430, 'from memory (EN 10277, DIN 6880): 430 at the least'),
    row('1018 cold drawn', ['1018 cd', 'crs'], 370, shigley),
    row('1020 cold drawn', ['1020 cd'], 390, `${shigley}; 57 ksi in a key calculation`),
    row('1040 cold drawn', ['1040 cd'], 490, shigley),
    row('1045 cold drawn', ['1045 cd'], 530, shigley),
    row('41CrMo4 tempered', ['42crmo4 tempered', '4140 tempered'], 760, 'steel data sheet, 16 to 40 mm'),
  ],
}

/** The key steel of this name, upper or lower case, or `undefined`. */
export const keySteel = (name: string): KeySteel | undefined => {
  const asked = name.trim().toLowerCase().replace(/\s+/g, ' ')
  return keySteels.rows.find((each) => each.name.toLowerCase() === asked || each.aliases.includes(asked))
}

/** Every name that `keySteel` knows. */
export const keySteelNames: readonly string[] = keySteels.rows.flatMap((each) => [each.name, ...each.aliases])
