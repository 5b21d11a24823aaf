import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { Rule } from '../src/checks/rule.ts'
import { saysOf, usage } from '../src/cli/line.ts'
import { formatNames, partNames as namedParts } from '../src/cli/make.ts'
import { verbs } from '../src/cli/verbs.ts'
import { formats, partNames } from '../src/make.ts'
import { schemaText } from '../src/spec/schema-text.ts'

// Tables in the documents that the program itself knows best. `npm run tables` (tables.mjs) writes them; a test run only compares.
const root = join(import.meta.dirname, '..')
const writing = process.env['TABLES'] === 'write'

const cell = (text: string): string => text.replaceAll('|', '\\|').replaceAll('<', '&lt;')
const table = (heads: readonly string[], rows: readonly (readonly string[])[]): string =>
  [heads, heads.map(() => '---'), ...rows].map((row) => `| ${row.map(cell).join(' | ')} |`).join('\n')

const verbTable = (): string =>
  [
    table(
      ['command', 'what it does'],
      verbs.map((verb) => [`\`borewright ${usage(verb)}\``, verb.says]),
    ),
    table(
      ['flag', 'of', 'what it says'],
      verbs.flatMap((verb) =>
        verb.flags.map((flag) => [
          `\`--${flag.name}${flag.takes ? ` ${flag.takes}` : ''}\``,
          `\`${verb.name}\``,
          saysOf(flag),
        ]),
      ),
    ),
    'Exit status: 0 sound (cautions and what cannot be told included, and named), 1 a rule that must hold is broken (nothing is written without `--anyway`), 2 the spec or the command cannot be read or the folder not written, 70 a bug of ours.',
  ].join('\n\n')

const isRule = (value: unknown): value is Rule =>
  typeof value === 'object' && value !== null && 'id' in value && 'states' in value && 'binding' in value

const rules = async (): Promise<readonly Rule[]> => {
  const folder = join(root, 'src/checks')
  const found = new Map<string, Rule>()
  for (const file of readdirSync(folder).toSorted()) {
    const held: Record<string, unknown> = await import(join(folder, file))
    for (const rule of Object.values(held).flat().filter(isRule)) found.set(rule.id, rule)
  }
  return [...found.values()]
}

const ruleTable = async (): Promise<string> =>
  table(
    ['rule', 'states', 'binding', 'source'],
    (await rules()).map((rule) => [`\`${rule.id}\``, rule.states, rule.binding, rule.source]),
  )

const holds = (file: string, name: string, made: string): void => {
  const path = join(root, file)
  const text = readFileSync(path, 'utf8')
  const found = new RegExp(`(<!-- ${name}: [^>]*-->\\n)([\\s\\S]*?)(<!-- /${name} -->)`).exec(text)
  if (found === null) throw new Error(`${file} has no place for the table of ${name}`)
  const [whole, open = '', , close = ''] = found
  const fresh = `${open}\n${made}\n\n${close}`
  if (writing)
    writeFileSync(
      path,
      text.replace(whole, () => fresh),
    )
  else expect(whole, `${file} is stale: npm run tables`).toBe(fresh)
}

describe('the tables in the documents', () => {
  it('README: verbs and flags are those of the help', () => holds('README.md', 'verbs', verbTable()))

  it('DEVELOPERS: rules are those that are judged', async () => holds('DEVELOPERS.md', 'rules', await ruleTable()))

  it('the schema for editors is the one that specs are read by', () => {
    const path = join(root, 'borewright.schema.json')
    if (writing) writeFileSync(path, schemaText())
    expect(readFileSync(path, 'utf8'), 'stale: npm run schema').toBe(schemaText())
  })

  it('the help knows every format and every part', () => {
    expect(formatNames).toEqual(formats)
    expect(namedParts).toEqual(partNames)
  })
})
