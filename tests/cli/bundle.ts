import { join } from 'node:path'
import { build } from 'vite'

/** Bundles the program into dist/, as `npm run prepare` does. */
export default async (): Promise<void> => {
  const root = join(import.meta.dirname, '../..')
  await build({ root, configFile: join(root, 'vite.config.ts'), logLevel: 'warn' })
}
