import type { Makes } from './makes.ts'
import { answering } from './talk.ts'
import { working } from './working.ts'
import type { Works } from './works.ts'

// One script for every hand, so that what they share is loaded once; what makes files comes when a file is first asked for.
const making = () => import('./making.ts')

answering<Works & Makes>({
  ...working,
  parts: async (...asked) => (await making()).making.parts(...asked),
  card: async (...asked) => (await making()).making.card(...asked),
  files: async (...asked) => (await making()).making.files(...asked),
  solids: async (...asked) => (await making()).making.solids(...asked),
  everything: async (...asked) => (await making()).making.everything(...asked),
})
