import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { patchDocument, readSpec, shopPath } from '../../src/spec/read.ts'
import { tell } from '../../src/spec/print.ts'
import { complaintsBy, least, specimen, specimenNames, specOf } from './specimens.ts'

const keyway = (sizes: unknown) => least({ feature: { keyway: sizes } })
const inInches = (over: Record<string, unknown> = {}) =>
  least({ units: 'in', bore: { diameter: '7/8', length: '1-3/8' }, ...over })

describe('a spec of the fewest words', () => {
  it('in mm', () => {
    const { bore, hub, feature, tooling, drafting, shop, load } = specOf(least())
    // H7 at 24: +21/0 micrometres, ISO 286-2.
    expect(bore).toEqual({
      diameter: { nominal: 24, lower: 24, upper: 24.021 },
      tolerance: 'H7',
      length: 38,
      mouth: 0.5,
    })
    expect(hub).toEqual({ material: 'mild steel' })
    expect(feature).toEqual({ kind: 'keyway', standard: 'iso-773', fit: 'normal', at: [0] })
    expect(drafting).toEqual({ convention: 'iso', paper: 'A4', projection: 'first' })
    expect(tooling).toEqual({
      bar: {
        machine: 'lathe',
        dial: { mark: 0.02, reads: 'travel' },
        points: 'back',
        stroke: 'push',
        clearance: { back: 0.25, front: 0.25, withdrawn: 0.25 },
        setting: 0.05,
        nose: {},
      },
      press: {},
    })
    expect(shop.units).toBe('mm')
    expect(shop.printer.measured).toBe(false)
    expect(load).toBeUndefined()
  })

  it('in inches', () => {
    const { bore, feature, tooling, drafting } = specOf(inInches())
    expect(bore.diameter.nominal).toBe(22.225)
    expect(bore.length).toBe(34.925)
    expect(bore.mouth).toBeCloseTo(0.508, 12)
    expect(feature).toEqual({ kind: 'keyway', standard: 'asme-b17.1', form: 'square', fit: 'class 1', at: [0] })
    expect(drafting).toEqual({ convention: 'asme', paper: 'Letter', projection: 'third' })
    expect(tooling.bar?.dial.mark).toBeCloseTo(0.0254, 12)
    expect(tooling.bar?.setting).toBeCloseTo(0.0508, 12)
    // held in mm, whatever the job is in
    expect(tooling.bar?.clearance).toEqual({ back: 0.25, front: 0.25, withdrawn: 0.25 })
  })

  it('knows what it was told and keeps it', () => {
    const document = least({ tooling: { bar: { bit: { size: 8 } } } })
    const spec = specOf(document)
    expect(spec.stated).toContain('tooling.bar.bit.size')
    expect(spec.stated).not.toContain('bore.mouth')
    expect(spec.written.document).toBe(document)
    expect(spec.tooling.press).toBeUndefined()
    expect(spec.tooling.bar?.bit).toEqual({ shape: 'square', size: 8 })
  })

  it('one kind of tooling asked for by name alone', () => {
    expect(Object.keys(specOf(least({ tooling: { press: null } })).tooling)).toEqual(['press'])
    expect(Object.keys(specOf(least({ tooling: { bar: {} } })).tooling)).toEqual(['bar'])
    expect(Object.keys(specOf(least({ tooling: {} })).tooling)).toEqual(['bar', 'press'])
  })
})

