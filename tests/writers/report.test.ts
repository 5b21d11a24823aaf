import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { design } from '../../src/design.ts'
import { parse } from '../../src/spec/parse.ts'
import { readSpec } from '../../src/spec/read.ts'
import { canonical, json, rounded } from '../../src/writers/json.ts'
import { report } from '../../src/writers/report.ts'

const specimen = (name: string) => {
  const read = parse(readFileSync(join(import.meta.dirname, '../specimens', `${name}.yaml`), 'utf8'))
  if ('complaints' in read) throw new Error(JSON.stringify(read.complaints))
  const spec = readSpec(read.document)
  if ('complaints' in spec) throw new Error(JSON.stringify(spec.complaints))
  return spec.spec
}

describe('the report', () => {
  const metric = report(design(specimen('cider-mill-pulley')))
  const inch = report(design(specimen('winch-drum-gear')))

  // The names of format 1: other programs read these. Whatever is added, none of them goes or is renamed.
  it('keeps the names of its format', () => {
    expect(Object.keys(metric)).toEqual(
      expect.arrayContaining(['format', 'name', 'verdict', 'section', 'findings', 'basis']),
    )
    expect(Object.keys(metric.section)).toEqual(
      expect.arrayContaining(
        'boreRadius width mouth sagitta floor crownDepth sideDepth across touchOff infeed acrossLimits widthLimits'.split(
          ' ',
        ),
      ),
    )
    expect(Object.keys(metric.bar ?? {})).toEqual(
      expect.arrayContaining(
        'diameter diameterMax projection projectionMin projectionMax noseWidth noseLengthMin crossHole holeRatio holeToEnd bitToEnd screw tapDrill bodyLength shank bitLength bitLengthMin bitLengthMax'.split(
          ' ',
        ),
      ),
    )
    expect(Object.keys(inch.bushing ?? {})).toEqual(
      expect.arrayContaining(
        'outside length slotWidth floorFromBore floorFromAxis backWall cornerWall shims passes'.split(' '),
      ),
    )
    expect(Object.keys(inch.press ?? {})).toEqual(
      expect.arrayContaining('teethInCut stroke below fallsFree daylight raised tableToRam'.split(' ')),
    )
    expect(Object.keys(inch.pusher ?? {})).toEqual(['length', 'width', 'height'])
    expect(Object.keys(metric.bit ?? {})).toEqual(
      expect.arrayContaining(
        'noseWidth noseLength cornerRadius rake endRelief sideRelief backTaper widthAtHeel widthAtNeck'.split(' '),
      ),
    )
    expect(Object.keys(metric.loads ?? {})).toEqual(
      expect.arrayContaining(
        'cuttingForce thrust deflection lag residual bends holeStress holeStressExpected rootStressLimits pushMost infeedMost twist slip'.split(
          ' ',
        ),
      ),
    )
    expect(Object.keys(metric.key ?? {})).toEqual(
      expect.arrayContaining(
        'torqueShear torqueBearingHub torqueBearingShaft torque weakest hubWall play offsetWithin clearanceHubDown shaftSideDepth'.split(
          ' ',
        ),
      ),
    )
    expect(Object.keys(inch.press ?? {})).toEqual(
      expect.arrayContaining('force capacity columnMargin hubMost hubStress hubStressMost overError'.split(' ')),
    )
    expect(Object.keys(metric.plan ?? {})).toEqual(expect.arrayContaining('infeedPerPass passes lanes'.split(' ')))
    for (const finding of metric.findings)
      expect(Object.keys(finding)).toEqual(expect.arrayContaining('rule verdict unit reason remedies'.split(' ')))
  })

  it('holds plain numbers where the format has numbers', () => {
    for (const name of ['diameter', 'crossHole', 'tapDrill', 'shank', 'projection'])
      expect(typeof metric.bar?.[name], name).toBe('number')
    expect(typeof metric.bar?.['screw']).toBe('string')
    expect(inch.bushing?.['outside']).toEqual({
      nominal: expect.any(Number),
      lower: expect.any(Number),
      upper: expect.any(Number),
    })
  })

  it('is millimetres whatever the units of the spec', () => {
    // 7/8 in bore.
    expect(inch.section['boreLimits']).toEqual([22.225, expect.any(Number)])
    expect(inch.units).toBe('in')
  })

  it('leaves out what does not apply', () => {
    expect(Object.keys(metric)).not.toContain('bushing')
    expect(Object.keys(metric)).not.toContain('press')
    expect(JSON.stringify({ ...metric, findings: [] })).not.toContain('null')
  })

  it('its sizes agree with one another', () => {
    for (const { section } of [metric, inch]) {
      const size = (name: string): number => Number(section[name])
      expect(size('across')).toBeCloseTo(size('boreRadius') + size('floor'), 5)
      expect(size('crownDepth') + size('sagitta')).toBeCloseTo(size('sideDepth'), 5)
      expect(size('infeed')).toBeCloseTo(size('floor') - size('touchOff'), 5)
    }
  })

  it('comes back from its JSON as it was', () => {
    expect(JSON.parse(json(metric))).toEqual(metric)
  })
})

describe('JSON', () => {
  it('rounds to a millionth, without minus zero, and leaves out what is absent or endless', () => {
    expect(
      rounded({ a: 0.1 + 0.2, b: -1e-9, c: undefined, d: [1 / 3, { e: Number.POSITIVE_INFINITY, f: null }] }),
    ).toEqual({
      a: 0.3,
      b: 0,
      d: [0.333333, { f: null }],
    })
  })

  it('is canonical whatever the order of names', () => {
    expect(canonical({ b: [1, { d: 2, c: 'x' }], a: undefined })).toBe(canonical({ b: [1, { c: 'x', d: 2 }] }))
    expect(canonical({ a: 1 })).not.toBe(canonical({ a: '1' }))
  })
})
