import { useEffect, useState } from 'preact/hooks'
import { boreFound } from '../../plan/found.ts'
import { jobAsked, working } from '../answers.ts'
import { Heading } from '../parts/heading.tsx'
import type { Job } from './job.ts'
import { goOn } from './going.ts'
import { Back, Blank, Go, Told } from './parts.tsx'
import { tellJob, valueOf } from './record.ts'
import type { BoreAs, BoreAsked } from '../workers/bore-as.ts'

const places = [
  ['bore-near-one', 'Near end, one way'],
  ['bore-near-square', 'Near end, square to it'],
  ['bore-far-one', 'Far end, one way'],
  ['bore-far-square', 'Far end, square to it'],
] as const

export const boreNow = ({ design, plan }: Job) =>
  boreFound(
    { spec: design.spec, section: design.section, plan, bar: design.bar ?? design.groundBar },
    places.flatMap(([name]) => valueOf(name)?.mm ?? []),
  )

/** What may be done in a bore as measured; undefined until it is known. */
const useBoreAs = ({ design }: Job, bore: BoreAsked | undefined): BoreAs | undefined => {
  const [known, setKnown] = useState<{ readonly of: string; readonly design: unknown; readonly as: BoreAs }>()
  const of = JSON.stringify(bore)
  useEffect(() => {
    if (!bore) return
    let late = false
    working.ask('boreAs', { ...jobAsked(), bore }).then(
      (as) => !late && setKnown({ of, design, as }),
      () => undefined,
    )
    return () => {
      late = true
    }
  }, [of, design])
  return bore && known?.of === of && known.design === design ? known.as : undefined
}

/** Four blanks; what the bore asks is said at once. */
export const Bore = ({ now }: { now: Job }) => {
  const { design, says, plan } = now
  const found = boreNow(now)
  const { lower, upper } = design.spec.bore.diameter
  const worked = 2 * design.section.boreRadius
  const all = places.every(([name]) => valueOf(name) !== undefined)
  const other = found && Math.abs(found.bore - worked) > 5e-4
  const as = useBoreAs(
    now,
    found && { least: found.least, most: found.most, mean: `${says.fine(found.bore)} ${now.unit}`, way: now.way },
  )
  const infeed =
    found?.infeed === undefined || !plan || design.section.slit
      ? ''
      : ` The infeed is ${says.fine(found.infeed)}${Math.abs(plan.dial.perInfeed - 1) > 1e-9 ? `, ${says.fine(found.onDial ?? 0)} on the dial` : ''}; ${says.fine(found.leftOnDial ?? 0)} is left at ${says.dial(plan.bores.reading)}.`
  const answer = found && {
    is: found.says === 'within' ? ('hold' as const) : ('broken' as const),
    word: found.says === 'within' ? 'Within.' : found.says === 'large' ? 'Too large.' : 'Too small.',
    says:
      found.says === 'within'
        ? `${says.fine(found.bore)} is their mean.${infeed}`
        : `${says.fine(found.says === 'large' ? found.most : found.least)} is ${says.fine(Math.abs(found.off))} ${found.says === 'large' ? 'over the upper limit' : 'under the lower limit'}, ${says.fine(found.says === 'large' ? upper : lower)}. ${as?.refused === undefined ? `Back to the desk${other && as?.set ? ', or work the job for the bore as it is' : ''}.${infeed}` : 'Neither shaft nor key will fit it: nothing is cut in it. Measure again; if it is right, back to the desk.'}`,
    goOn: 'yes' as const,
  }
  const set = as?.set
  return (
    <>
      <Heading id="screen" aside={`${says.fine(lower)} to ${says.fine(upper)}`}>
        Measure the bore
      </Heading>
      <p class="do">Two ways, at both ends{design.spec.bore.blind ? '; the far one as deep as it goes' : ''}.</p>
      <div class="four">
        {places.map(([name, label]) => (
          <Blank key={name} name={name} label={label} unit={now.unit} />
        ))}
      </div>
      <Told answer={answer} />
      {found && other && set && (
        <button type="button" class="offer" onClick={() => tellJob(set)}>
          Work the job for {says.fine(found.bore)}
        </button>
      )}
      {found && other && as?.against !== undefined && (
        <p class="small">
          The job cannot be worked for {says.fine(found.bore)} here: {as.against}
        </p>
      )}
      {as?.refused !== undefined && (
        <a class="offer" href="#desk">
          To the desk: this is another bore
        </a>
      )}
      <Go when={all && found?.says === 'within'}>Go on</Go>
      {all && found !== undefined && found.says !== 'within' && as !== undefined && as.refused === undefined && (
        <button type="button" class="offer" onClick={goOn}>
          Go on as it is
        </button>
      )}
      {!all && as?.refused === undefined && <p class="small">All four, and it goes on.</p>}
      <Back />
    </>
  )
}
