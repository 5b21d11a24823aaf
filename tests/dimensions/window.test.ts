import { describe, expect, it, test } from 'vitest'
import { asmeAcross, mouthX, touchOffX } from '../../src/dimensions/bore.ts'
import {
  flankBefore,
  barAxisMost,
  bitLengthWindow,
  chipCoil,
  laneOffsets,
  largestBar,
  noseLengthLeast,
  projectionFloor,
  projectionLeast,
  projectionMost,
  type Setting,
} from '../../src/dimensions/window.ts'

/** A setting at exact sizes: bore diameter, nose width, across, one clearance all round. */
const setting = (
  bore: number,
  nose: number,
  across: number,
  clearance: number,
  more: Partial<Setting> = {},
): Setting => ({
  radius: bore / 2,
  floor: across - bore / 2,
  noseWidth: nose,
  cornerRadius: 0,
  offset: 0,
  clearances: { back: clearance, front: clearance, withdrawn: clearance },
  chipRoom: 0,
  ...more,
})

const inch = (clearance: number) => setting(1, 0.25, 1.114123, clearance)
const metric = (clearance: number) => setting(25, 8, 28.3, clearance)

describe('window of projections, one lane', () => {
  // Worked scenario, derived: [setting, bar, least, most].
  test.each([
    ['1 in, 1/4 key', inch(0.01), 0.5, 0.10798, 0.464123],
    ['1 in, 1/4 key', inch(0.01), 0.625, 0.11479, 0.339123],
    ['1 in, 1/4 key', inch(0.01), 0.75, 0.119143, 0.214123],
    ['25 mm, 8 key', metric(0.25), 16, 3.172716, 7.842719],
    ['25 mm, 8 key', metric(0.25), 20, 3.394574, 3.842719],
    ['10 mm, 4 key, no clearance', setting(10, 4, 11.8, 0), 8, 1.681526, 1.582576],
    ['10 mm, 4 key', setting(10, 4, 11.8, 0.1), 7, 1.71075, 2.382576],
    ['10 mm, 4 key', setting(10, 4, 11.8, 0.1), 7.6, 1.765558, 1.782576],
    ['6 mm, 2 key', setting(6, 2, 7, 0.1), 4.5, 1.04819, 1.128427],
  ] as const)('%s: bar %#', (_name, at, bar, least, most) => {
    expect(projectionLeast(at, bar)).toBeCloseTo(least, 6)
    expect(projectionMost(at, bar)).toBeCloseTo(most, 6)
  })

  it('takes each clearance where it belongs', () => {
    // Worked scenario, derived: 1-1/4 bore, 1/4 key, T 1.366877, bar 3/4, behind .015, in front and withdrawn .010.
    const across = 0.625 + mouthX(0.625, 0.125) + 0.13
    const at = setting(1.25, 0.25, across, 0.01, { clearances: { back: 0.015, front: 0.01, withdrawn: 0.01 } })
    expect(projectionLeast(at, 0.75)).toBeCloseTo(0.119143, 6)
    expect(projectionMost(at, 0.75)).toBeCloseTo(0.462372, 6)
    expect(largestBar(at)).toBeCloseTo(1.086676, 6)
  })

  // Worked scenario, derived: largest bar at no clearance, and by how much bore less crown depth is too big. [bore, key, T, bar, too big]
  test.each([
    [0.75, 0.1875, 0.836842, 0.653089, 0.010069],
    [1, 0.25, 1.114123, 0.872417, 0.013461],
    [6, 2, 7, 4.871591, 0.128409],
    [10, 4, 11.8, 7.90825, 0.29175],
    [12, 4, 13.8, 9.934154, 0.265846],
    [20, 6, 22.8, 16.831651, 0.368349],
    [25, 8, 28.3, 21.170313, 0.529687],
    [50, 14, 53.8, 45.308597, 0.891403],
  ])('bore %d, key %d, across %d: bar %d', (bore, key, across, bar, tooBig) => {
    const largest = largestBar(setting(bore, key, across, 0))
    expect(Math.abs(largest - bar)).toBeLessThan(1.5e-6)
    expect(Math.abs(2 * bore - across - largest - tooBig)).toBeLessThan(1.5e-6)
  })

  it('is empty from the largest bar on', () => {
    // Worked scenario, derived.
    expect(largestBar(inch(0.01))).toBeCloseTo(0.842633, 6)
    expect(largestBar(metric(0.25))).toBeCloseTo(20.430057, 6)
    expect(largestBar(setting(6, 2, 7, 0.1))).toBeCloseTo(4.576304, 6)
    for (const at of [inch(0.01), metric(0.25), setting(6, 2, 7, 0.1), setting(1.5, 0.1875, 1.668684, 0.015)]) {
      const bar = largestBar(at)
      expect(projectionMost(at, bar) - projectionLeast(at, bar)).toBeCloseTo(0, 9)
      expect(projectionLeast(at, bar * 1.001)).toBeGreaterThan(projectionMost(at, bar * 1.001))
      expect(projectionLeast(at, bar * 0.999)).toBeLessThan(projectionMost(at, bar * 0.999))
    }
  })

  // Worked scenario, derived: where the bar is little wider than the key, the floor of the window is the front clearance. [bore, key, T, from, to]
  test.each([
    [38, 10, 41.3, 9.5, 9.8],
    [75, 20, 79.9, 19.5, 21.7],
    [110, 28, 116.4, 27.5, 31.6],
  ])('bore %d, key %d, across %d: bars %d to %d', (bore, key, across, from, to) => {
    const at = setting(bore, key, across, 0.25)
    for (const bar of [from + 0.05, (from + to) / 2, to - 0.05]) expect(projectionLeast(at, bar)).toBe(0.25)
    expect(projectionLeast(at, to + 0.05)).toBeGreaterThan(0.25)
  })

  it('75 mm bore with a 21 mm bar: the mouth asks for less than nothing', () => {
    // Worked scenario, derived; 20.6/21/21.5/22/25 by gaps over the whole travel: .25/.25/.25/.41/1.67.
    const at = setting(75, 20, 79.9, 0.25)
    expect(at.floor - 10.5 - barAxisMost(at, 21)).toBeCloseTo(-0.297, 3)
    expect(projectionLeast(at, 22)).toBeCloseTo(0.41, 2)
    expect(projectionLeast(at, 25)).toBeCloseTo(1.67, 2)
  })

  it('gives the chip its room', () => {
    // Worked scenario, derived, inches: chip of t × length wound three times looser than solid.
    expect(chipCoil(0.0005, 1)).toBeCloseTo(0.043702, 6)
    expect(chipCoil(0.001, 1)).toBeCloseTo(0.061804, 6)
    expect(chipCoil(0.001, 3)).toBeCloseTo(0.107047, 6)
    const at = setting(75, 20, 79.9, 0.25, { chipRoom: 2 })
    expect(projectionFloor(at)).toBe(2)
    expect(projectionLeast(at, 21)).toBe(2)
  })
})

