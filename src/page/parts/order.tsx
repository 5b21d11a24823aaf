import { current, design } from '../answers.ts'
import { figure } from '../../spec/figures.ts'
import { shownUnits } from '../shown-in.ts'
import type { Design } from '../../design.ts'
import { Heading } from './heading.tsx'
import { stated } from '../job.ts'

interface Step {
  readonly does: string
  readonly aside?: string
  readonly gate?: true
}

/** What is done at the machine, in order; every number is the design's. */
const stepsOf = (
  { spec, section, bar, plan, loads, bushing, pressLoads }: Design,
  say: (mm: number, fit?: boolean) => string,
): readonly Step[] => {
  const across = `${say(section.acrossLimits.lower)} to ${say(section.acrossLimits.upper)}`
  const last: readonly Step[] = [
    {
      does: 'Take the edges off with a file before a finger goes near. Measure across at both ends, then pin, plug and key.',
      aside: across,
    },
  ]
  const cut: readonly Step[] =
    bar && plan
      ? [
          {
            does: 'Finish the bore, chamfer it, and measure it two ways at both ends.',
            ...(stated('bore.measured') === undefined && { aside: 'tell it above' }),
          },
          {
            does:
              spec.tooling.bar?.machine === 'mill'
                ? 'Clamp the hub, bar on the bore’s centre line.'
                : 'Pull the plug. Hold the spindle. Bar on centre height, straight to the bore.',
          },
          { does: `Set the bit: over bar and nose ${say(bar.overBarAndNose)}.`, aside: `± ${say(bar.setting)}` },
          {
            does: 'Find first touch, then the second corner; move sideways until they touch alike.',
            aside: 'dial to 0',
          },
          ...plan.checks.map(({ after, across: expected }, place): Step => {
            const more = after - (plan.checks[place - 1]?.after ?? 0)
            return {
              does: `${place + 1 === plan.checks.length ? 'Stone the edge. Cut' : 'Cut'} ${more} passes of ${say(plan.infeedPerPass, true)}, measure across: the dial promises ${say(expected)}.`,
              aside: `${after} in all`,
              gate: true,
            }
          }),
          ...(loads
            ? [
                {
                  does: `Spring passes without infeed, then measure across and add what is missing.`,
                  aside: `${loads.springPasses} of them`,
                  gate: true,
                } as const,
              ]
            : []),
          ...(plan.lanes.length > 1
            ? [
                {
                  does: `Then the other lanes to the same reading: ${plan.lanes
                    .slice(1)
                    .map((lane) => `${say(lane.offset)} aside`)
                    .join(', ')}.`,
                },
              ]
            : []),
          ...(plan.keyways > 1 ? [{ does: `Index, and cut the others the same: ${plan.keyways} in all.` }] : []),
        ]
      : []
  const pressed: readonly Step[] =
    bushing && pressLoads && !bar
      ? [
          { does: 'Bushing in the bore, slot up, square under the ram; oil on the broach.' },
          ...bushing.passes.map(
            ({ shims, over }): Step => ({
              does: `Press ${shims === 0 ? 'without a shim' : `over ${shims} ${shims === 1 ? 'shim' : 'shims'}`}: back of the bushing to the last tooth ${say(over)}.`,
              gate: true,
            }),
          ),
        ]
      : []
  return [...cut, ...pressed, ...last]
}

export const Order = () => {
  const whole = design.value
  if (!whole) return null
  const units = shownUnits.value
  const steps = stepsOf(whole, (mm, fit = false) => figure(mm, units, { unit: false, fit }))
  return (
    <section class={`order${current.value ? '' : ' is-old'}`} aria-labelledby="order">
      <Heading id="order">Order of work</Heading>
      {whole.bar && (
        <p class="caution">
          <b>Before the bar goes in.</b> Plug out, spindle held by the lock or the lowest gear and a strap, chuck key
          put away. Power must never reach the spindle while the bar is in the hub. Keep sleeves and hair off the wheel
          and knuckles off the hub’s edge.
        </p>
      )}
      {whole.bushing && (
        <p class="caution">
          <b>Before you press.</b> A broach is hard and shatters sideways. Guard, face shield, nobody in line with it;
          ram square, oil, never strike it, never draw it back. Force jumps: stop.
        </p>
      )}
      <ol class="steps">
        {steps.map(({ does, aside, gate }) => (
          <li key={does} class={gate ? 'gate' : ''}>
            <span>{does}</span>
            {aside && <span class="aside">{aside}</span>}
          </li>
        ))}
      </ol>
    </section>
  )
}
