import { z } from 'zod'

// Before any schema is made: the page forbids making code of texts, and even the trying is told in the console.
z.config({ jitless: true })