describe('lanes', () => {
  const across = asmeAcross(1.5, 0.375, 0.375, 0.005)
  const winch = (offset: number) => setting(1.5, 0.1875, across, 0.015, { offset })

  it('1-1/2 in bore, 3/8 key, nose 3/16, bar 3/4', () => {
    // Worked scenario, derived.
    expect(laneOffsets(0.375, 0.1875, 0.01875)).toEqual([-0.09375, 0, 0.09375])
    expect(projectionLeast(winch(0.09375), 0.75)).toBeCloseTo(0.196106, 6)
    expect(projectionMost(winch(0.09375), 0.75)).toBeCloseTo(0.683763, 6)
    expect(projectionLeast(winch(0), 0.75)).toBeCloseTo(0.178131, 6)
    expect(projectionMost(winch(0), 0.75)).toBeCloseTo(0.714118, 6)
    expect(projectionLeast(setting(1.5, 0.375, across, 0.015), 0.75)).toBeCloseTo(0.15947, 6)
    expect(across).toBeCloseTo(1.668684, 6)
    expect(touchOffX(0.75, 0.1875)).toBeCloseTo(0.744118, 6)
    expect(touchOffX(0.75, 0.1875, 0, 0.09375)).toBeCloseTo(0.726184, 6)
    expect(noseLengthLeast(winch(0.09375), 0.25)).toBeCloseTo(0.216991, 6)
  })

  it('25 mm bore, 8 key, nose 6 in two lanes, bar 16', () => {
    // Worked scenario, derived.
    const side = setting(25, 6, 28.3, 0.25, { offset: 1 })
    expect(laneOffsets(8, 6, 0.6)).toEqual([-1, 1])
    expect(projectionLeast(side, 16)).toBeCloseTo(3.642494, 6)
    expect(projectionMost(side, 16)).toBeCloseTo(7.723397, 6)
    expect(touchOffX(12.5, 6)).toBeCloseTo(12.134661, 6)
    expect(touchOffX(12.5, 6, 0, 1)).toBeCloseTo(11.842719, 6)
    expect(15.8 - touchOffX(12.5, 6)).toBeCloseTo(3.665339, 6)
    expect(15.8 - touchOffX(12.5, 6, 0, 1)).toBeCloseTo(3.957281, 6)
    expect(noseLengthLeast(side, 6)).toBeCloseTo(4.221464, 6)
  })

  it('is the same on either side', () => {
    expect(projectionLeast(winch(-0.09375), 0.75)).toBe(projectionLeast(winch(0.09375), 0.75))
    expect(projectionMost(winch(-0.09375), 0.75)).toBe(projectionMost(winch(0.09375), 0.75))
  })

  it('there is no lane past the far wall', () => {
    const far = setting(25, 1, 28.3, 0.25, { offset: 3.5 })
    expect(projectionMost(far, 18)).toBe(-Infinity)
    expect(projectionLeast(far, 18)).toBe(Infinity)
  })

  it('spreads a nose evenly, no farther apart than its overlap lets it', () => {
    for (const nose of [2, 3, 4.5, 7.9]) {
      const lanes = laneOffsets(8, nose, 0.1 * nose)
      expect((lanes[0] ?? 0) - nose / 2).toBeCloseTo(-4, 12)
      expect((lanes.at(-1) ?? 0) + nose / 2).toBeCloseTo(4, 12)
      for (const [i, lane] of lanes.slice(1).entries())
        expect(lane - (lanes[i] ?? 0)).toBeLessThanOrEqual(0.9 * nose + 1e-9)
    }
    expect(laneOffsets(8, 8, 0.8)).toEqual([0])
  })
})

