import type { Verdict } from '../checks/rule.ts'

/** What each verdict is called, of one finding and of the whole job. */
export const verdicts: Readonly<
  Record<Verdict, { readonly one: string; readonly whole: string; readonly is: string }>
> = {
  pass: { one: 'Holds', whole: 'Sound.', is: 'hold' },
  caution: { one: 'Take care', whole: 'Sound, with care.', is: 'care' },
  fail: { one: 'Broken', whole: 'Will not go.', is: 'broken' },
  unknown: { one: 'Cannot tell', whole: 'Cannot be told yet.', is: 'untold' },
}

const few = ['No', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine', 'Ten']

/** A count at the start of a sentence: `Two things`. */
export const counted = (count: number, one: string, many: string): string =>
  `${few[count] ?? String(count)} ${count === 1 ? one : many}`
