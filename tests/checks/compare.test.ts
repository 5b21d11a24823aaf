import { describe, expect, it } from 'vitest'
import { design } from '../../src/design.ts'
import { readSpec } from '../../src/spec/read.ts'
import { eightBroach } from '../dimensions/broaches.ts'

const broach = { ...eightBroach, rootHeight: 9, yield: '830 MPa', gulletArea: '25 mm2' }
const compared = (tooling: unknown, more: object = {}) => {
  const read = readSpec({
    name: 'ways',
    units: 'mm',
    bore: {
      diameter: 25,
      length: 40,
    },
    hub: { outside: 70 },
    feature: { keyway: {} },
    ...more,
    ...(tooling === undefined ? {} : { tooling }),
  })
  if (!('spec' in read)) throw new Error(JSON.stringify(read.complaints))
  return design(read.spec)
}

describe('bar or broach', () => {
  it('are compared where both are open, and only there', () => {
    expect(compared({ bar: {} }).ways).toBeUndefined()
    expect(compared({ press: { broach } }).ways).toBeUndefined()
    expect(compared({ bar: {}, press: { broach } }).ways?.ways.map(({ by }) => by)).toEqual(['bar', 'press'])
  })

  it('without a broach the bar is what is told, and what would tell of the press', () => {
    const { ways } = compared(undefined)
    expect(ways?.recommended).toBe('bar')
    expect(ways?.says).toMatch(/^Cut it with the bar: \d+ passes, about \d+ minutes\. No broach is told/)
  })

  it('a press that is strong enough does in pushes what the bar does in passes', () => {
    const made = compared({ bar: { behind: 60 }, press: { broach, force: '60 kN', daylight: 300 } })
    const [bar, press] = made.ways?.ways ?? []
    expect(press?.passes).toBe(made.bushing?.passes.length)
    // Strokes as they are cut, gate by gate: what the card ticks off.
    const strokes = made.plan?.cuts.flatMap(({ runs }) => runs.map(({ passes }) => passes))
    expect(bar?.passes).toBe(strokes?.reduce((sum, passes) => sum + passes, 0))
    expect(press?.capacity).toBeCloseTo(42_000, 6)
    expect(made.ways?.recommended).toBe('press')
    expect(made.ways?.says).toContain('Broach it: 3 pushes')
    expect(made.ways?.says).toContain('of the 42.0 kN there is')
    expect(press?.make).toEqual(['guide bushing', 'shims'])
    expect(bar?.make).toEqual(['cutter bar', 'tool bit'])
    // Three minutes a push.
    expect(press?.minutes).toBe(9)
    expect(bar?.minutes).toBe(made.plan?.time.whole)
    expect(made.ways?.says).toContain(`about 9 minutes`)
    expect(made.ways?.says).toContain(`${bar?.passes} passes, about ${Math.ceil(bar?.minutes ?? NaN)} minutes`)
  })

  it('one shim makes two pushes, and is made too', () => {
    const [, press] =
      compared({ bar: { behind: 60 }, press: { broach: { ...broach, lastTooth: 15.5 } } }).ways?.ways ?? []
    expect(press).toMatchObject({ passes: 2, minutes: 6, make: ['guide bushing', 'shims'] })
  })

  it('a press that is too weak leaves the bar, and says why', () => {
    const { ways } = compared({ bar: { behind: 60 }, press: { broach, force: '12 kN' } })
    expect(ways?.recommended).toBe('bar')
    expect(ways?.says).toContain('With the broach it does not go: ')
    expect(ways?.ways[1]?.why).toBeDefined()
  })

  it('where the bar does not go and no broach is told, that is said, and no pushes are made up', () => {
    const { ways } = compared({ bar: { diameter: 24 }, press: {} })
    expect(ways?.recommended).toBe('press')
    expect(ways?.says).toMatch(/^Broach it\. No broach is told: .* With the bar it does not go: /)
  })

  it('where neither goes, neither is recommended', () => {
    const { ways } = compared({ bar: { diameter: 24 }, press: { broach, force: '12 kN' } })
    expect(ways?.recommended).toBeUndefined()
    expect(ways?.says).toContain('Neither way goes as it stands.')
    expect(ways?.says).toContain(`With the bar: ${ways?.ways[0]?.why}`)
    expect(ways?.says).toContain(`With the broach: ${ways?.ways[1]?.why}`)
  })

  it('a bar of one piece is to be made, too', () => {
    const small = {
      bore: { diameter: 6, length: 10 },
      hub: { outside: 20 },
      feature: { keyway: { width: 2, height: 2, across: 7 } },
    }
    const held = { ...broach, toothWidth: 2, bodyWidth: 1.98, firstTooth: 3, lastTooth: 3.9, pilot: 2.9, rootHeight: 2 }
    const { groundBar, ways } = compared({ bar: { form: 'one piece' }, press: { broach: held } }, small)
    expect(groundBar).toBeDefined()
    expect(ways?.ways[0]?.make).toEqual(['ground bar'])
  })

  it('what there is is never said to be more than it is', () => {
    const capacity = (force: string) => compared({ bar: {}, press: { broach, force } }).ways?.says ?? ''
    // Of a rating 70 % is taken: 27.993 kN, which is not 28.0.
    expect(capacity('39.99 kN')).toContain('of the 27.9 kN there is')
    expect(capacity('40 kN')).toContain('of the 28.0 kN there is')
  })
})
