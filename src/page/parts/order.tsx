import { current, design } from '../answers.ts'
import { stepsOf } from '../steps.ts'
import { shownUnits } from '../shown-in.ts'
import { OutBy } from './errors.tsx'
import { Heading } from './heading.tsx'

export const Order = () => {
  const whole = design.value
  if (!whole) return null
  const units = shownUnits.value
  const steps = stepsOf(whole, units)
  if (steps.length === 0) return null
  return (
    <section class={`order${current.value ? '' : ' is-old'}`} aria-labelledby="order">
      <Heading id="order">Order of work</Heading>
      {(whole.bar ?? whole.groundBar) && (
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
      {whole.verdict === 'fail' ? (
        <p>
          The job is broken: it is not to be cut, and no order of work is given. What is to be mended stands first under
          What follows.
        </p>
      ) : (
        <ol class="steps">
          {steps.map(({ does, aside, gate }, at) => (
            <li key={`${at} ${does}`} class={gate ? 'gate' : ''}>
              <span>{does}</span>
              {aside && <span class="aside">{aside}</span>}
            </li>
          ))}
        </ol>
      )}
      {whole.errors.bar && <OutBy budgets={whole.errors.bar} by="With the bar" units={units} />}
      {whole.errors.press && <OutBy budgets={whole.errors.press} by="With the broach" units={units} />}
    </section>
  )
}
