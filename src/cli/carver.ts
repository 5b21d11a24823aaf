import { parentPort } from 'node:worker_threads'
import { make } from '../make.ts'
import type { Carved, Carving } from './carving.ts'
import { openTools } from './tools.ts'

// A thread that carves the solids of one design after another, while their sheets are laid and written beside it.
void openTools().kernel()
parentPort?.on('message', async ({ design, wanted }: Carving) => {
  const carved: Carved = await make(design, wanted, openTools()).then(
    (files) => ({ files: files.filter(({ name }) => /\.(?:stl|3mf)$/.test(name)) }),
    (thrown: unknown) => ({ thrown }),
  )
  parentPort?.postMessage(carved)
})