describe('the bore', () => {
  const bore = (over: Record<string, unknown>) => least({ bore: { diameter: 24, length: 38, ...over } })
  it('takes deviations in place of a class', () => {
    const { diameter, tolerance } = specOf(bore({ tolerance: ['-0,01', 0.02] })).bore
    expect([diameter.lower, diameter.upper]).toEqual([23.99, 24.02])
    expect(tolerance).toBe('+0.02/-0.01')
    expect(specOf(inInches({ bore: { diameter: 1, length: 1, tolerance: [0, 0.0005] } })).bore.tolerance).toBe(
      '+0.0005/0',
    )
  })

  it.each([
    [{ diameter: 2.9 }, 'bore.diameter', /3 mm to 400 mm/],
    [{ diameter: 401 }, 'bore.diameter', /3 mm to 400 mm/],
    [{ length: 0 }, 'bore.length', /above 0/],
    [{ length: -3 }, 'bore.length', /above 0/],
    [{ length: '1,000.5' }, 'bore.length', /a length/],
    [{ measured: 25.1 }, 'bore.measured', /slip/],
    [{ tolerance: 'h7' }, 'bore.tolerance', /^H7!$/],
    [{ tolerance: 'g6' }, 'bore.tolerance', /^G6!$/],
    [{ tolerance: 'H99' }, 'bore.tolerance', /ISO 286/],
    [{ tolerance: [0.02, 0] }, 'bore.tolerance', /lower deviation first/],
    [{ tolerance: [23.98, 24.02] }, 'bore.tolerance', /not limits/],
    [{ tolerance: [0, 'x'] }, 'bore.tolerance[1]', /sign/],
    [{ mouth: 19 }, 'bore.mouth', /shorter than half/],
    [{ blind: { beyond: 5, relief: { diameter: 24, length: 3 } } }, 'bore.blind.relief.diameter', /wider/],
    [{ diametr: 24 }, 'bore.diametr', /^diameter!$/],
  ])('%j is complained of at %s', (over, path, says) => {
    expect(complaintsBy(bore(over))).toEqual({ [path]: expect.stringMatching(says) })
  })

  it('and the hub goes together', () => {
    expect(complaintsBy(least({ hub: { outside: 24 } }))).toEqual({ 'hub.outside': expect.stringMatching(/wider/) })
    expect(complaintsBy(least({ hub: { material: 'grey irn' } }))).toEqual({ 'hub.material': 'grey iron!' })
    expect(specOf(least({ hub: { material: 'Gray Iron', hardness: 20 } })).hub.material).toBe('grey iron')
    expect(specOf(least({ hub: { material: 1018 } })).hub.material).toBe('mild steel')
  })
})

describe('the keyway', () => {
  it('takes sizes by hand, exact or as limits', () => {
    const read = specOf(
      keyway({ width: 8, height: 7, across: [27.3, 27.5], corner: [0.16, 0.25], at: ['90 deg', 270] }),
    )
    expect(read.feature).toEqual({
      kind: 'keyway',
      fit: 'normal',
      width: [8, 8],
      height: [7, 7],
      across: [27.3, 27.5],
      corner: [0.16, 0.25],
      at: [90, 270],
    })
    expect(specOf(keyway({ width: 8, depth: { side: '4 mm' } })).feature).toMatchObject({
      depth: { from: 'side', by: [4, 4] },
    })
    expect(specOf(keyway({ width: 8, across: 20 })).feature).toMatchObject({ across: [20, 20] }) // a rule's finding, no complaint
  })

  it('turns angles to one round', () => {
    expect(specOf(keyway({ at: [-90, 360] })).feature.at).toEqual([270, 0])
    expect(specOf(keyway({ at: 45 })).feature.at).toEqual([45])
  })

  it('takes the key of a width from the standard', () => {
    expect(specOf(keyway({ standard: 'iso-773', width: 6 })).feature).toMatchObject({ width: [6, 6] })
    const inch = inInches({
      feature: { keyway: { standard: 'asme-b17.1', width: '1/4', form: 'rectangular', fit: 2 } },
    })
    expect(specOf(inch).feature).toMatchObject({ form: 'rectangular', fit: 'class 2' })
    // square up to 6-1/2 in, rectangular above: ASME B17.1
    const form = (diameter: number) => {
      const { feature } = specOf(inInches({ bore: { diameter, length: 8 } }))
      return feature.kind === 'keyway' ? feature.form : undefined
    }
    expect([form(6.5), form(6.51)]).toEqual(['square', 'rectangular'])
  })

  const k = 'feature.keyway'
  it.each([
    [{ width: 8 }, `${k}.across`, /one of the two/],
    [{ across: 27 }, `${k}.width`, /a width/],
    [{ width: 8, across: 27, depth: { crown: 3 } }, `${k}.depth`, /one of the two/],
    [{ width: 8, depth: { crown: 3, side: 4 } }, `${k}.depth`, /one of crown and side/],
    [{ width: 8, depth: {} }, `${k}.depth`, /one of crown and side/],
    [{ width: [8.1, 8], across: 27 }, `${k}.width`, /least first/],
    [{ width: 24, across: 27 }, `${k}.width`, /smaller than the bore/],
    [{ width: 8, across: 27, fit: 'normal' }, `${k}.fit`, /by hand/],
    [{ standard: 'iso-773', across: 27 }, `${k}.across`, /iso-773 gives it/],
    [{ standard: 'iso-773', width: 7 }, `${k}.width`, /2, 3, 4, 5, 6, 8, 10/],
    [{ standard: 'iso-773', width: [8, 8.1] }, `${k}.width`, /one width/],
    [{ fit: 'class 1' }, `${k}.fit`, /normal, tight or sliding, with iso-773/],
    [{ fit: 'P9' }, `${k}.fit`, /^tight!$/],
    [{ fit: 'tigt' }, `${k}.fit`, /^tight!$/],
    [{ standard: 'iso-737' }, `${k}.standard`, /^iso-773!$/],
    [{ form: 'square' }, `${k}.form`, /asme-b17.1/],
    [{ standard: 'asme-b17.1', fit: 'normal' }, `${k}.fit`, /class 1 or class 2, with/],
    [{ at: [0, 90, 360] }, `${k}.at`, /differ/],
    [{ at: [] }, `${k}.at`, /one to 36/],
    [{ at: Array.from({ length: 37 }, (_, n) => n) }, `${k}.at`, /one to 36/],
    [{ at: [0, 'north'] }, `${k}.at[1]`, /angle/],
  ])('%j is complained of at %s', (sizes, path, says) => {
    expect(complaintsBy(keyway(sizes))).toEqual({ [path]: expect.stringMatching(says) })
  })

  it('says where a standard ends, and the ways out', () => {
    const small = least({ bore: { diameter: 6, length: 10 } })
    expect(complaintsBy(small)).toEqual({
      [`${k}.standard`]: expect.stringMatching(/over 6 mm, up to 500 mm.*give width.*by hand/),
    })
    const inch = inInches({ bore: { diameter: '1/4', length: '1/2' } })
    expect(complaintsBy(inch)).toEqual({ [`${k}.standard`]: expect.stringMatching(/over 5\/16 in, up to 30 in/) })
    const flat = inInches({ bore: { diameter: '3/8', length: '1/2' }, feature: { keyway: { form: 'rectangular' } } })
    expect(complaintsBy(flat)).toEqual({ [`${k}.form`]: expect.stringMatching(/no rectangular key 3\/32 in wide/) })
  })

  it('is one feature, and no more', () => {
    const spline = { spline: { standard: 'iso-14', size: '6x23x26' } }
    expect(complaintsBy(least({ feature: {} }))).toEqual({
      feature: 'exactly one feature: keyway, spline, socket, slit or groove',
    })
    expect(Object.keys(complaintsBy(least({ feature: { keyway: {}, ...spline } })))).toEqual(['feature'])
  })
})

