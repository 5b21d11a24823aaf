/** The tooling leaf beside the drawings of the same bar and bit. */
import { describe, expect, it } from 'vitest'
import { bitChecks, bitNotes } from '../../generators/tool-bit-notes.ts'
import { barNotes } from '../../generators/cutter-bar-notes.ts'
import { flow } from '../../src/card/flow.ts'
import type { Notes } from '../../src/drawing/view.ts'
import { turnedParts } from '../../src/dimensions/cutter-bar.ts'
import { specimen } from '../spec/specimens.ts'
import { laidOver, machineSides, worked } from './cards.ts'
import { bare, saidBy } from './said.ts'

const metric = { units: 'mm', hub: { outside: 95, material: 'mild steel' } }
const jobs = {
  // Hexagon 19 with a V of 120°, on a round blank; its bar is the stock's own diameter.
  hexagon: {
    ...metric,
    name: 'hexagon',
    bore: { diameter: 19.4, tolerance: [0, 0.05], length: 20 },
    feature: { socket: { sides: 6, across: [19, 19.1], tip: 0.2 } },
    tooling: { bar: { machine: 'mill', behind: 40 } },
  },
  groove: {
    ...metric,
    name: 'groove',
    bore: { diameter: 24, length: 30 },
    hub: { outside: 40, material: 'bronze' },
    feature: { groove: { radius: 1, depth: [0.8, 1] } },
    tooling: { bar: { behind: 30 } },
  },
  // 14 JS9 from a blank of 14: its width has 0.0115 to lose, and each regrind takes 0.0133.
  wide: {
    ...metric,
    name: 'wide',
    bore: { diameter: 50, tolerance: 'H7', length: 55, mouth: 1 },
    feature: { keyway: { standard: 'iso-773', fit: 'normal' } },
    tooling: { bar: { machine: 'lathe', behind: 60 } },
  },
  inch: {
    name: 'inch',
    units: 'in',
    bore: { diameter: '1-1/4', tolerance: [0, 0.001], length: '1-3/4' },
    hub: { outside: 3, material: 'mild steel' },
    feature: { keyway: { standard: 'asme-b17.1' } },
    tooling: { bar: { machine: 'mill', behind: 2 } },
  },
  spline: {
    name: 'spline',
    units: 'in',
    bore: { diameter: 1.275, tolerance: [-0.001, 0], length: '1-1/2' },
    hub: { outside: 3, material: 'mild steel' },
    feature: { spline: { standard: 'sae-j499', count: 6, size: '1-1/2 in', fit: 'B' } },
    tooling: { bar: { behind: 3 } },
  },
}

type Name = keyof typeof jobs
const cards = new Map<Name, ReturnType<typeof worked>>()
const made = (name: Name) => {
  const one = cards.get(name) ?? worked(jobs[name])
  cards.set(name, one)
  const { bar, bit } = one.design
  if (!bar || !bit) throw new Error('no bar')
  const tooling = one.card.leaves.filter(({ leaf }) => leaf === 'tooling')
  const [barSide = '', bitSide = ''] = saidBy({ ...one.card, leaves: tooling }).map((side) => side.join(' '))
  const words = (notes: readonly Notes[]): string =>
    notes
      .flatMap(({ lines }) => lines.flat())
      .map((part) => (typeof part === 'string' ? part : ''))
      .join(' ')
  return {
    ...one,
    bar,
    bit,
    barSide,
    bitSide,
    barSheet: words(barNotes(one.design, bar)),
    bitSheet: words(bitNotes(one.design, bit)),
    checks: bitChecks(one.design, bit).map(({ what }) => what),
  }
}
const inOrder = (text: string, words: readonly string[]): void => {
  const at = words.map((each) => bare(text).indexOf(bare(each)))
  expect(at, words.join(', ')).toEqual(at.toSorted((a, b) => a - b))
  expect(at.every((index) => index >= 0)).toBe(true)
}

describe('the bit, on card and sheet', () => {
  it('a V is ground and reground on its flanks, its angle seen along the cut', () => {
    const { bitSide, bitSheet, checks } = made('hexagon')
    for (const text of [bitSide, bitSheet]) expect(bare(text)).toContain('Regrindbothflanksalike,nottheface')
    expect(bare(bitSide)).toContain(bare('2 times. Stone the tip’s radius again.'))
    expect(bare(bitSide)).not.toMatch(/Regrindtheend|setback|widthattheheel/)
    // 2 · atan(tan 60° · cos 10°) = 119.24°.
    expect(bare(bitSide)).toContain(bare('120° seen along the cut, alike to the middle; 119.2° on the face'))
    // From 2 · 1.1237 · 0.016033 = 0.036 to 2 · 1.0391 · 0.037522 = 0.078, inwards to what a caliper reads.
    expect(bare(bitSide)).toContain(bare('0.04 to 0.07 than the widest as miked'))
    expect(checks).toContain('Neck narrower by')
    expect(checks).not.toContain('End set back, underneath')
  })

  it('a round nose is stoned on its face alone', () => {
    const { bitSide, bitSheet } = made('groove')
    for (const text of [bitSide, bitSheet])
      expect(bare(text)).toMatch(new RegExp(bare('[Ss]tone the face alone. Under its least width, grind a new nose.')))
    expect(bitSide).not.toContain('Regrind')
  })

  it('where no width is left, no regrind is spoken of, nor by the reason of its length', () => {
    const { bitSide, bitSheet } = made('wide')
    expect(bitSheet).toContain('No regrind left in the width: once blunt, a new bit.')
    expect(bare(bitSide)).toContain(bare('No regrind is left in the width: once blunt, a new bit'))
    expect(bitSide).not.toMatch(/two regrinds|off the width|Regrind/)
  })

  it('where there is some, both say how often: .0381 to lose over .0136 a time', () => {
    // 6.3881 - 6.35 mm; 2 · 0.254 · (tan 1° + tan 10° · tan 3°) = 0.01356 mm.
    const { bitSide, bitSheet } = made('inch')
    expect(bare(bitSide)).toContain(bare('Regrind the end, not the face: 0.010 at a time, 2 times; each takes 0.0005'))
    expect(bitSheet).toContain('Regrind the end, not the face: ')
    expect(bitSheet).toContain(': 2 regrinds in it.')
  })

  it('a round blank gets its flat before anything else, and the height of its edge', () => {
    const { bitSide, bitSheet, checks } = made('hexagon')
    inOrder(bitSide, [
      'flat for the screw, 0.8 deep; end square',
      'sides alike',
      'both flanks alike, to meet',
      'cut to length last',
    ])
    inOrder(bitSheet, [
      'On the whole blank: flat for the screw',
      'Both sides alike',
      'Both flanks alike, to meet',
      'Cut to length last',
    ])
    expect(checks).toContain('Edge over the back, miked')
    expect(bitSide).toContain('edge over the back')
    expect(made('wide').bitSide).not.toContain('edge over the back')
    expect(bare(made('wide').bitSide)).toContain(bare('end set back, underneath'))
  })

  it('a nose that the slot leaves no limits is given those of the sheet: .374 to .375', () => {
    expect(bare(made('spline').bitSide)).toContain(bare('0.374 to 0.375, after stoning'))
  })
})

