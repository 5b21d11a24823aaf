import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { design } from '../../src/design.ts'
import { orderOf } from '../../src/page/machine/order.ts'
import { parse } from '../../src/spec/parse.ts'
import { readSpec } from '../../src/spec/read.ts'

const folder = join(import.meta.dirname, '../specimens')
/** A bar that needs its bit set out twice. */
const staged = `name: staged
units: mm
bore: { diameter: 10, tolerance: [0, 0], length: 12 }
hub: { outside: 30 }
feature: { keyway: { width: 4, height: 4, across: 11.8 } }
tooling:
  bar: { behind: 20, diameter: 8, infeed: 0.01, nose: { cornerRadius: 0 }, clearance: { back: 0.1, front: 0.1, withdrawn: 0.1 } }
`
const texts = [
  ...readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => [name, readFileSync(join(folder, name), 'utf8')] as const),
  ['staged', staged] as const,
]
const jobs = texts.flatMap(([name, text]) => {
  const read = parse(text)
  const outcome = 'document' in read ? readSpec(read.document) : undefined
  return outcome && 'spec' in outcome ? [[name, design(outcome.spec)] as const] : []
})

describe('screens at the machine', () => {
  for (const [name, made] of jobs)
    it(`${name}: each screen once, in the order of the card`, () => {
      for (const way of ['bar', 'press'] as const) {
        if (way === 'bar' ? !made.plan : !made.bushing) continue
        const order = orderOf(made, way)
        const keys = order.map(({ key }) => key)
        expect(new Set(keys).size).toBe(keys.length)
        expect(keys.slice(0, 3)).toEqual(way === 'bar' ? ['stop', 'bore', 'bit'] : ['stop', 'bore', 'stack'])
        expect(keys.slice(-2)).toEqual(['measure', 'done'])
        if (way === 'press') {
          const pushes = order.filter(({ is }) => is === 'push').length
          expect(pushes).toBe((made.bushing?.passes.length ?? 0) * made.section.at.length)
          continue
        }
        const { plan } = made
        if (!plan) throw new Error('no plan')
        const gates = plan.cuts.flatMap((cut) => cut.gates)
        expect(order.filter(({ is }) => is === 'gate').length).toBe(gates.length)
        expect(order.filter(({ is }) => is === 'cut').length).toBe(gates.length * plan.keyways)
        // Every slot is turned to but the first at the very first; a gate is measured when all are cut to it.
        expect(order.filter(({ is }) => is === 'turn').length).toBe(
          plan.keyways > 1 ? gates.length * plan.keyways - 1 : 0,
        )
        expect(order.filter(({ is }) => is === 'lane').length).toBe(plan.lanes.length > 1 ? plan.cuts.length : 0)
        expect(order.filter(({ is }) => is === 'anew').length).toBe(
          plan.cuts.filter((cut, at) => at > 0 && cut.setting !== plan.cuts[at - 1]?.setting).length,
        )
      }
    })

  it('among them are lanes, several slots, several settings and a press', () => {
    const orders = jobs.flatMap(([, made]) => [
      ...(made.plan ? orderOf(made, 'bar') : []),
      ...(made.bushing ? orderOf(made, 'press') : []),
    ])
    for (const is of ['lane', 'turn', 'anew', 'push'])
      expect([is, orders.some((screen) => screen.is === is)]).toEqual([is, true])
  })
})
