import { useEffect, useState } from 'preact/hooks'
import type { Design } from '../../design.ts'
import { design, outcome, settled } from '../answers.ts'
import { counted, verdicts } from '../words.ts'
import { idOf } from './blank.tsx'
import { plainly, Reason } from './reason.tsx'
import { toBlank } from './to-blank.ts'
import { allRows, byRow, worded } from '../rows/complaining.ts'
import { told } from '../job.ts'

/** All that was found, in one sentence or two. */
const summed = ({ findings, verdict }: Design, reasons: Readonly<Record<string, string>>): string => {
  const of = (asked: string): number => findings.filter((finding) => finding.verdict === asked).length
  const first = findings.find((finding) => finding.verdict === verdict) ?? findings[0]
  const tightest = first ? ` Tightest: ${uncapital(reasons[first.rule] ?? first.reason)}` : ''
  if (verdict === 'fail')
    return `${counted(of('fail'), 'must is', 'musts are')} broken. It is not to be cut as it stands; what is made of it all the same is marked.${tightest}`
  const open = [
    ...(of('caution') > 0 ? [counted(of('caution'), 'finding wants', 'findings want') + ' care'] : []),
    ...(of('unknown') > 0 ? [counted(of('unknown'), 'cannot', 'cannot') + ' be told yet'] : []),
  ]
  const joined = open
    .map((each, place) => (place === 0 ? each : each.charAt(0).toLowerCase() + each.slice(1)))
    .join(' and ')
  return `${joined === '' ? `All ${of('pass')} rules hold.` : `Nothing is broken. ${joined}.`}${tightest}`
}

const uncapital = (words: string): string =>
  /^[A-Z][a-z]/.test(words) ? words.charAt(0).toLowerCase() + words.slice(1) : words

/** The whole job in a word, and why. */
export const Verdict = () => {
  const complaints = outcome.value?.complaints ?? []
  const whole = design.value
  const rows = byRow(complaints)
  const loose = complaints.filter((complaint) => rows.get('') === complaint)
  const [word, is, says] =
    !told() && !whole
      ? (['Nothing is told yet.', '', 'Give the bore and what goes in it; the rest follows.'] as const)
      : complaints.length > 0
        ? ([whole ? 'Not as it stands.' : 'Half told.', whole ? 'broken' : '', wanted()] as const)
        : whole
          ? ([
              verdicts[whole.verdict].whole,
              verdicts[whole.verdict].is,
              summed(whole, settled.value?.said.reasons ?? {}),
            ] as const)
          : (['…', '', 'Working it out.'] as const)
  return (
    <div class="verdict">
      <p class={`word ${is}`}>{word}</p>
      <p class="says">{typeof says === 'string' ? <Reason says={says} /> : says}</p>
      {loose.length > 0 && (
        <ul class="complaint">
          {loose.map((complaint) => (
            <li key={complaint.path}>
              <b>{complaint.path}</b> {worded(complaint)}
            </li>
          ))}
        </ul>
      )}
      <Spoken text={typeof says === 'string' ? `${word} ${plainly(says)}` : word} />
    </div>
  )
}

/** What is wanted or cannot be read, each with a way to its blank. */
const wanted = () => {
  const rows = [...byRow(outcome.value?.complaints ?? [])].filter(([path]) => path !== '')
  return (
    <>
      {rows.map(([path, complaint], place) => (
        <span key={path}>
          {place > 0 && ' '}
          <a href={`#${idOf(path)}`} onClick={(event) => toBlank(event, path)}>
            {allRows.find((row) => row.path === path)?.word ?? path}
          </a>
          {complaint.read.startsWith('nothing') ? ' is wanted.' : ' cannot be used as it stands.'}
        </span>
      ))}
      {design.value
        ? ' What is shown is of the last job that could be read.'
        : outcome.value?.half
          ? ' Before that nothing can be said of the bar.'
          : ''}
    </>
  )
}

/** Told aloud once it has been still for a while. */
const Spoken = ({ text }: { text: string }) => {
  const [still, setStill] = useState('')
  useEffect(() => {
    const timer = setTimeout(() => setStill(text), 600)
    return () => clearTimeout(timer)
  }, [text])
  return (
    <p class="unseen" role="status">
      {still}
    </p>
  )
}
