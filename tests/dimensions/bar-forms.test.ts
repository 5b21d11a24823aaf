import { describe, expect, it } from 'vitest'
import { findingsOf, type Sized, sizesOf } from '../../src/design.ts'
import { backToNoseMost } from '../../src/dimensions/ground-bar.ts'
import { readSpec } from '../../src/spec/read.ts'

const worked = (document: object, shop?: object): Sized => {
  const read = readSpec({ name: 'trial', units: 'mm', ...document }, shop)
  if (!('spec' in read)) throw new Error(JSON.stringify(read.complaints))
  return sizesOf(read.spec)
}
const failing = (of: Sized): readonly string[] =>
  findingsOf(of).flatMap(({ rule, verdict }) => (verdict === 'fail' ? [rule] : []))

const close = { back: 0.1, front: 0.1, withdrawn: 0.1 }
const six = (bar: object) => ({
  bore: { diameter: 6, tolerance: [0, 0], length: 8 },
  hub: { outside: 20 },
  feature: { keyway: { width: 2, height: 2, across: 7 } },
  tooling: { bar: { behind: 20, infeed: 0.005, clearance: close, nose: { cornerRadius: 0 }, ...bar } },
})
const twenty = (bar: object, blind?: object) => ({
  bore: { diameter: 20, tolerance: [0, 0], length: 25, ...(blind && { blind }) },
  hub: { outside: 60 },
  feature: { keyway: { width: 6, height: 6, across: 22.8 } },
  tooling: { bar: { behind: 30, nose: { cornerRadius: 0 }, ...bar } },
})

