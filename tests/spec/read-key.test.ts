import { describe, expect, it } from 'vitest'
import { complaintsBy, least, specOf } from './specimens.ts'

const keyway = (sizes: unknown, over: Record<string, unknown> = {}) => least({ feature: { keyway: sizes }, ...over })
const bar = (sizes: unknown, shop?: unknown) => least({ tooling: { bar: sizes }, ...(shop !== undefined && { shop }) })
const byHand = { width: 8, height: 7, across: 27.3 }
const broach = {
  toothWidth: 8,
  bodyWidth: 8,
  firstTooth: 11.5,
  lastTooth: 13.5,
  pilot: 11.3,
  toothedLength: 120,
  teeth: 3,
  overall: 180,
  pilotLength: 25,
}
const press = (sizes: Record<string, unknown>, rest: Record<string, unknown> = {}) =>
  least({ tooling: { press: { broach: { ...broach, ...sizes }, ...rest } } })

describe('the key and the shaft', () => {
  it('are what they are told to be', () => {
    const { feature, shaft } = specOf(
      keyway(
        { key: { material: 'C45+C', length: 32, ends: 'round', chamfer: [0.25, 0.4], height: 6.9 } },
        { shaft: { yield: '62 ksi', break: 0.3, diameter: [23.97, 24], across: 20.1 } },
      ),
    )
    expect(feature).toMatchObject({
      key: {
        metal: { name: 'key steel', yield: 430 },
        length: 32,
        ends: 'round',
        chamfer: [0.25, 0.4],
        height: [6.9, 6.9],
      },
    })
    expect(shaft).toMatchObject({ edgeBreak: 0.3, diameter: [23.97, 24], across: [20.1, 20.1] })
    expect(shaft?.metal?.yield).toBeCloseTo(427.5, 1)
  })

  it('may be of iron, which has no yield', () => {
    expect(specOf(least({ shaft: { material: 'grey iron' } })).shaft?.metal).toEqual({
      name: 'grey iron',
      tensile: 200,
    })
  })

  it('may be of what bars are made of, or of what hubs are', () => {
    expect(specOf(least({ shaft: { material: 'silver steel' } })).shaft?.metal).toEqual({
      name: 'drill rod',
      yield: 370,
    })
    expect(specOf(least({ shaft: { material: 'e335' } })).shaft?.metal).toEqual({ name: 'E335', yield: 335 })
  })

  it.each([
    ['a metal twice over', least({ shaft: { material: 'E335', yield: '335 MPa' } }), 'shaft.yield'],
    ['a metal that nobody knows', keyway({ key: { material: 'cheese' } }), 'feature.keyway.key.material'],
    ['a height twice over', keyway({ ...byHand, key: { height: 7 } }), 'feature.keyway.key.height'],
    ['a shaft for another bore', least({ shaft: { diameter: 28 } }), 'shaft.diameter'],
    ['a keyseat outside its shaft', least({ shaft: { across: 24 } }), 'shaft.across'],
  ])('refuses %s', (_what, document, path) => {
    expect(Object.keys(complaintsBy(document))).toEqual([path])
  })

  it('says what was meant', () => {
    expect(complaintsBy(least({ shaft: { material: 'E3355' } }))['shaft.material']).toBe('E335!')
  })
})

describe('a keyway for a taper key', () => {
  it('by hand falls as it is told, and is given at its deep end', () => {
    expect(specOf(keyway({ ...byHand, taper: '1:100' })).feature).toMatchObject({
      taper: '1:100',
      across: [27.3, 27.3],
    })
  })

  it('of ASME B17.1 is of class 2', () => {
    const inches = (sizes: unknown) =>
      least({ units: 'in', bore: { diameter: 1, length: 1.5 }, feature: { keyway: sizes } })
    expect(specOf(inches({ taper: '1:96' })).feature).toMatchObject({ fit: 'class 2', taper: '1:96' })
    expect(Object.keys(complaintsBy(inches({ taper: '1:96', fit: 'class 1' })))).toContain('feature.keyway.fit')
    expect(
      complaintsBy({ ...inches({ taper: '1:96' }), bore: { diameter: 6, length: 6 } })['feature.keyway.taper'],
    ).toMatch(/1-1\/4 in wide/)
  })

  it('is not one of ISO 773, and has one of two rates', () => {
    expect(Object.keys(complaintsBy(keyway({ taper: '1:100' })))).toEqual(['feature.keyway.taper'])
    expect(Object.keys(complaintsBy(keyway({ ...byHand, taper: '1:50' })))).toEqual(['feature.keyway.taper'])
  })
})

