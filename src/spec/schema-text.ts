import { z } from 'zod/mini'
import { specSchema } from './schema.ts'

/** The JSON Schema that editors read, as the text of `borewright.schema.json`. */
export function schemaText(): string {
  const { $schema, ...rest } = z.toJSONSchema(specSchema, { io: 'input', target: 'draft-7' })
  return `${JSON.stringify({ $schema, title: 'borewright spec', ...rest }, null, 2)}\n`
}