describe('a bar of one piece', () => {
  it('6 mm, 2 × 2: blank 5.8, back to nose 5.622132, neck 4.5', () => {
    // Worked scenario, derived: limit of the bore 5.628427, p 1.122132 inside 1.048190 to 1.128427.
    expect(backToNoseMost(5.8, 2)).toBeCloseTo(5.622132, 6)
    const { groundBar } = worked(six({ form: 'one piece', diameter: 4.5 }))
    expect(groundBar?.blank.nominal).toBe(5.8)
    expect(groundBar?.projectionMin).toBeCloseTo(1.04819, 6)
    expect(3 + Math.sqrt(8) - 0.2).toBeCloseTo(5.628427, 6)
    expect(groundBar?.projectionMax).toBeLessThan(1.122132)
    expect(groundBar?.diameterMax).toBeCloseTo(4.576304, 6)
    expect(groundBar?.eccentricity).toBeCloseTo(0.65, 9)
    expect(failing(worked(six({ form: 'one piece', diameter: 4.5 })))).toEqual([])
  })

  it('6 mm, 2 × 2: lengths and small sizes by the sentences that give their reasons', () => {
    const { groundBar } = worked(six({ form: 'one piece', diameter: 4.5 }))
    expect(groundBar).toMatchObject({
      headLength: 3, // 1.25 noses are 2.5, 2.5 projections 2.7
      neckLength: 11, // 8 of hub, 1 of overtravel, 5 before the holder, less the head
      overhang: 14,
      holderGap: 5,
      overall: 44, // 30 of shank at the least
      fillet: 0.75, // half of 6 less 4.5
      stock: { diameter: 6, length: 47 },
      widthAtHeel: expect.closeTo(2 - 6 * Math.tan(Math.PI / 90), 9), // 2° a side
      endSetBack: expect.closeTo(3 * Math.tan(Math.PI / 36), 9), // 5°
      noseTolerance: { nominal: 2, lower: 2, upper: 2 },
    })
    // Withdrawn to first touch at √8 its axis stands √8 − 1.07 − 2.25 from the bore's: that much nearer to the far wall than 3 − 2.25.
    expect(groundBar?.projection).toBeCloseTo(1.07, 9)
    // A corner of 0.9 on a nose of 2 lies nearer to the round: 2.89 + 0.9 + √(1.99² − 0.1²).
    const rounded = worked(six({ form: 'one piece', diameter: 4.5, nose: { cornerRadius: 0.9 } })).groundBar
    expect(rounded?.backToNoseMost).toBeCloseTo(2.89 + 0.9 + Math.sqrt(1.99 ** 2 - 0.1 ** 2), 9)
    expect(groundBar?.gaps.back).toBeCloseTo(0.75 - (1.07 + 2.25 - Math.sqrt(8)), 9)
  })

  it('in inches its shank is turned down by half a thousandth at the most, never over', () => {
    const { groundBar } = worked({
      units: 'in',
      bore: { diameter: 0.25, length: 0.375 },
      hub: { outside: 0.75 },
      feature: { keyway: { width: 0.0625, across: 0.285 } },
      tooling: { bar: { form: 'one piece', shank: 0.5 } },
    })
    expect(groundBar?.shank.upper).toBeCloseTo(12.7, 9)
    expect(groundBar?.shank.lower).toBeCloseTo(0.4995 * 25.4, 9)
  })

  // Clipping by sampling: every point of head and neck lies in the blank, and in the bore when withdrawn; neck and head part where they should.
  it('comes out of its blank, and passes its bore', () => {
    for (const [bore, width, across] of [
      [6, 2, 7],
      [8, 2, 9],
      [12, 4, 13.8],
      [25, 8, 28.3],
    ] as const) {
      const { groundBar, section, asked } = worked({
        bore: { diameter: bore, tolerance: [0, 0], length: bore },
        feature: { keyway: { width, height: width, across } },
        tooling: { bar: { form: 'one piece', infeed: 0.005, clearance: close } },
      })
      if (!groundBar || !asked) throw new Error('no bar of one piece')
      const neck = groundBar.diameter.nominal / 2
      const { nominal: over, upper } = groundBar.backToNose
      // From the back of both, up: a strip as wide as the nose, and the neck's circle.
      const points = Array.from({ length: 400 }, (_, n) => {
        const angle = (n * Math.PI) / 200
        return [neck + neck * Math.cos(angle), neck * Math.sin(angle)] as const
      }).concat([-1, 1].map((side) => [upper, (side * groundBar.noseWidth) / 2] as const))
      const blank = groundBar.blank.lower / 2
      // Corners of the nose are rounded: their centres are what must lie on the smaller round.
      const r = groundBar.cornerRadius
      for (const [x, y] of points) {
        const corner = x === upper
        const [cx, cy] = corner ? [x - r, Math.abs(y) - r] : [x, y]
        expect(Math.hypot(cx - blank, cy) + (corner ? r : 0)).toBeLessThanOrEqual(blank + 1e-6)
        // Withdrawn from first touch: the nose's flat by `withdrawn` before it.
        const at = section.touchOff - asked.clearance.withdrawn - over
        expect(Math.hypot(at + cx, cy) + (corner ? r : 0)).toBeLessThan(bore / 2)
      }
      // At full depth the neck keeps its distance from the mouth's corners.
      const axis = section.floor - groundBar.projection - neck
      expect(Math.hypot(section.mouth - axis, section.width / 2) - neck).toBeGreaterThanOrEqual(0.1 - 1e-6)
    }
  })

  it('is taken where no bit can be held in a small bore, and never in a large one unless asked for', () => {
    const small = worked({
      bore: { diameter: 6, tolerance: [0, 0], length: 8 },
      feature: { keyway: { width: 2, height: 2, across: 7 } },
      tooling: { bar: { behind: 20 } },
    })
    expect(small.bar).toBeUndefined()
    expect(small.groundBar?.form).toBe('one piece')
    expect(failing(small)).toEqual([])
    expect(small.plan?.passes).toBeGreaterThan(10)
    const large = worked({ ...twenty({}), shop: { bits: [12] } })
    expect(large.groundBar).toBeUndefined()
    expect(failing(large)).toEqual(['bar-on-hand'])
    expect(worked(twenty({ form: 'one piece' })).groundBar?.tipBeyond).toBe(1)
  })
})

