import { existsSync } from 'node:fs'
import { fileURLToPath, pathToFileURL } from 'node:url'

/**
 * Where an editor finds the schema that came with this program: a path, or an address where the path has blanks or drive letters
 * in it. `undefined` where it did not come along.
 */
export const schemaFile = (): string | undefined => {
  // Beside the folder of the bundled program; two above when run from the sources.
  const found = ['../borewright.schema.json', '../../borewright.schema.json']
    .map((way) => fileURLToPath(new URL(way, import.meta.url)))
    .find((path) => existsSync(path))
  return found === undefined || /^\/\S*$/.test(found) ? found : pathToFileURL(found).href
}