describe('tooling and load', () => {
  it('reads every quantity', () => {
    const spec = specOf(specimen('winch-drum-gear.yaml'))
    expect(spec.tooling.press?.broach?.pilot).toBeCloseTo(0.36 * 25.4, 12)
    expect(spec.tooling.press?.force).toBeCloseTo(4000 * 4.4482216152605, 8)
    const lever = { pull: '75 lbf', length: '16 in', pinion: '.75 in' }
    expect(specOf(least({ tooling: { press: { lever } } })).tooling.press?.lever?.efficiency).toBe(0.8)
    expect(specOf(least({ load: { torque: '90 N m' } })).load).toEqual({ torque: 90_000, service: 1 })
    expect(specOf(least({ tooling: { bar: { give: 4000, screw: 'M6x1' } } })).tooling.bar).toMatchObject({
      give: 4000,
      screw: 'M6',
    })
  })

  it('complains of what does not agree', () => {
    const lever = { pull: 300, length: 400, pinion: 20, efficiency: 80 }
    expect(complaintsBy(least({ tooling: { bar: { screw: 'M66' }, press: { force: '15 kN', lever } } }))).toEqual({
      'tooling.bar.screw': 'M6!',
      'tooling.press.lever': 'force or lever, one of the two',
      'tooling.press.lever.efficiency': 'a number from 0.1 to 1',
    })
    const broach = { ...(specimen('winch-drum-gear.yaml')['tooling'] as { press: { broach: object } }).press.broach }
    expect(
      complaintsBy(inInches({ tooling: { press: { broach: { ...broach, lastTooth: 0.3, overall: 4 } } } })),
    ).toEqual({
      'tooling.press.broach.lastTooth': 'a last tooth higher than the first',
      'tooling.press.broach.overall': 'a length over all that is longer than the toothed length',
    })
    expect(
      complaintsBy(inInches({ tooling: { press: { broach: { ...broach, teeth: 21, finishingTeeth: 21 } } } })),
    ).toEqual({ 'tooling.press.broach.finishingTeeth': 'fewer than the 21 teeth: those before them do the cutting' })
    expect(
      complaintsBy(inInches({ tooling: { press: { broach: { ...broach, teeth: 21, finishingTeeth: 20 } } } })),
    ).toEqual({})
    expect(complaintsBy(least({ load: { torque: '1,500 N m' } }))).toEqual({
      'load.torque': expect.stringMatching(/torque/),
    })
  })
})

