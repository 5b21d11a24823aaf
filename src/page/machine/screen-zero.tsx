import { isUpright } from '../../plan/upright.ts'
import { centred } from '../../plan/answers.ts'
import { Heading } from '../parts/heading.tsx'
import type { Job } from './job.ts'
import { Back, Blank, Go, Tick, Told } from './parts.tsx'
import { setValue, ticked, valueOf } from './record.ts'

const runsOut = (now: Job): string =>
  now.plan?.dial.runs === 'out'
    ? ' The nose points to the front: the dial runs out. Take up its slack that way, always.'
    : ''

/** What the two marks say; undefined until both are there, or where the nose has no two corners. */
export const marksFound = ({ plan }: Job) => {
  const [first, second] = [valueOf('mark-first'), valueOf('mark-second')]
  return plan?.centring && first && second ? centred(plan.centring, first.mm, second.mm) : undefined
}

/** First touch by both corners of the nose, so that the slot stands in the middle; then the dial's zero. */
export const Zero = ({ now }: { now: Job }) => {
  const { says, plan, design } = now
  const centring = plan?.centring
  const found = marksFound(now)
  const lanes = (plan?.lanes.length ?? 1) > 1
  const set = lanes ? 'Now to the first lane.' : 'Set the dial to 0.'
  const ready = centring ? found?.good === true && (lanes || ticked('zero-set')) : ticked('zero-set')
  const again = (): void => {
    setValue('mark-first', undefined)
    setValue('mark-second', undefined)
  }
  return (
    <>
      <Heading id="screen">Find the zero</Heading>
      {centring ? (
        <>
          <p class="do">
            Blue the bore. Feed until one corner of the nose just marks, and read the dial. Feed on until the other
            corner marks, and read it again.{runsOut(now)}
          </p>
          {!centring.dialIsFineEnough && (
            <p class="small">The dial is too coarse for this: read an indicator on the slide.</p>
          )}
          <div class="four">
            <Blank name="mark-first" label="First mark" unit={now.unit} signed />
            <Blank name="mark-second" label="Second mark" unit={now.unit} signed />
          </div>
          <Told
            answer={
              found &&
              (found.good
                ? {
                    is: 'hold',
                    word: 'Good.',
                    says: `They differ by ${says.step(found.difference)}; ${says.step(centring.differenceMost)} may be left. ${lanes ? set : `Back off past the slack, up to first touch again. ${set}`}`,
                    goOn: 'yes',
                  }
                : found.move > ((design.bar ?? design.groundBar)?.noseWidth ?? Infinity) / 2
                  ? {
                      is: 'broken',
                      word: 'Read them again.',
                      says: `They differ by ${says.step(found.difference)}: no bit stands so far off the middle. Both marks are readings of one dial, from one touch to the other.`,
                      goOn: 'no',
                    }
                  : {
                      is: 'care',
                      word: `${isUpright(design.asked) ? 'Raise or lower the bar' : 'Move the bar'} ${says.read(found.move)} toward the second mark.`,
                      says: `They differ by ${says.step(found.difference)}; ${says.step(centring.differenceMost)} may be left. Then find both marks again.`,
                      goOn: 'no',
                    })
            }
          />
          {found && !found.good && (
            <button type="button" class="offer" onClick={again}>
              Moved: find them again
            </button>
          )}
        </>
      ) : (
        <p class="do">
          {design.section.socket
            ? 'Middle by the V: blue the bore and touch. One mark, in the middle of the tip and square to the bore.'
            : 'Middle by the round nose: blue the bore, touch, and turn the spindle by hand. One mark, at its middle.'}
          {runsOut(now)}
        </p>
      )}
      {!lanes && (!centring || found?.good === true) && (
        <div class="ticks">
          <Tick name="zero-set">Up to first touch again, the dial set to 0</Tick>
        </div>
      )}
      <Go when={ready}>{lanes ? 'To the first lane' : 'Go on to the cut'}</Go>
      <Back />
    </>
  )
}