describe('nose and bit', () => {
  // Worked scenario, derived: [setting, shank, least nose].
  test.each([
    [inch(0.01), 0.25, 0.140335],
    [inch(0.01), 0.3125, 0.149703],
    [inch(0.01), 0.375, 0.161416],
    [metric(0.25), 6, 3.923026],
    [metric(0.25), 8, 4.221464],
    [metric(0.25), 10, 4.616865],
  ] as const)('shank in the bore %#', (at, shank, least) => {
    expect(noseLengthLeast(at, shank)).toBeCloseTo(least, 6)
  })

  it('a shank wider than the bore has no nose', () => {
    expect(noseLengthLeast(metric(0.25), 26)).toBe(Infinity)
  })

  it('lies between the screw’s cup and the bar’s surface', () => {
    // Worked scenario, derived: bar .625, projection .2, 1/4 square, #10 cup .102, tail .010 under, .75 mm past the cup.
    const window = bitLengthWindow(0.2, 0.625, 0.25, 0.102, 0.01, 0.75 / 25.4)
    expect(window.least).toBeCloseTo(0.593028, 6)
    expect(window.most).toBeCloseTo(0.787966, 6)
    // Bar 16, projection 4.5, 6 square, M5 cup 2.5.
    const metricWindow = bitLengthWindow(4.5, 16, 6, 2.5, 0.25)
    expect(metricWindow.least).toBeCloseTo(14.5, 6)
    expect(metricWindow.most).toBeCloseTo(19.645803, 6)
    // Pull cut: the tail of the longest and of the shortest bit behind the axis.
    expect(window.most - 0.2 - 0.3125).toBeCloseTo(0.275466, 6)
    expect(window.least - 0.2 - 0.3125).toBeCloseTo(0.080528, 6)
  })
})

