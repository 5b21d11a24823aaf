import { describe, expect, it } from 'vitest'
import { complaintsBy, least, specOf } from './specimens.ts'

const bored = (diameter: number | string, feature: unknown, rest: object = {}) =>
  least({ bore: { diameter, length: 30 }, feature, ...rest })

const around = (count: number, first = 0): number[] =>
  Array.from({ length: count }, (_, n) => first + (360 * n) / count)

describe('splines', () => {
  const s = 'feature.spline'
  it('by iso-14: the size says all', () => {
    const wanted = { kind: 'spline', standard: 'iso-14', size: '6x23x26', count: 6, at: around(6) }
    expect(specOf(bored(23, { spline: { size: '6x23x26' } })).feature).toEqual(wanted)
    expect(specOf(bored(23, { spline: { standard: 'iso-14', size: '6 × 23 × 26', at: 10 } })).feature).toEqual({
      ...wanted,
      at: around(6, 10),
    })
    expect(specOf(bored(23, { spline: { size: '6x23x26', treated: true } })).feature).toMatchObject({ treated: true })
  })

  it('by sae-j499: count, fit and major diameter', () => {
    const sae = { standard: 'sae-j499', count: 6, size: '1-1/4 in', fit: 'B' }
    const { feature } = specOf(bored('1.0625 in', { spline: sae }))
    expect(feature).toMatchObject({ kind: 'spline', standard: 'sae-j499', count: 6, fit: 'B' })
    expect(feature.kind === 'spline' && feature.major?.[0]).toBeCloseTo(31.75, 9)
    const inch = least({ units: 'in', bore: { diameter: 0.85, length: 1 }, feature: { spline: { ...sae, size: 1 } } })
    expect(specOf(inch).feature).toMatchObject({ fit: 'B' })
  })

  it('by hand: count, width and major', () => {
    const feature = { spline: { count: 4, width: [5.9, 6], major: 28, corner: 0.3 } }
    expect(specOf(bored(23, feature)).feature).toEqual({
      kind: 'spline',
      count: 4,
      width: [5.9, 6],
      major: [28, 28],
      corner: [0.3, 0.3],
      at: around(4),
    })
  })

  it.each([
    [23, { size: '6x24x26' }, `${s}.size`, /6x23x26/],
    [23, { size: '6x26x30' }, `${s}.size`, /minor diameter is the bore, 23 mm: 6x23x26, 6x23x28.*26 mm/],
    [24, { size: '6x23x26' }, `${s}.size`, /24 mm: iso-14 has none/],
    [23, { standard: 'iso-14' }, `${s}.size`, /6x23x26, 6x23x28/],
    [24, { standard: 'iso-14' }, `${s}.size`, /light series.*by hand/],
    [23, { size: '6x23x26', count: 6 }, `${s}.count`, /nothing here: iso-14 has it in its size/],
    [23, { size: '6x23x26', fit: 'B' }, `${s}.fit`, /belongs to sae-j499/],
    [23, { standard: 'sae-j499', size: 1 }, `${s}.count`, /4, 6, 10 or 16/],
    [23, { standard: 'sae-j499', size: 1, count: 5, fit: 'A' }, `${s}.count`, /4, 6, 10 or 16/],
    [23, { standard: 'sae-j499', size: '1 in', count: 6 }, `${s}.fit`, /A .permanent/],
    [23, { standard: 'sae-j499', size: '1 in', count: 4, fit: 'C' }, `${s}.fit`, /no fit C for 4/],
    [
      23,
      { standard: 'sae-j499', size: '9 in', count: 6, fit: 'A' },
      `${s}.size`,
      /it has major diameters 3\/4 to 3 in/,
    ],
    [23, { standard: 'sae-j499', size: '1 in', count: 6, fit: 'C' }, `${s}.size`, /whose bore is 23 mm: 28.75 mm/],
    [23, { standard: 'sae-j499', size: '1 in', count: 6, fit: 'A', treated: true }, `${s}.treated`, /iso-14/],
    [23, { count: 6, width: 6 }, `${s}.major`, /count, width and major by hand/],
    [23, { count: 6, width: 23, major: 26 }, `${s}.width`, /smaller than the bore/],
    [23, { count: 6, width: 6, major: 23 }, `${s}.major`, /larger than the bore, 23 mm/],
    [23, { count: 6, width: 6, major: 60 }, `${s}.major`, /no more than two bores/],
    [23, { count: 6, width: 6, major: 26, fit: 'A' }, `${s}.fit`, /by hand/],
    [23, { count: 1, width: 6, major: 26 }, `${s}.count`, /2 to 36/],
    [23, { size: '6x23x26', at: 'north' }, `${s}.at`, /angle/],
    [23, { standard: 'iso-41', size: '6x23x26' }, `${s}.standard`, /^iso-14!$/],
  ])('in a bore of %d %j is complained of at %s', (bore, spline, path, says) => {
    expect(complaintsBy(bored(bore, { spline }))).toMatchObject({ [path]: expect.stringMatching(says) })
  })
})

