import { beforeAll, describe, expect, it } from 'vitest'
import { crossSection, guideBushing } from '../../generators/guide-bushing.ts'
import type { Design } from '../../src/design.ts'
import { interference, type Kernel, openKernel } from '../../src/solid/mesh.ts'
import { areaOf, circle, rectangle } from '../../src/solid/outline.ts'
import { cut, extrude, place, revolve, type Solid } from '../../src/solid/solid.ts'
import { designed } from './designed.ts'
import { eightBroach } from './broaches.ts'

const pressed = (at: readonly number[], more: object = {}): Design =>
  designed({
    units: 'mm',
    bore: { diameter: 25, length: 40 },
    hub: { outside: 70, material: 'mild steel' },
    feature: { keyway: { standard: 'iso-773', at } },
    tooling: { press: { broach: eightBroach } },
    ...more,
  })
const finding = ({ findings }: Design, asked: string) => findings.find(({ rule }) => rule === asked)

let kernel: Kernel
beforeAll(async () => {
  kernel = await openKernel()
})

describe('the next keyway under a press', () => {
  it('one keyway asks for nothing', () => {
    expect(pressed([0]).bushing?.locating).toBeUndefined()
  })

  it.each([
    [[0, 90], [270]],
    [[0, 120, 240], [240]],
    [[350, 80], [270]],
    [[0, 80, 160], [280]],
    [
      [0, 60, 150],
      [300, 270],
    ],
  ] as const)('keyways at %j: second slots at %j', (at, second) => {
    expect(pressed(at).bushing?.locating?.at).toEqual(second)
    expect(pressed(at).indexing?.by).toBe('locating key')
  })

  // The hub with the keyway that was cut last, the key in it, and the bushing turned so that the broach's slot lies where the next is to be.
  it.each([[[0, 90]], [[0, 120, 240]], [[20, 80]]] as const)('bushing, key and hub go together: %j', (at) => {
    const job = pressed(at)
    const { section, bushing } = job
    const locating = bushing?.locating
    if (!bushing || !locating) throw new Error('no second slot')
    const half = section.width / 2 - 1e-3
    const box = (from: number, to: number, length: number): Solid =>
      extrude(rectangle([from, -half], [to, half]), 0, length)
    const key = box(locating.floor + 1e-3, locating.floor + locating.key.height, locating.key.length)
    const hub = cut(
      revolve(rectangle([section.boreRadius, 0], [35, 40])),
      extrude(rectangle([0, -section.width / 2], [section.floor, section.width / 2]), -1, 41),
    )
    const step = (at[1] ?? 0) - (at[0] ?? 0)
    // Counter-clockwise seen from the collar, along z, is clockwise round z.
    const on = (angle: number): Solid => place(guideBushing.solid(job), { turn: [0, 0, -angle] })
    const turned = on(step)
    expect(interference(kernel, turned, key)).toBeLessThan(0.01)
    expect(interference(kernel, hub, key)).toBeLessThan(0.01)
    expect(interference(kernel, hub, turned)).toBeLessThan(1)
    // It reaches well into both, and turned otherwise the key strikes the bushing.
    expect(locating.floor + locating.key.height - section.boreRadius).toBeGreaterThan(1)
    expect(section.boreRadius - locating.floor).toBeGreaterThan(1)
    expect(interference(kernel, on(step + 5), key)).toBeGreaterThan(1)
    // The broach's slot is open where the next keyway is to be, down to its floor.
    const next = place(box(bushing.floorFromAxis + 0.02, section.boreRadius, 40), { turn: [0, 0, -step] })
    expect(interference(kernel, turned, next)).toBeLessThan(0.01)
  })

  it('the solid has the hand of the drawing: for a keyway a quarter on, counter-clockwise, the second slot lies below', () => {
    const job = pressed([0, 90])
    // Seen from the collar, along z: x to the right, y down. The drawing has y up.
    const pin = (x: number, down: number): Solid => place(extrude(circle(2), 5, 20), { move: [x, down, 0] })
    const inMetal = (at: Solid): boolean => interference(kernel, guideBushing.solid(job), at) > 1
    expect([pin(0, 11.2), pin(0, -11.2), pin(5, 0)].map(inMetal)).toEqual([false, true, false])
    const bushing = job.bushing
    const drawn = bushing && crossSection(bushing)
    if (!drawn) throw new Error('no bushing')
    const lowest = drawn.filter(({ at: [x, y] }) => Math.abs(x) < 4.1 && y < -5).map(({ at: [, y] }) => y)
    expect(lowest.length).toBe(4)
    expect(drawn.some(({ at: [x, y] }) => Math.abs(x) < 4.1 && y > 5)).toBe(false)
    // What is drawn has the area of a disc less its two slots.
    const [radius, half, second] = [12.5, bushing.slotWidth.nominal / 2, 4]
    const cap = (h: number, floor: number): number =>
      h * Math.sqrt(radius ** 2 - h ** 2) + radius ** 2 * Math.asin(h / radius) - 2 * h * floor
    const floor = bushing.backWall.nominal - radius
    expect(areaOf(drawn)).toBeCloseTo(
      Math.PI * radius ** 2 - cap(half, floor) - cap(second, bushing.locating?.floor ?? NaN),
      6,
    )
  })

  it('a slot opposite would take the back away that the depth is miked over: a scribed line, and what it is good for', () => {
    const two = pressed([0, 180])
    expect(two.bushing?.locating).toBeUndefined()
    expect(two.indexing?.by).toBe('scribed line')
    // 0.1 mm by eye at the bore is more than the play of an 8 mm key.
    expect(finding(two, 'index-fits')?.verdict).toBe('fail')
    expect(finding(two, 'index-fits')?.remedies[0]?.set).toMatchObject({ 'tooling.press': null })
    // With a bar beside it the work is turned on by a dividing head, as ever.
    expect(pressed([0, 180], { tooling: { bar: {}, press: { broach: eightBroach } } }).indexing?.by).toBe(
      'dividing head',
    )
  })

  it('slots too near one another are refused, with the metal that is left', () => {
    // 9.8 sin 45° − 4.009 cos 45° − 4.0625 = 0.03 mm at the corner of the second slot's floor; at 90° 5.7.
    const near = (angle: number) => finding(pressed([0, angle]), 'bushing-slots-apart')
    expect(near(90)?.verdict).toBe('pass')
    expect(near(45)?.verdict).toBe('fail')
    const { bushing, section } = pressed([0, 60])
    const floor = bushing?.locating?.floor ?? NaN
    // The corner of the second slot's floor that lies nearest, by its own coordinates.
    const y = floor * Math.sin(Math.PI / 3) - (section.widthLimits.upper / 2) * Math.cos(Math.PI / 3)
    expect(bushing?.locating?.web).toBeCloseTo(y - (bushing?.slotWidth.upper ?? 0) / 2, 6)
  })

  it('what the key leaves adds up from keyway to keyway, and counts in the place of the slot', () => {
    const three = pressed([0, 120, 240])
    const step = three.bushing?.locating?.stepError ?? NaN
    // 0.01 mm of fit, and a minute of arc at 12.5 mm.
    expect(step).toBeCloseTo(0.01 + 12.4875 * (Math.PI / 180 / 60), 4)
    const [first, second, third] = three.indexing?.slots ?? []
    expect(first?.error).toBe(0)
    expect(second?.error).toBeCloseTo((step / three.section.boreRadius) * (180 / Math.PI) * 60, 6)
    expect(third?.error).toBeCloseTo(2 * (second?.error ?? NaN), 9)
    const place = three.errors.press?.find(({ of }) => of === 'position')
    expect(place?.contributions.find(({ of }) => of === 'the locating key')?.by).toBeCloseTo(2 * step, 12)
    // With a bar beside it, too: the dividing head turns nothing under the press.
    const both = pressed([0, 180], { tooling: { bar: {}, press: { broach: eightBroach } } })
    const laid = both.errors.press?.find(({ of }) => of === 'position')
    expect(laid?.contributions.find(({ of }) => of === 'the slot laid on a scribed line')?.by).toBe(0.1)
    expect(both.ways?.ways.find(({ by }) => by === 'press')?.make).not.toContain('locating key')
    const quarter = pressed([0, 90], { tooling: { bar: {}, press: { broach: eightBroach } } })
    expect(quarter.ways?.ways.find(({ by }) => by === 'press')?.make).toContain('locating key')
  })
})
