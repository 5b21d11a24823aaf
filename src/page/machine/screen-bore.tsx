import { boreFound } from '../../plan/found.ts'
import { Heading } from '../parts/heading.tsx'
import type { Job } from './job.ts'
import { Back, Blank, Go, Told } from './parts.tsx'
import { tellJob, valueOf } from './record.ts'

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

/** Four blanks; what the bore asks is said at once. */
export const Bore = ({ now }: { now: Job }) => {
  const { design, says, plan } = now
  const found = boreNow(now)
  const { lower, upper } = design.spec.bore.diameter
  const worked = 2 * design.section.boreRadius
  const all = places.every(([name]) => valueOf(name) !== undefined)
  const other = found && Math.abs(found.bore - worked) > 5e-4
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
        : `${says.fine(found.says === 'large' ? found.most : found.least)} is ${says.fine(Math.abs(found.off))} ${found.says === 'large' ? 'over the upper limit' : 'under the lower limit'}, ${says.fine(found.says === 'large' ? upper : lower)}. Back to the desk, or work the job for the bore as it is.${infeed}`,
    goOn: 'yes' as const,
  }
  const take = (): void => {
    if (found) tellJob({ 'bore.measured': `${says.fine(found.bore)} ${now.unit}` })
  }
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
      {found && other && (
        <button type="button" class="offer" onClick={take}>
          Work the job for {says.fine(found.bore)}
        </button>
      )}
      <Go when={all && found?.says === 'within'}>Go on</Go>
      {all && found && found.says !== 'within' && <Go>Go on as it is</Go>}
      {!all && <p class="small">All four, and it goes on.</p>}
      <Back />
    </>
  )
}