describe('sockets, slits and grooves', () => {
  it('are read', () => {
    expect(specOf(bored(12.5, { socket: { sides: 4, across: [12, 12.1], tip: 0.2, at: 45 } })).feature).toEqual({
      kind: 'socket',
      sides: 4,
      across: [12, 12.1],
      tip: 0.2,
      at: around(4, 45),
    })
    expect(specOf(bored(12.5, { socket: { sides: 6, across: 12 } })).feature).toMatchObject({ tip: 0, at: around(6) })
    expect(specOf(bored(12, { slit: { width: 1, count: 3, outside: 16 } })).feature).toEqual({
      kind: 'slit',
      width: [1, 1],
      outside: 16,
      at: around(3),
    })
    expect(specOf(bored(12, { slit: { width: 1 } }, { hub: { outside: 20 } })).feature).toMatchObject({
      outside: 20,
      at: [0],
    })
    expect(specOf(bored(30, { groove: { radius: 1.5, depth: [1, 1.2], at: [0, 120] } })).feature).toEqual({
      kind: 'groove',
      radius: 1.5,
      depth: [1, 1.2],
      at: [0, 120],
    })
  })

  it('have the bar alone, asked for or not; a press by name is complained of', () => {
    const each = [
      [12.5, { socket: { sides: 4, across: 12 } }],
      [12, { slit: { width: 1, outside: 16 } }],
      [30, { groove: { radius: 1.5, depth: 1 } }],
    ] as const
    for (const [bore, feature] of each) {
      expect(Object.keys(specOf(bored(bore, feature)).tooling)).toEqual(['bar'])
      expect(complaintsBy(bored(bore, feature, { tooling: { bar: {}, press: {} } }))).toEqual({
        'tooling.press': expect.stringMatching(/^nothing here: .* is cut with the bar$/),
      })
    }
    expect(Object.keys(specOf(bored(23, { spline: { size: '6x23x26' } })).tooling)).toEqual(['bar', 'press'])
  })

  it.each([
    [12.5, { socket: { across: 12 } }, 'feature.socket.sides', /3 to 12/],
    [12.5, { socket: { sides: 4 } }, 'feature.socket.across', /length/],
    [12.5, { socket: { sides: 4, across: 30 } }, 'feature.socket.across', /the bore goes with/],
    [12.5, { socket: { sides: 4, across: 12, tip: 2 } }, 'feature.socket.tip', /an eighth of the bore/],
    [12, { slit: { width: 1 } }, 'feature.slit.outside', /here or as hub.outside/],
    [12, { slit: { width: 1, outside: 11 } }, 'feature.slit.outside', /wider than the bore, 12 mm/],
    [12, { slit: { width: 7, outside: 16 } }, 'feature.slit.width', /narrower than half the bore/],
    [20, { groove: { radius: 6, depth: 1 } }, 'feature.groove.radius', /a quarter of the bore/],
    [20, { groove: { radius: 1, depth: 11 } }, 'feature.groove.depth', /half the bore/],
    [20, { groove: { radius: 1, depth: [2, 1] } }, 'feature.groove.depth', /least first/],
    [20, { groove: { radius: 1, depth: 1, at: [0, 360] } }, 'feature.groove.at', /differ/],
  ])('in a bore of %d %j is complained of at %s', (bore, feature, path, says) => {
    expect(complaintsBy(bored(bore, feature))).toMatchObject({ [path]: expect.stringMatching(says) })
  })

  it('have noses that the feature shapes', () => {
    const bar = (nose: object) => ({ tooling: { bar: { nose } } })
    expect(complaintsBy(bored(12.5, { socket: { sides: 4, across: 12 } }, bar({ cornerRadius: 0.1 })))).toEqual({
      'tooling.bar.nose.cornerRadius': 'nothing here: the V’s tip is feature.socket.tip',
    })
    expect(complaintsBy(bored(20, { groove: { radius: 1, depth: 1 } }, bar({ width: 2, cornerRadius: 1 })))).toEqual({
      'tooling.bar.nose.width': expect.stringContaining('feature.groove.radius'),
      'tooling.bar.nose.cornerRadius': expect.stringContaining('feature.groove.radius'),
    })
    const onePiece = { tooling: { bar: { form: 'one piece' } } }
    expect(complaintsBy(bored(20, { groove: { radius: 1, depth: 1 } }, onePiece))).toEqual({
      'tooling.bar.form': expect.stringMatching(/no V and no round/),
    })
  })

  it('outside a hub is no outside of a slit', () => {
    const slit = { slit: { width: 1, outside: 16 } }
    expect(complaintsBy(bored(12, slit, { hub: { outside: 15 } }))).toEqual({
      'feature.slit.outside': expect.stringMatching(/no wider than the hub’s, 15 mm/),
    })
  })
})