describe('a bar in stages', () => {
  it('10 mm, 4 × 4, bar 8, 3 mm bit: one setting does not do, two or three do', () => {
    // Worked scenario, derived: one bit of 7.146530 to 8.982576 would serve two exact settings.
    const ten = (bar: object) =>
      worked({
        bore: { diameter: 10, tolerance: [0, 0], length: 12 },
        hub: { outside: 30 },
        feature: { keyway: { width: 4, height: 4, across: 11.8 } },
        tooling: {
          bar: { behind: 20, diameter: 8, clearance: close, infeed: 0.01, nose: { cornerRadius: 0 }, ...bar },
        },
      })
    expect(failing(ten({ stages: 1 }))).toContain('projection-enters')
    const { bar, asked } = ten({})
    expect(failing(ten({}))).toEqual([])
    expect(bar?.stages.length).toBeGreaterThan(1)
    for (const { projection } of bar?.stages ?? []) {
      const nominal = 4 + projection
      expect(bar?.bitLength).toBeGreaterThan(nominal + (bar?.screw.cupPoint ?? 0) / 2)
      const tail = (bar?.bitLength ?? 0) - nominal
      expect(Math.hypot(tail, (bar?.bit.size ?? 0) / 2)).toBeLessThanOrEqual(4 - (asked?.clearance.back ?? 0) + 1e-9)
    }
    expect(bar?.projection).toBe(bar?.stages.at(-1)?.projection)
    expect(bar?.diameterMax).toBeGreaterThan(8)
  })

  it('is not made where one setting works', () => {
    expect(worked(twenty({})).bar?.stages).toHaveLength(1)
  })
})

describe('a blind bore', () => {
  it('leans the bit where nothing upright has room', () => {
    const groove = { diameter: 28, length: 3 }
    const { bar, bit } = worked(twenty({}, { beyond: 3, relief: groove }))
    expect(bar?.form).toBe('inclined')
    expect(bar?.tipBeyond).toBeLessThanOrEqual(2.5)
    expect(failing(worked(twenty({}, { beyond: 3, relief: groove })))).toEqual([])
    // Mild steel, 10° and 5°: as ground, less and more by what it leans.
    expect(bit?.leaning).toEqual({ rake: 10, endRelief: 5 })
    expect(bit?.rake).toBe(10 - (bar?.incline ?? 0))
    expect(bit?.endRelief).toBe(5 + (bar?.incline ?? 0))
  })

  it('20 mm, 6 × 6, d 14, b 6, p 3: grooves of 26.693725, 8.732870 deep', () => {
    // Worked scenario, derived: a_t 7.232870 with its own hole; a drilled one is .04 larger, lengths are in tenths, and a nose as wide as its blank has its edge
    // ground under the broken corners, .15.
    const { bar, section } = worked(
      twenty(
        { form: 'end screw', diameter: 14, projection: 3, bit: { size: 6 }, screw: 'M5' },
        { beyond: 9, relief: { diameter: 28, length: 9 } },
      ),
    )
    expect(2 * section.cornerReach + 0.4).toBeCloseTo(26.693725, 6)
    expect(bar?.tipBeyond).toBeGreaterThan(1 + 7.23287 - 1e-9)
    expect(bar?.tipBeyond).toBeLessThan(1 + 7.23287 + 0.25)
    expect(bar?.holeRatio).toBeCloseTo(0.596848, 2)
  })

  it('prefers the thick bar with a screw in the wall to many lanes under a small end screw', () => {
    const { bar } = worked(twenty({}, { beyond: 5, relief: { diameter: 28, length: 4 } }))
    expect(bar?.form).toBe('side screw')
    expect(bar?.lanes.length).toBeLessThan(3)
    expect(bar?.diameter.nominal).toBeGreaterThan(12)
  })
})

describe('machines of the shop', () => {
  const machines = [
    { name: 'bench lathe', kind: 'lathe', dial: { mark: 0.05, reads: 'diameter' }, give: '3000 N/mm' },
    { name: 'knee mill', kind: 'mill' },
    { name: 'arbor press', kind: 'press' },
  ]
  const read = (machine: string) => readSpec({ name: 'trial', units: 'mm', ...twenty({ machine }), shop: { machines } })
  it('are named by the bar, and tell what the spec leaves out', () => {
    const named = read('bench lathe')
    if (!('spec' in named)) throw new Error('refused')
    expect(named.spec.tooling.bar).toMatchObject({
      machine: 'lathe',
      give: 3000,
      dial: { mark: 0.05, reads: 'diameter' },
      onHand: { name: 'bench lathe' },
    })
    const mill = read('knee mill')
    expect('spec' in mill && mill.spec.tooling.bar?.machine).toBe('mill')
  })
  it('that are not there, or are presses, are complained of with what was meant', () => {
    for (const [machine, meant] of [
      ['bench late', 'bench lathe'],
      ['arbor press', undefined],
    ] as const) {
      const refused = read(machine)
      expect('complaints' in refused && refused.complaints.map((each) => [each.path, each.meant])).toEqual([
        ['tooling.bar.machine', meant],
      ])
    }
  })
})