describe('all complaints at once', () => {
  const wrong = {
    name: 'a b',
    units: 'mm',
    bore: { diameter: 24, length: '8 furlongs', mouth: null },
    keyway: {},
    hub: { outside: 20, materail: 'brass' },
    feature: { keyway: { fit: 'P9', at: [0, 0] } },
    tooling: { bar: { nose: { cornerradius: 0.2 }, machine: 'late' } },
  }
  it('every fault of a document, shape and sense alike', () => {
    expect(complaintsBy(wrong)).toEqual({
      name: "a name of letters, digits, '-' and '_', at most 64",
      'bore.length': expect.stringMatching(/a length above 0/),
      'bore.mouth': expect.stringMatching(/a length/),
      keyway: 'feature.keyway!',
      'hub.outside': expect.stringMatching(/wider/),
      'hub.materail': 'material!',
      'feature.keyway.fit': 'tight!',
      'feature.keyway.at': expect.stringMatching(/differ/),
      'tooling.bar.nose.cornerradius': 'cornerRadius!',
      'tooling.bar.machine': 'lathe!',
    })
  })
  it('as plain lines', () => {
    const read = readSpec(wrong)
    const lines = 'complaints' in read ? read.complaints.map(tell) : []
    expect(lines).toContain(
      'bore.length: read "8 furlongs"; accepted: a length above 0: 24, "24 mm", "12,5 mm", "15/16 in", "1-3/8"',
    )
    expect(lines).toContain(
      'hub.materail: read a key that is not known; accepted: outside, material, hardness. Was material meant?',
    )
  })

  const leaves = (document: unknown, place: readonly string[] = []): readonly (readonly string[])[] =>
    typeof document === 'object' && document !== null && !Array.isArray(document)
      ? Object.entries(document).flatMap(([key, value]) => [[...place, key], ...leaves(value, [...place, key])])
      : []
  const places = specimenNames.flatMap((name) => leaves(specimen(name)).map((place) => [name, place] as const))
  const replaced = (
    document: unknown,
    [first, ...rest]: readonly string[],
    change: (parent: Record<string, unknown>, key: string) => void,
  ): unknown => {
    const copy = { ...(document as Record<string, unknown>) }
    if (first === undefined) return copy
    if (rest.length === 0) change(copy, first)
    else copy[first] = replaced(copy[first], rest, change)
    return copy
  }

  it('a misspelt key anywhere is told, with the key that was meant', () => {
    const ways = [
      (key: string) => `${key}${key.at(-1)}`,
      (key: string) => (key.length > 3 ? key.slice(0, -1) : `${key}s`),
      (key: string) => (key.length > 3 ? `${key.slice(0, 1)}${key[2]}${key[1]}${key.slice(3)}` : key.toUpperCase()),
    ]
    for (const [name, place] of places) {
      for (const way of ways) {
        const misspelt = way(place.at(-1) ?? '')
        if (misspelt === place.at(-1)) continue
        const document = replaced(specimen(name), place, (parent, key) => {
          parent[misspelt] = parent[key]
          delete parent[key]
        })
        expect(complaintsBy(document)[[...place.slice(0, -1), misspelt].join('.')]).toBe(`${place.at(-1)}!`)
      }
    }
  })

  it('junk anywhere never throws, and every complaint says where and what', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...places),
        fc.anything({ withBigInt: true, withNullPrototype: true }),
        ([name, place], junk) => {
          const read = readSpec(replaced(specimen(name), place, (parent, key) => (parent[key] = junk)))
          for (const each of 'complaints' in read ? read.complaints : []) {
            expect(each.path).not.toBe('')
            expect(each.accepted).not.toBe('')
            expect(tell(each)).not.toContain('\n')
          }
        },
      ),
      { numRuns: 1000 },
    )
  })

  it('junk alone is answered', () => {
    fc.assert(
      fc.property(fc.anything({ withBigInt: true, withNullPrototype: true }), fc.anything(), (junk, shop) => {
        const read = readSpec(junk, shop)
        expect('complaints' in read && read.complaints.every((each) => each.accepted !== '')).toBe(true)
        readSpec(least(), shop)
      }),
      { numRuns: 500 },
    )
    const round: Record<string, unknown> = least()
    round['hub'] = round
    expect(complaintsBy(round)).toHaveProperty(['hub.bore'])
  })
})

