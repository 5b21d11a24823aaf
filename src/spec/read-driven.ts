/** What drives the bar, and what holds spindle and work. */
import { force } from './quantity.ts'
import { present, type Reading } from './reading.ts'
import type { Machine } from './shop.ts'
import { spindleHolds } from './spindle.ts'
import type { BarSpec } from './spec.ts'

const at = 'tooling.bar'

type Driven = Pick<BarSpec, 'pull' | 'thrust' | 'travel' | 'handle' | 'rack' | 'hold' | 'work'>

/** What the spec tells, and where it is silent the machine of the shop that it names. */
export function readDriven(reading: Reading, onHand: Machine | undefined): Driven {
  const size = (name: string): number | undefined => reading.length(`${at}.${name}`)
  const [pulled, moves] = [reading.quantity(`${at}.pull.force`, force), size('pull.moves')]
  if (reading.states(`${at}.pull`) && reading.states(`${at}.give`))
    reading.complain(`${at}.pull`, 'give, as measured at the holder, or pull, as measured at the nose: one of the two')
  return present({
    pull: pulled === undefined || !moves ? undefined : pulled / moves,
    thrust: reading.quantity(`${at}.thrust`, force) ?? onHand?.thrust,
    travel: size('travel') ?? onHand?.travel,
    handle: both({ radius: size('handle.radius'), travel: size('handle.travel') }) ?? onHand?.handle,
    rack: both({ module: size('rack.module'), width: size('rack.width') }),
    hold: reading.word(`${at}.hold`, spindleHolds) ?? onHand?.hold,
    work: readWork(reading, onHand),
  })
}

function readWork(reading: Reading, onHand: Machine | undefined): BarSpec['work'] {
  const held = reading.word(`${at}.work.held`, ['vise', 'chuck', 'strap'])
  const stated = reading.quantity(`${at}.work.jaws`, force)
  const jaws = stated ?? (held === 'vise' || held === 'chuck' ? onHand?.jaws : undefined)
  if (stated !== undefined && (held === undefined || held === 'strap'))
    reading.complain(`${at}.work.jaws`, 'nothing here without held: vise or chuck; the force of one jaw')
  const work = present({
    held,
    jaws,
    stop: reading.quantity(`${at}.work.stop`, force),
    support: reading.length(`${at}.work.support`),
    clamp: reading.quantity(`${at}.work.clamp`, force),
    above: reading.length(`${at}.work.above`),
  })
  return Object.keys(work).length > 0 ? work : undefined
}

const both = <Keys extends string>(sizes: Record<Keys, number | undefined>): Record<Keys, number> | undefined =>
  Object.values(sizes).every((size) => size !== undefined) ? (sizes as Record<Keys, number>) : undefined