describe('the bar, on card and sheet', () => {
  it('turns what stands under the stock, and leaves what is as large', () => {
    const size = (nominal: number) => ({ nominal, lower: nominal, upper: nominal })
    const parts = (body: number, shank: number) =>
      turnedParts({ stock: { diameter: 20, length: 100, material: '' }, diameter: size(body), shank: size(shank) })
    expect([parts(18, 20), parts(20, 18), parts(16, 18), parts(18, 18), parts(20, 20)]).toEqual([
      'body',
      'shank',
      'both',
      'all',
      'neither',
    ])
    for (const name of ['inch', 'spline'] as const) {
      const { bar, barSide, barSheet } = made(name)
      expect(bar.shank.nominal).toBeCloseTo(bar.stock.diameter, 9)
      expect(bar.diameter.nominal).toBeLessThan(bar.stock.diameter)
      expect(bare(barSide)).toContain(bare('turn the body, not the shank'))
      expect(barSheet).toContain('Turn the body, not the shank.')
    }
  })

  it('is hardened last or never, if its steel hardens', () => {
    for (const name of ['hexagon', 'inch'] as const) {
      const { bar, barSide, barSheet } = made(name)
      expect(bar.stock.material).toMatch(/^drill rod/)
      inOrder(barSide, [
        'a punch dot',
        'harden now or never, 40 to 45 HRC: quench in the open',
        'then only polish by hand',
      ])
      inOrder(barSheet, ['Dot the end', 'Harden now or never, 40 to 45 HRC; then only polish by hand'])
    }
  })

  it('is held, in a chuck or not: a lathe’s chuck holds the hub', () => {
    const { barSheet } = made('hexagon')
    expect(barSheet).toContain('Hold it with')
    expect(barSheet).not.toContain('Chuck it')
  })

  it('asks for stock, blanks and screws by their fractions in inch jobs', () => {
    const { bar, bit, barSide } = made('inch')
    // 1.25 in, 7.9375 mm = 5/16 in: the round, and the blank and its screw.
    expect(bar.stock.diameter).toBeCloseTo(31.75, 9)
    expect(bit.size).toBeCloseTo(7.9375, 9)
    expect(bare(barSide)).toContain(bare('saw round Ø1-1/4 ×'))
    expect(bare(barSide)).toContain(bare('high-speed steel 5/16 square ×'))
    expect(bare(barSide)).not.toMatch(/0\.313square|screw×0\.313/)
    expect(bare(barSide)).toMatch(/setscrew\S+×\d+\/\d+,cuppoint/)
    expect(bare(made('hexagon').barSide)).toContain(bare('saw round Ø16 × 90'))
  })
})

describe('each side of the tooling leaf', () => {
  it('is one side of paper', () => {
    for (const name of ['hexagon', 'groove', 'wide', 'inch', 'spline'] as const) {
      const sides = flow(made(name).card).filter(({ leaf }) => leaf.leaf === 'tooling')
      expect(sides, name).toHaveLength(2)
    }
  })
})

describe('the machine, at set-up', () => {
  const tick = (document: Record<string, unknown>): string => {
    const { card } = worked(document)
    return saidBy({ ...card, leaves: [{ leaf: 'machine', title: '', sides: machineSides(card).slice(0, 1) }] })
      .flat()
      .join(' ')
  }
  it('has a centre height on the lathe, and the bore’s centre line on the mill', () => {
    expect(tick(jobs.wide)).toContain('Bit on centre height; nose square to the bore')
    expect(tick(jobs.inch)).toContain('Bit on the bore’s centre line; nose square to the bore')
    expect(tick(jobs.hexagon)).toContain('Bit on the bore’s centre line, the V’s middle square to the bore')
    const clock = specimen('clock-barrel.yaml')
    expect(tick(laidOver(clock, 'tooling.bar.machine', 'lathe'))).toContain('Nose on centre height')
    expect(tick(laidOver(clock, 'tooling.bar.machine', 'mill'))).toContain('Nose on the bore’s centre line')
  })
})