describe('what drives the bar', () => {
  it('is told by the spec', () => {
    const { tooling } = specOf(
      bar({
        pull: { force: '100 N', moves: 0.05 },
        thrust: '250 lbf',
        travel: 90,
        handle: { radius: 200, travel: 100 },
        rack: { module: 1.5, width: 12 },
        hold: 'belt',
        work: { held: 'vise', jaws: '8 kN', support: 18, clamp: '2 kN' },
      }),
    )
    expect(tooling.bar).toMatchObject({
      pull: 2000,
      travel: 90,
      handle: { radius: 200, travel: 100 },
      rack: { module: 1.5, width: 12 },
      hold: 'belt',
      work: { held: 'vise', jaws: 8000, support: 18, clamp: 2000 },
    })
    expect(tooling.bar?.thrust).toBeCloseTo(1112.06, 2)
  })

  it('is that of the shop’s machine where the spec is silent', () => {
    const machines = [
      {
        name: 'bench mill',
        kind: 'mill',
        travel: 75,
        thrust: '900 N',
        handle: { radius: 150, travel: 80 },
        hold: 'belt',
        jaws: '6 kN',
      },
    ]
    const { tooling } = specOf(bar({ machine: 'bench mill', travel: 60, work: { held: 'vise' } }, { machines }))
    expect(tooling.bar).toMatchObject({
      machine: 'mill',
      travel: 60,
      thrust: 900,
      handle: { radius: 150, travel: 80 },
      hold: 'belt',
      work: { held: 'vise', jaws: 6000 },
    })
    expect(specOf(bar({ machine: 'mill' }, { machines })).tooling.bar).not.toHaveProperty('thrust')
  })

  it.each([
    ['a give and a pull', { give: 5000, pull: { force: '100 N', moves: 0.05 } }, 'tooling.bar.pull'],
    ['jaws of a strap', { work: { held: 'strap', jaws: '5 kN' } }, 'tooling.bar.work.jaws'],
    ['jaws of nobody knows what', { work: { jaws: '5 kN' } }, 'tooling.bar.work.jaws'],
    ['half a handle', { handle: { radius: 200 } }, 'tooling.bar.handle.travel'],
    ['a pull that moves nothing', { pull: { force: '100 N', moves: 0 } }, 'tooling.bar.pull.moves'],
    ['another hold', { hold: 'foot' }, 'tooling.bar.hold'],
  ])('refuses %s', (_what, sizes, path) => {
    expect(Object.keys(complaintsBy(bar(sizes)))).toEqual([path])
  })
})

describe('the press and its broach', () => {
  it('have what they are told to have', () => {
    const { tooling } = specOf(
      press(
        { heights: [11.5, 12.6, 13.5], faceAngle: 12 },
        { ram: 'loose', stroke: 250, below: 180, daylight: 300, opening: 60 },
      ),
    )
    expect(tooling.press).toMatchObject({
      ram: 'loose',
      stroke: 250,
      below: 180,
      daylight: 300,
      opening: 60,
      broach: { heights: [11.5, 12.6, 13.5], faceAngle: 12 },
    })
  })

  it.each([
    ['too few heights', [11.5, 13.5], /every one of the 3 teeth/],
    ['another last tooth', [11.5, 12.6, 13.4], /firstTooth and lastTooth/],
    ['heights that fall', [11.5, 13.5, 13.4], /rise/],
    ['a list of nothing', [], /two to 500/],
  ])('refuses %s', (_what, heights, says) => {
    expect(complaintsBy(press({ heights }))['tooling.press.broach.heights']).toMatch(says)
  })
})

describe('the bore', () => {
  it('may be chromed, yes or no', () => {
    const bore = (chromed: unknown) => least({ bore: { diameter: 24, length: 38, chromed } })
    expect(specOf(bore(true)).bore.chromed).toBe(true)
    expect(specOf(bore(false)).bore).not.toHaveProperty('chromed')
    expect(complaintsBy(bore('hard'))).toEqual({ 'bore.chromed': 'true or false' })
  })
})
