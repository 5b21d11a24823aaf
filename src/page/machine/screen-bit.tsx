import type { Tick as CardTick } from '../../card/document.ts'
import { plain } from '../../card/document.ts'
import { inTheStack } from '../../card/press.ts'
import { ofTheBit, ofTheMachine, openBehind } from '../../card/set-up.ts'
import { within } from '../../plan/found.ts'
import { Heading } from '../parts/heading.tsx'
import type { Job } from './job.ts'
import { Back, Blank, Go, Said, Tick, Told } from './parts.tsx'
import { ticked, valueOf } from './record.ts'

/** What the card has to be seen to at the setting up, but what is measured over bar and nose: that is asked for by itself. */
const setUpTicks = ({ design, says, way }: Job): readonly CardTick[] =>
  way === 'press'
    ? inTheStack(design, says)
    : [...openBehind(design, says), ...ofTheBit(design, says), ...ofTheMachine(design, says, true)].filter(
        ({ words }) => !/^Over (?:bar|back) and nose/.test(plain(words)),
      )

/** Over bar and nose at a setting of the projection, and how near it is to be; of a bar of one piece over its back. */
export const overAt = ({ design, plan }: Job, setting: number) => {
  const { bar, groundBar } = design
  if (groundBar)
    return { least: groundBar.backToNose.lower, most: groundBar.backToNose.upper, middle: groundBar.backToNose.nominal }
  const over = plan?.settings[setting]?.overBarAndNose ?? bar?.overBarAndNose
  return bar && over !== undefined
    ? { least: over - bar.setting, most: over + bar.setting, middle: over, play: bar.setting }
    : undefined
}

export const overSaid = (now: Job, setting: number): string => {
  const over = overAt(now, setting)
  if (!over) return ''
  return over.play === undefined
    ? now.says.between(over.least, over.most)
    : `${now.says.read(over.middle)} ± ${now.says.size(over.play)}`
}

export const OverBarAndNose = ({ now, setting, name }: { now: Job; setting: number; name: string }) => {
  const over = overAt(now, setting)
  const value = valueOf(name)
  const found = over && value && within(value.mm, over)
  const off = found && now.says.read(Math.abs(found.off))
  return (
    <>
      <Blank
        name={name}
        unit={now.unit}
        large
        label={`${now.design.groundBar ? 'Over back and nose' : 'Over bar and nose'}, ${now.unit}: ${overSaid(now, setting)}`}
      />
      <Told
        answer={
          found && {
            is: found.good ? 'hold' : 'broken',
            word: found.good ? 'Good.' : found.off > 0 ? 'Too far out.' : 'Not far enough out.',
            says: found.good
              ? Number(off) === 0
                ? 'Right in the middle.'
                : `${off} ${found.off > 0 ? 'over' : 'under'} the middle of it.`
              : now.design.groundBar
                ? `${off} from the middle of what serves. Grind it, or work the job for it at the desk.`
                : `Move the bit ${found.off > 0 ? 'in' : 'out'} by ${off}, and measure again.`,
            goOn: found.good ? 'yes' : 'no',
          }
        }
      />
    </>
  )
}

/** The bit set out, and all that the card has to be seen to before the first stroke. */
export const Bit = ({ now }: { now: Job }) => {
  const over = overAt(now, 0)
  const value = valueOf('over-0')
  const good = value !== undefined && over !== undefined && within(value.mm, over).good
  const ticks = setUpTicks(now)
  const left = ticks.filter(({ words }) => !ticked(`bit-${plain(words)}`)).length
  return (
    <>
      <Heading id="screen">Set the bit</Heading>
      <OverBarAndNose now={now} setting={0} name="over-0" />
      <Rest ticks={ticks} now={now} />
      <Go when={good && left === 0}>Go on</Go>
      {!(good && left === 0) && (
        <p class="small">
          {good ? '' : `Over ${now.design.groundBar ? 'back' : 'bar'} and nose within its limits`}
          {!good && left > 0 ? ', and ' : ''}
          {left > 0 ? `${left === 1 ? 'one more tick' : `${left} more ticks`}` : ''}, and it goes on.
        </p>
      )}
      <Back />
    </>
  )
}

/** The stack at the press. */
export const Stack = ({ now }: { now: Job }) => {
  const ticks = setUpTicks(now)
  const left = ticks.filter(({ words }) => !ticked(`bit-${plain(words)}`)).length
  return (
    <>
      <Heading id="screen">The stack</Heading>
      <Rest ticks={ticks} now={now} />
      <Go when={left === 0}>Go on</Go>
      {left > 0 && <p class="small">{left === 1 ? 'One more tick' : `${left} more ticks`}, and it goes on.</p>}
      <Back />
    </>
  )
}

const Rest = ({ ticks, now }: { ticks: readonly CardTick[]; now: Job }) => (
  <div class="ticks">
    {ticks.map(({ words, blank }) => {
      const text = plain(words)
      return (
        <div key={text} class="tick-row">
          <Tick name={`bit-${text}`}>
            <Said words={words} />
          </Tick>
          {blank && (
            <Blank
              name={`seen-${text}`}
              label={<span class="unseen">{text}: as measured</span>}
              unit={now.unit}
              signed
            />
          )}
        </div>
      )
    })}
  </div>
)
