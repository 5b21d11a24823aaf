import { gateAt, type Job, measuredAs, screenNow, gateKey } from './job.ts'
import type { AtGate, Screen } from './order.ts'
import { record, valueOf } from './record.ts'
import { expectedOf } from '../../plan/standing.ts'
import { countOf } from './answers.ts'
import { boreNow } from './screen-bore.tsx'
import { overSaid } from './screen-bit.tsx'
import { overOf, pushKey } from './screen-push.tsx'
import { marksFound } from './screen-zero.tsx'

interface Line {
  readonly key: string
  readonly says: string
  /** As measured, and what was wanted. */
  readonly found?: string | undefined
  readonly wanted?: string | undefined
  readonly noted?: string | undefined
  readonly done: boolean
  readonly here: boolean
}

const gateLine = (now: Job, screen: AtGate): Pick<Line, 'says' | 'found' | 'wanted'> => {
  const { says, plan, wanted } = now
  const gate = gateAt(now, screen.cut, screen.gate)
  if (!gate || !plan) return { says: '' }
  const value = valueOf(gateKey(screen.cut, screen.gate))
  const expected = expectedOf(gate, plan.gateBy)
  const lane = plan.lanes.length > 1 ? `Lane ${(plan.cuts[screen.cut]?.lane ?? 0) + 1} to` : 'Cut to'
  const springs = gate.springPasses > 0 ? `, ${countOf(gate.springPasses)} spring passes` : ''
  const slots = plan.keyways > 1 ? `, ${plan.keyways} slots` : ''
  const then =
    gate.kind === 'edge'
      ? '; stone the edge'
      : gate.kind === 'setting' && now.order[now.order.findIndex(({ key }) => key === screen.key) + 1]?.is === 'anew'
        ? '; set the bit out'
        : gate.kind === 'web'
          ? '; half infeed from there'
          : ''
  return {
    says: `${lane} ${says.dial(gate.reading)}${springs}${slots}${wanted ? `; ${measuredAs(now)}` : ''}${then}`,
    found: value && says.read(value.mm),
    wanted: wanted && `expect ${says.read(expected.expected ?? expected.byDial)}`,
  }
}

const lineOf = (now: Job, screen: Screen): Pick<Line, 'says' | 'found' | 'wanted'> | undefined => {
  const { says, design, plan, wanted } = now
  switch (screen.is) {
    case 'stop':
      return { says: now.way === 'press' ? 'Guard up, face covered' : 'Plug out, spindle held' }
    case 'bore': {
      const found = boreNow(now)
      return { says: 'Bore measured', found: found && says.fine(found.bore) }
    }
    case 'bit': {
      const value = valueOf('over-0')
      return {
        says: design.groundBar ? 'Over back and nose' : 'Over bar and nose',
        found: value && says.read(value.mm),
        wanted: overSaid(now, 0),
      }
    }
    case 'stack':
      return { says: 'The stack' }
    case 'zero': {
      const found = marksFound(now)
      return {
        says: plan?.centring ? 'First touch, second corner' : 'First touch',
        found: found && says.step(found.difference),
        wanted: plan?.centring && `at most ${says.step(plan.centring.differenceMost)}`,
      }
    }
    case 'anew': {
      const setting = plan?.cuts[screen.cut]?.setting ?? 0
      const value = valueOf(`over-${setting}`)
      return {
        says: 'New projection, over bar and nose',
        found: value && says.read(value.mm),
        wanted: overSaid(now, setting),
      }
    }
    case 'gate':
      return gateLine(now, screen)
    case 'push': {
      const over = overOf(now, screen.pass)
      const value = valueOf(pushKey(screen))
      const slot = design.section.at.length > 1 ? `Slot ${screen.slot + 1}, ` : ''
      return {
        says: `${slot}${slot === '' ? 'Pass' : 'pass'} ${screen.pass + 1}, over it all`,
        found: value && says.read(value.mm),
        wanted: over && says.read(over.over),
      }
    }
    case 'add': {
      const value = valueOf('add') ?? valueOf('add-from')
      return {
        says: 'Add what is missing; spring',
        found: value && says.read(value.mm),
        wanted: wanted && says.between(wanted.least, wanted.most),
      }
    }
    case 'measure':
      return { says: `File the edges; measure${design.measuring.key ? '; key' : ''}` }
    case 'lane':
    case 'turn':
    case 'cut':
    case 'done':
      return undefined
  }
}

const linesOf = (now: Job): readonly Line[] => {
  const keys = now.order.map(({ key }) => key)
  const at = keys.indexOf(record.value.resume ?? screenNow.value?.key ?? '')
  // What is being cut is on its way to the gate after it.
  const here = now.order.slice(Math.max(0, at)).find((screen) => lineOf(now, screen) !== undefined)?.key
  return now.order.flatMap((screen, place) => {
    const line = lineOf(now, screen)
    return line
      ? [
          {
            key: screen.key,
            ...line,
            noted: record.value.noted[screen.key],
            done: place < at,
            here: screen.key === here,
          },
        ]
      : []
  })
}

/** All of it, as the card has it: what is done, what was measured, what is to come. */
export const Whole = ({ now }: { now: Job }) => (
  <section class="whole" aria-labelledby="whole">
    <h2 id="whole">The whole job</h2>
    <ol>
      {linesOf(now).map(({ key, says, found, wanted, noted, done, here }) => (
        <li key={key} class={here ? 'is-here' : ''} aria-current={here ? 'step' : undefined}>
          <span class={`box${done ? ' is-on' : ''}`} aria-hidden="true" />
          <span class="says">
            <span class="unseen">{done ? 'Done: ' : here ? 'Now: ' : ''}</span>
            {says}
            {noted !== undefined && (
              <span class="noted">{noted === 'not measured' ? 'gone on without' : 'gone on all the same'}</span>
            )}
          </span>
          <span class="numbers">
            {found !== undefined && <b>{found}</b>}
            {wanted !== undefined && <span>{wanted}</span>}
          </span>
        </li>
      ))}
    </ol>
  </section>
)
