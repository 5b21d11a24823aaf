import { check } from './check.ts'
import { key } from './key.ts'
import { make } from './make.ts'
import { starter } from './new.ts'
import { page } from './page.ts'
import type { Verb } from './verb.ts'

/** Every verb, in the order of the help. */
export const verbs: readonly Verb[] = [make, check, key, starter, page]
