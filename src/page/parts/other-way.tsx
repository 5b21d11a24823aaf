import { useState } from 'preact/hooks'
import { current, design } from '../answers.ts'
import { figure } from '../../spec/figures.ts'
import { isMapping } from '../../spec/place.ts'
import { document, stated, tell } from '../job.ts'
import { force } from '../measures.ts'
import { press } from '../rows/press.ts'
import { shownUnits } from '../shown-in.ts'
import { Heading } from './heading.tsx'
import { Groups } from './told.tsx'

/** Which ways the job asks for: both where it names none. */
const asks = (way: 'bar' | 'press'): boolean => {
  void document.value
  const tooling = stated('tooling')
  if (!isMapping(tooling) || (!('bar' in tooling) && !('press' in tooling))) return true
  return way in tooling
}

/** A push broach and a guide bushing, beside the bar. */
export const OtherWay = () => {
  const broach = stated('tooling.press.broach')
  const [open, setOpen] = useState(false)
  const whole = design.value
  const shown = open || broach !== undefined
  const units = shownUnits.value
  const say = (mm: number): string => figure(mm, units)
  const turn = (way: 'bar' | 'press') => () => {
    const both = asks('bar') && asks('press')
    const other = way === 'bar' ? 'press' : 'bar'
    if (both)
      tell({ [`tooling.${way}`]: null, ...(stated(`tooling.${other}`) === undefined && { [`tooling.${other}`]: {} }) })
    else tell({ [`tooling.${way}`]: {} })
  }
  if (!whole && broach === undefined) return null
  return (
    <section class={`other${current.value ? '' : ' is-old'}`} aria-labelledby="other">
      <Heading id="other" aside="a push broach and a guide bushing">
        The other way
      </Heading>
      {broach === undefined && (
        <p>
          No broach is told. Measure one from its back, first tooth, last tooth, pilot and width, and both ways stand
          here side by side: sizes, force, time, and what fails first.
        </p>
      )}
      {whole?.bushing && (
        <table class="ways">
          <thead>
            <tr>
              <td />
              {whole.bar && <th scope="col">By the bar</th>}
              <th scope="col">By the broach</th>
            </tr>
          </thead>
          <tbody>
            <tr>
              <th scope="row">Tooling</th>
              {whole.bar && (
                <td>
                  bar Ø{say(whole.bar.diameter.nominal)}, nose {say(whole.bar.noseWidth)}
                </td>
              )}
              <td>
                bushing Ø{say(whole.bushing.outside.nominal)}, {whole.bushing.shims.length}{' '}
                {whole.bushing.shims.length === 1 ? 'shim' : 'shims'}
              </td>
            </tr>
            <tr>
              <th scope="row">Strokes</th>
              {whole.bar && (
                <td>{whole.plan ? `${whole.plan.passes} passes, about ${Math.ceil(whole.plan.minutes)} min` : ''}</td>
              )}
              <td>
                {whole.bushing.passes.length} of {say(whole.bushing.stroke)}
              </td>
            </tr>
            <tr>
              <th scope="row">Force</th>
              {whole.bar && <td>{whole.loads ? force(whole.loads.cuttingForce, units) : 'not known'}</td>}
              <td>{whole.pressLoads ? force(whole.pressLoads.force, units) : 'not known'}</td>
            </tr>
          </tbody>
        </table>
      )}
      {shown && (
        <div class="rows press-rows">
          <Groups groups={press} />
        </div>
      )}
      <p class="pair">
        {!shown && (
          <button type="button" onClick={() => setOpen(true)}>
            Tell the broach
          </button>
        )}
        {broach !== undefined && (
          <button type="button" onClick={() => tell({ 'tooling.press.broach': null })}>
            Forget the broach
          </button>
        )}
        {broach !== undefined && (
          <button type="button" aria-pressed={asks('bar')} onClick={turn('bar')}>
            {asks('bar') ? 'Leave the bar out' : 'Work out the bar too'}
          </button>
        )}
      </p>
    </section>
  )
}