describe('one job, many spellings', () => {
  const size = fc.integer({ min: 1, max: 300_000 }).map((n) => n / 1000)
  const spelled = (
    write: (mm: number) => unknown,
    units: 'mm' | 'in',
    [a, b, c, d]: readonly [number, number, number, number],
  ) => ({
    name: 'spelled',
    units,
    bore: {
      diameter: write(30 + a),
      length: write(40 + b),
      mouth: write(0.5),
      measured: write(30.01 + a),
      tolerance: [write(-0.01), write(0.02)],
    },
    hub: { outside: write(400) },
    feature: {
      keyway: {
        width: [write(7.98), write(8.02)],
        height: write(7),
        depth: { crown: write(0.5 + c / 20) },
        corner: write(0.2),
      },
    },
    load: { torque: '90 N m', service: 1.5 },
    tooling: {
      bar: {
        dial: { mark: write(0.02) },
        clearance: { back: write(0.2) },
        setting: write(0.05),
        nose: { width: write(d) },
        diameter: write(18),
        bit: { size: write(8) },
      },
    },
  })
  it('mm and inches give the same spec within a millionth of a micrometre', () => {
    const ways: readonly [(mm: number) => unknown, 'mm' | 'in'][] = [
      [(mm) => mm / 25.4, 'in'],
      [(mm) => (mm / 25.4).toFixed(14), 'in'],
      [(mm) => `${mm} mm`, 'in'],
      [(mm) => `${(mm / 25.4).toFixed(14)} in`, 'mm'],
      [(mm) => `${String(mm).replace('.', ',')}mm`, 'mm'],
    ]
    fc.assert(
      fc.property(fc.tuple(size, size, size, size), (sizes) => {
        const { shop: _s, drafting: _d, written: _w, units: _u, ...plain } = specOf(spelled((mm) => mm, 'mm', sizes))
        for (const [write, units] of ways) {
          const other = specOf(spelled(write, units, sizes))
          const near = (one: unknown, two: unknown): void => {
            if (typeof one === 'number') expect(Math.abs(one - (two as number))).toBeLessThan(1e-9)
            else if (typeof one === 'object' && one !== null)
              for (const key of Object.keys(one)) near(one[key as never], (two as Record<string, never>)[key as never])
          }
          near(plain, other)
          expect(other.stated).toEqual(plain.stated)
        }
      }),
      { numRuns: 100 },
    )
  })
})

describe('what a remedy changes', () => {
  const document = {
    name: 'a',
    feature: { keyway: { at: [0, 90] } },
    tooling: { bar: { diameter: 8, projection: 1.9 } },
  }
  it('sets, makes and takes out by path, in a copy', () => {
    const before = JSON.stringify(document)
    expect(
      patchDocument(document, {
        'tooling.bar.diameter': null,
        'tooling.bar.bit.size': 4,
        'feature.keyway.at[1]': 180,
        'hub.none': null,
      }),
    ).toEqual({
      name: 'a',
      feature: { keyway: { at: [0, 180] } },
      tooling: { bar: { projection: 1.9, bit: { size: 4 } } },
    })
    expect(JSON.stringify(document)).toBe(before)
  })
  it('both kinds of tooling stay asked for', () => {
    expect(patchDocument({ name: 'a' }, { 'tooling.bar.diameter': 6 })).toEqual({
      name: 'a',
      tooling: { bar: { diameter: 6 }, press: {} },
    })
    expect(patchDocument({ name: 'a', tooling: null }, { 'tooling.press.force': '9 kN' })).toEqual({
      name: 'a',
      tooling: { bar: {}, press: { force: '9 kN' } },
    })
    expect(patchDocument({ name: 'a' }, { name: 'b' })).toEqual({ name: 'b' })
  })
  it('reaches nothing but the document', () => {
    expect(patchDocument({ a: 1 }, { '__proto__.polluted': 1, 'a.constructor.b': 2 })).toEqual({ a: 1 })
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined()
  })
})

describe('the shop file', () => {
  it('is named by the spec and handed over with it', () => {
    expect(shopPath(least({ shop: 'shop.yaml' }))).toBe('shop.yaml')
    expect(shopPath(least())).toBeUndefined()
    expect(shopPath(null)).toBeUndefined()
    expect(complaintsBy(least({ shop: 'shop.yaml' }))).toEqual({ shop: expect.stringMatching(/handed over/) })
    expect(specOf(least({ shop: 'shop.yaml' }), { bars: [12, 10] }).shop.bars).toEqual([10, 12])
    expect(specOf(least({ shop: { bars: [12, 10] } })).shop.bars).toEqual([10, 12])
  })
})
