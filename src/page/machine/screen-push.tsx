import { atEachPass } from '../../card/cautions.ts'
import { toTheNext } from '../../card/press.ts'
import { within } from '../../plan/found.ts'
import { Heading } from '../parts/heading.tsx'
import { goOn } from './going.ts'
import type { Job } from './job.ts'
import type { Push } from './order.ts'
import { Back, Blank, Go, Said, Told } from './parts.tsx'
import { note, record, valueOf } from './record.ts'
import { ordinal } from './screen-between.tsx'
import { openWrong } from './wrong.tsx'

export const pushKey = ({ slot, pass }: { readonly slot: number; readonly pass: number }): string =>
  `over-pass-${slot}-${pass}`

/** What the over must mike, and how near. */
export const overOf = ({ design }: Job, pass: number) => {
  const over = design.bushing?.passes[pass]?.over
  const near = design.pressLoads?.overError.worst
  return over === undefined ? undefined : { over, near, least: over - (near ?? 0), most: over + (near ?? 0) }
}

/** Miked before it is pressed: the over is the across. */
export const PushThrough = ({ now, screen }: { now: Job; screen: Push }) => {
  const { says, design } = now
  const { bushing, pressLoads } = design
  const pass = bushing?.passes[screen.pass]
  const over = overOf(now, screen.pass)
  if (!bushing || !pass || !over) return null
  const key = pushKey(screen)
  const value = valueOf(key)
  const found = value && within(value.mm, over)
  const slots = design.section.at.length
  const shims = bushing.shims.slice(0, pass.shims)
  const force = pressLoads?.passes[screen.pass]
  return (
    <>
      <Heading id="screen" aside={`${screen.pass + 1} of ${bushing.passes.length}`}>
        {slots > 1 ? `Slot ${screen.slot + 1} of ${slots}, ` : ''}
        {ordinal(screen.pass)} pass
      </Heading>
      {screen.slot > 0 && screen.pass === 0 && (
        <p class="do">
          Slot {screen.slot + 1} stands at {Number((design.section.at[screen.slot] ?? 0).toFixed(2))}°.{' '}
          <Said words={toTheNext(design, says)} />.
        </p>
      )}
      <p class="do">
        {shims.length === 0
          ? 'No shim.'
          : `${shims.length === 1 ? 'One shim' : `${shims.length} shims`} behind the broach: ${shims.map((shim) => says.fine(shim)).join(' + ')}.`}{' '}
        Mike it before you press it: over bushing back, shims and last tooth.
      </p>
      <div class="the-number">
        <p class="turn">It must mike</p>
        <p class={`huge long-${says.read(over.over).length}`}>{says.read(over.over)}</p>
      </div>
      <Blank key={key} name={key} label={`Measured over, ${now.unit}`} unit={now.unit} large />
      <Told
        answer={
          found && {
            is: found.good ? 'hold' : 'broken',
            word: found.good ? 'Good.' : 'Do not press.',
            says: found.good
              ? `Press it through${force === undefined ? '' : `; up to ${says.force(force)}`}. Across will then be ${says.read(over.over)}.`
              : `It does not mike ${says.read(over.over)}: ${says.read(Math.abs(found.off))} ${found.off > 0 ? 'over' : 'under'}. Look for a chip between shims, a shim left out, the broach the wrong way round.`,
            goOn: found.good ? 'yes' : 'no',
          }
        }
      />
      {atEachPass.block === 'caution' &&
        atEachPass.says.map(({ signal, words }) => (
          <p key={signal} class="caution">
            <b class="signal">{signal}</b> <Said words={words} />
          </p>
        ))}
      <Go
        when={found?.good === true}
        press={() => {
          note({ strokes: record.peek().strokes + 1 })
          goOn()
        }}
      >
        Pressed through
      </Go>
      {!found && <p class="small">Not before it is miked.</p>}
      <button type="button" class="offer at-the-foot" onClick={openWrong}>
        Something is wrong
      </button>
      <Back />
    </>
  )
}