describe('closeness', () => {
  it('grows the window as any clearance shrinks, and the largest bar with it', () => {
    const bar = 19
    let [least, most, largest] = [Infinity, -Infinity, 0]
    for (let clearance = 1; clearance >= 0; clearance -= 0.05) {
      const at = metric(clearance)
      expect(projectionLeast(at, bar)).toBeLessThan(least)
      expect(projectionMost(at, bar)).toBeGreaterThan(most)
      expect(largestBar(at)).toBeGreaterThan(largest)
      ;[least, most, largest] = [projectionLeast(at, bar), projectionMost(at, bar), largestBar(at)]
    }
  })

  it('moves no jump as the corner radius goes', () => {
    const sharp = projectionMost(metric(0.25), 18)
    for (const cornerRadius of [1e-2, 1e-4, 1e-6])
      expect(Math.abs(projectionMost({ ...metric(0.25), cornerRadius }, 18) - sharp)).toBeLessThan(cornerRadius)
  })

  it('comes to the rule of thumb as the slot narrows', () => {
    // Bar and projection within the bore, projection over the crown depth: exact only where there is no arc over the mouth.
    const narrow = setting(25, 1e-6, 28.3, 0)
    expect(largestBar(narrow)).toBeCloseTo(25 - 3.3, 9)
    expect(projectionLeast(narrow, 18)).toBeCloseTo(3.3, 9)
    expect(projectionMost(narrow, 18)).toBeCloseTo(7, 9)
  })

  it('knows no unit', () => {
    const k = 25.4
    const both = (offset: number): [Setting, Setting] => {
      const at = setting(1.5, 0.1875, 1.668684, 0.015, { offset, cornerRadius: 0.01 })
      return [at, setting(k * 1.5, k * 0.1875, k * 1.668684, k * 0.015, { offset: k * offset, cornerRadius: k * 0.01 })]
    }
    for (const offset of [0, 0.05, 0.09375]) {
      const [inches, millimetres] = both(offset)
      expect(projectionLeast(millimetres, k * 0.75)).toBeCloseTo(k * projectionLeast(inches, 0.75), 10)
      expect(projectionMost(millimetres, k * 0.75)).toBeCloseTo(k * projectionMost(inches, 0.75), 10)
      expect(largestBar(millimetres)).toBeCloseTo(k * largestBar(inches), 9)
    }
  })
})

describe('a bar that follows its nose into the slot', () => {
  it('is bound by the slot’s width and the wall behind, not by the mouth: bore 10, slot 8, floor at 12', () => {
    const setting: Setting = {
      radius: 5,
      floor: 12,
      noseWidth: 8,
      cornerRadius: 0,
      offset: 0,
      clearances: { back: 0.1, front: 0.1, withdrawn: 0.1 },
      chipRoom: 0,
    }
    // Touch at 3: 5 + 3 less 0.1 behind, 0.1 withdrawn and 0.1 in front; the slot itself would let 7.8 in.
    expect(largestBar(setting)).toBeCloseTo(7.7, 9)
    for (const [diameter, fits] of [
      [7.69, true],
      [7.71, false],
    ] as const)
      expect(projectionLeast(setting, diameter) <= projectionMost(setting, diameter)).toBe(fits)
  })
})

describe('before a bar in a socket', () => {
  it.each([
    [4, 6],
    [6, 6],
    [6, 10],
  ])('%d sides: the flank is as far from the axis as a sampled one', (sides, flat) => {
    const radius = 1.02 * flat
    const setting: Setting = {
      radius,
      floor: flat / Math.cos(Math.PI / sides),
      noseWidth: 0,
      cornerRadius: 0,
      offset: 0,
      clearances: { back: 0.1, front: 0.1, withdrawn: 0.1 },
      chipRoom: 0,
      opening: { half: 1, flank: { sides, flat } },
    }
    // The flat beside the corner at y = 0: its foot at half the angle between flats, from where the bore ends to the corner.
    const turn = Math.PI / sides
    const ends = [Math.sqrt(radius ** 2 - flat ** 2), flat * Math.tan(turn)] as const
    for (const axis of [0.2 * flat, 0.6 * flat, 0.9 * flat]) {
      let nearest = { away: Infinity, along: 0 }
      for (let n = 0; n <= 20_000; n++) {
        const along = ends[0] + ((ends[1] - ends[0]) * n) / 20_000
        // From the flat's middle towards the corner at angle 0.
        const at = [
          flat * Math.cos(turn) + along * Math.sin(turn),
          flat * Math.sin(turn) - along * Math.cos(turn),
        ] as const
        const away = Math.hypot(at[0] - axis, at[1])
        if (away < nearest.away) nearest = { away, along }
      }
      const flank = flankBefore(setting, axis)
      // Nearest at the bore's end is the mouth corner, not the flank.
      if (nearest.along <= ends[0] + 1e-9) expect(flank).toBeUndefined()
      else expect(flank).toBeCloseTo(nearest.away, 5)
    }
  })
})
