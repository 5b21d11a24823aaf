import { current, design } from '../answers.ts'
import { force, measure, size } from '../measures.ts'
import { shownUnits } from '../shown-in.ts'
import { stated } from '../job.ts'
import { Heading } from './heading.tsx'

/** What the hand feels, and what a gauge will read. */
export const Handle = () => {
  const whole = design.value
  if (!whole) return null
  const units = shownUnits.value
  const { loads, plan, pressLoads, section, keyLoads } = whole
  const clear = section.key?.topClearance
  const facts: readonly (readonly [string, string | undefined])[] = [
    ['Cutting force, full width', loads && force(loads.cuttingForce, units)],
    [
      'Pushed back by',
      loads && `${measure(loads.thrust.least, 'N', units, undefined, true)} to ${force(loads.thrust.most, units)}`,
    ],
    ['Slot behind the dial, at most', loads && size(loads.lag.most, units, true)],
    ['Left after spring passes, at most', loads && size(loads.residual.most, units, true)],
    ['Spring passes', plan && String(plan.target.springPasses)],
    ['The press, at its greatest', pressLoads && force(pressLoads.force, units)],
    ['Pull on the handle', pressLoads?.pull === undefined ? undefined : force(pressLoads.pull, units)],
    ['Over the key, least', clear && size(clear.lower, units, true)],
    ['Hub wall at the slot’s corner', keyLoads?.hubWall === undefined ? undefined : size(keyLoads.hubWall, units)],
  ]
  const there = facts.filter((fact): fact is readonly [string, string] => fact[1] !== undefined)
  if (there.length === 0) return null
  return (
    <section class={`handle${current.value ? '' : ' is-old'}`} aria-labelledby="handle">
      <Heading id="handle">At the handle</Heading>
      <dl class="facts">
        {there.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <p class="note">
        Forces are estimates, a third either way.
        {loads && stated('tooling.bar.give') === undefined
          ? ` The machine’s give is taken as ${measure(loads.machineGive, 'count', 'mm')} N/mm until you measure it.`
          : ''}
      </p>
    </section>
  )
}
