import { describe, expect, it } from 'vitest'
import type { Part } from '../../generators/part.ts'
import { parts } from '../../generators/set.ts'
import { hasNeck } from '../../generators/tool-bit-above.ts'
import { lengthSize } from '../../generators/tool-bit-limits.ts'
import { byCaliper } from '../../generators/wording.ts'
import type { Design } from '../../src/design.ts'
import { inWords } from '../../src/drawing/numbers.ts'
import { calloutsOf, forest, linksAlong, namesOf, numbersIn, under, wordingsOf, worthsOf } from './callouts.ts'
import { everyDesign, specimen } from './designs.ts'

const made = (design: Design): readonly Part[] => parts.filter((part) => part.belongs(design))
const partNamed = (name: string): Part => {
  const part = parts.find((one) => one.name === name)
  if (!part) throw new Error(name)
  return part
}

/** Dimensions of the core that a part's callouts are held against. */
const dimensions = (design: Design, part: string): unknown =>
  ({
    'guide-bushing': design.bushing,
    'shim-pack': design.bushing,
    'cutter-bar': design.bar,
    'ground-bar': design.groundBar,
    'tool-bit': design.bit,
    'plug-gauge': design.plug,
    'bore-plug': design.borePlug,
    'across-no-go': design.acrossNoGo,
    'width-gauge': design.widthGauge,
    'hub-ring': design.hubRing,
    'bit-templates': design.bitTemplates,
    'bit-stick-out': { ...design.bar, noseLength: design.bit?.noseLength },
    'setting-step': design.settingStep,
    'index-plate': design.indexPlate,
    'drill-jig': design.drillJig,
    'press-spacer': design.pressSpacer,
  })[part]

/** Sizes that a part's own file chooses, where the core has none: broken corners, and room in a print's corner. */
const own: readonly string[] = ['endChamfer', 'relief', 'keyCorner']

/** Every size that the sheets of a part must say, each once, whatever the job. */
const sizes: Readonly<Record<string, (design: Design) => readonly string[]>> = {
  'guide-bushing': ({ bushing }) => [
    ...(bushing?.locating ? ['locating.round', 'locating.width', 'locating.overBack'] : []),
    'outside',
    'collarDiameter',
    'collarThickness',
    'length',
    'lead',
    'undercut.width',
    'undercut.depth',
    'undercut.radius',
    'slotWidth',
    'slotCentral',
    'backWall',
    'floorParallel',
  ],
  'shim-pack': () => [
    'shims',
    'shim.width',
    'shim.length',
    'shim.headWidth',
    'shim.headLength',
    'shim.corner',
    'shim.hole',
    'endChamfer',
  ],
  'cutter-bar': ({ bar }) => [
    'overall',
    'diameter',
    'endChamfer',
    'crossHole',
    'crossHoleCentral',
    'holeToEnd',
    'screw',
    'screw.tapDrill',
    'countersink',
    'mouthChamfer',
    ...(bar?.shouldered ? ['shank', 'bodyLength', 'fillet'] : []),
    ...((bar?.incline ?? 0) > 0 ? ['incline'] : []),
  ],
  'ground-bar': ({ groundBar }) => [
    'sideRelief',
    ...((groundBar?.cornerRadius ?? 0) > 0 ? ['cornerRadius'] : []),
    'overall',
    'neckLength',
    'headLength',
    'shank',
    'fillet',
    'rake',
    'endRelief',
    'backToNose',
    'eccentricity',
    'noseWidth',
    'diameter',
    'blank',
  ],
  'tool-bit': ({ bit }) => [
    'length',
    'size',
    'noseWidth',
    'noseLength',
    'rake',
    'endRelief',
    'sideRelief',
    'backTaper',
    ...(bit && hasNeck(bit) ? ['neckRadius'] : []),
    ...(bit && bit.form === undefined && bit.cornerRadius > 0 ? ['cornerRadius'] : []),
    ...(bit?.noseEndRadius === undefined ? [] : ['noseEndRadius']),
    ...(bit?.form === 'vee' ? ['includedAngle'] : []),
    ...((bit?.tipRadius ?? 0) > 0 ? ['tipRadius'] : []),
    ...(bit?.shape === 'round' ? ['flat', 'edgeHeight'] : []),
  ],
  'plug-gauge': () => [
    'diameter',
    'keyWidth',
    'across',
    'length',
    'handleDiameter',
    'handleLength',
    'lead',
    'foot',
    'relief',
    'keyCorner',
  ],
  'bore-plug': ({ borePlug }) => [
    'diameter',
    'length',
    'pilot.length',
    'pilot.less',
    'handleDiameter',
    'handleLength',
    ...(['keyWidth', 'overKeys', 'across', 'keyCorner', 'room', 'acrossFlats'] as const).filter(
      (name) => borePlug?.[name] !== undefined,
    ),
  ],
  'across-no-go': () => [
    'diameter',
    'keyWidth',
    'across',
    'length',
    'waistDiameter',
    'waistLength',
    'handleDiameter',
    'handleLength',
    'foot',
    'relief',
    'keyCorner',
  ],
  'width-gauge': () => [
    'go',
    'noGo',
    'goLength',
    'gripLength',
    'gripWidth',
    'waistLength',
    'waistWidth',
    'noGoLength',
    'thickness',
    'lead',
    'edge',
  ],
  'hub-ring': ({ hubRing }) => [
    'finishedBore',
    'outside',
    'thickness',
    'foot',
    ...(hubRing?.uncutBore === undefined ? [] : ['uncutBore']),
    ...(hubRing?.acrossFlats === undefined ? ['slotWidth', 'room'] : ['acrossFlats']),
    ...(['across', 'overFloors', 'floor'] as const).filter((name) => hubRing?.[name] !== undefined),
  ],
  'bit-stick-out': ({ bar }) => [
    'projection',
    'overBarAndNose',
    'noseLength',
    ...(bar?.incline === 0 ? ['bitToEnd', 'bitLength'] : []),
  ],
  'bit-templates': ({ bit }) => [
    'side',
    'end',
    'wedge',
    ...(bit?.form === 'vee' ? ['vee'] : bit?.form === 'round' ? ['radius'] : ['plan']),
    'width',
    'widthDepth',
    'length',
    'first',
    'pitch',
    'height',
    'depth',
    'room',
    'thickness',
  ],
  'setting-step': () => ['steps', 'over', 'footLength', 'stepLength', 'thickness', 'room', 'foot'],
  'index-plate': () => ['outside', 'hole', 'pitchDiameter', 'mandrel', 'thickness', 'notch'],
  'drill-jig': () => [
    'length',
    'barDepth',
    'clamp.toFront',
    'holeToStop',
    'chipHole',
    'bush.outside',
    'clamp.thread',
    'width',
    'height',
    'barHole',
  ],
  'press-spacer': () => ['height', 'outside', 'opening'],
}

const everyDrawing = (hold: (design: Design, part: Part) => void): void => {
  for (const design of everyDesign) for (const part of made(design)) hold(design, part)
}

describe('the drawings of every part, over specimens and any job', () => {
  it('callouts span what they say', () => {
    everyDrawing((design, part) => {
      for (const callout of calloutsOf(part.drawing(design))) {
        if (callout.callout === 'linear')
          expect(Math.abs(callout.b - callout.a), `${part.name} ${callout.of}`).toBeCloseTo(callout.worth.value, 9)
        if (callout.callout === 'angle')
          expect(callout.a2 - callout.a1, `${part.name} ${callout.of}`).toBeCloseTo(callout.worth.value, 9)
      }
    })
  })

  it('what callouts say is a dimension of that name', () => {
    everyDrawing((design, part) => {
      for (const callout of calloutsOf(part.drawing(design))) {
        if (own.includes(callout.of) && under(dimensions(design, part.name), callout.of) === undefined) continue
        const known = numbersIn(under(dimensions(design, part.name), callout.of))
        const said = worthsOf(callout)[0]
        // The screw's first number is the hole that its thread runs into.
        if (!said || ['screw', 'clamp.thread'].includes(callout.of)) continue
        expect(
          known.some((value) => Math.abs(value - said.value) < 1e-9),
          `${part.name} ${callout.of}: ${said.value} of ${known.join(' ')}`,
        ).toBe(true)
      }
    })
  })

  it('every size is there, once', () => {
    everyDrawing((design, part) => {
      const wanted = sizes[part.name]?.(design) ?? []
      expect([...namesOf(part.drawing(design))].toSorted(), part.name).toEqual([...wanted].toSorted())
    })
  })

  it('along each axis of a view the sizes make one tree: nothing twice, nothing loose', () => {
    everyDrawing((design, part) => {
      for (const view of part.drawing(design).views)
        for (const axis of ['x', 'y'] as const) {
          const links = linksAlong(view.callouts, axis)
          if (links.length > 0)
            expect(forest(links), `${part.name} ${view.name} ${axis}`).toEqual({ pieces: 1, loops: 0 })
        }
    })
  })

  it('views in projection say no length twice between them', () => {
    everyDrawing((design, part) => {
      const beside = part.drawing(design).views.filter(({ place }) => place.is === 'front' || place.is === 'seen')
      const lengthwise = beside.filter(
        ({ place }) => place.is === 'front' || (place.is === 'seen' && ['above', 'below'].includes(place.from)),
      )
      const links = linksAlong(
        lengthwise.flatMap(({ callouts }) => callouts),
        'x',
      )
      expect(forest(links).loops, part.name).toBe(0)
    })
  })

  it('words hold no measures: those are sizes, which a sheet can say in its own unit', () => {
    everyDrawing((design, part) => {
      const { bar } = design
      const names = [
        ...design.plug.marking,
        ...(design.drillJig ? [design.drillJig.clamp.thread] : []),
        ...design.spec.shop.drills.map(({ name }) => name),
        bar?.screw.callout,
        bar?.screw.thread,
        bar?.screw.tapDrill.name,
        bar?.crossHoleDrill,
      ]
      for (const words of wordingsOf(part.drawing(design)).flat()) {
        if (typeof words !== 'string') continue
        const longest = names.toSorted((a, b) => (b?.length ?? 0) - (a?.length ?? 0))
        const rest = longest.reduce<string>((text, name) => (name ? text.replaceAll(name, '') : text), words)
        expect(rest, part.name).not.toMatch(/\d[.,/]\d/)
      }
    })
  })

  it('every worth can be written in either unit and convention', () => {
    const manners = [
      { convention: 'iso', units: 'mm' },
      { convention: 'asme', units: 'in' },
      { convention: 'asme', units: 'mm' },
    ] as const
    everyDrawing((design, part) => {
      for (const wording of wordingsOf(part.drawing(design)))
        for (const manner of manners) expect(inWords(wording, manner)).not.toMatch(/NaN|undefined|Infinity|−0\b(?!\.)/)
    })
  })

  it('marks and callouts lie where numbers do', () => {
    everyDrawing((design, part) => {
      expect(JSON.stringify(part.drawing(design)), part.name).not.toContain('null')
      expect(JSON.stringify(part.solid(design)), part.name).not.toContain('null')
    })
  })

  it('the table of sizes as made has room for its rows', () => {
    everyDrawing((design, part) => expect(part.drawing(design).asMade.rows.length).toBeLessThanOrEqual(5))
  })
})

describe('what sheets say', () => {
  const wordsOf = (design: Design, name: string, manner: Parameters<typeof inWords>[1]): string =>
    wordingsOf(partNamed(name).drawing(design))
      .map((wording) => inWords(wording, manner))
      .join('\n')
  const metric = { convention: 'iso', units: 'mm' } as const
  const inch = { convention: 'asme', units: 'in' } as const

  it('the back-wall sum of a bushing adds up as it is printed', () => {
    for (const design of everyDesign.filter(({ bushing }) => (bushing?.shims.length ?? 0) > 0)) {
      const manner = design.spec.units === 'mm' ? metric : inch
      const sums = wordsOf(design, 'guide-bushing', manner).match(/^(\S+) \+ (\S+) \+ (\S+) = (\S+) \(limits/m)
      const [wall, shims, tooth, across] = (sums ?? []).slice(1).map((text) => Number(text.replace('−', '-')))
      expect((wall ?? NaN) + (shims ?? NaN) + (tooth ?? NaN)).toBeCloseTo(across ?? NaN, 9)
    }
  })

  it('the micrometer reading of the last pass is the depth across', () => {
    const { bushing, section } = specimen('winch-drum-gear')
    expect(bushing?.passes.at(-1)?.over).toBeCloseTo(section.across, 9)
    expect(wordsOf(specimen('winch-drum-gear'), 'guide-bushing', inch)).toContain('Pass 2, 1 shim: .9686')
  })

  const orderOf = (design: Design): readonly string[] =>
    partNamed('cutter-bar')
      .drawing(design)
      .notes.find(({ heading }) => heading === 'ORDER OF WORK')
      ?.lines.map((line) => inWords(line, metric)) ?? []

  it('the cross hole comes before the tap drill, and the sheet says why', () => {
    const order = orderOf(specimen('cider-mill-pulley'))
    expect(order.findIndex((line) => line.startsWith('Cross hole first'))).toBe(2)
    expect(order.findIndex((line) => line.startsWith('Tap drill into the cross hole'))).toBe(3)
    expect(order[2]).toContain('it wanders')
  })

  it('a bar is clear of burrs before it is hardened, and hardened only where its steel is soft', () => {
    let soft = 0
    for (const design of everyDesign.filter(({ bar }) => bar)) {
      const order = orderOf(design)
      const hardened = order.findIndex((line) => /harden/i.test(line))
      const soften = design.bar?.stock.material.startsWith('drill rod') ?? false
      if (soften) soft += 1
      expect(hardened).toBe(soften ? order.length - 1 : -1)
      expect(order.findIndex((line) => line.startsWith('Lift the burr'))).toBe(order.length - (soften ? 2 : 1))
    }
    expect(soft).toBeGreaterThan(5)
    expect(soft).toBeLessThan(everyDesign.filter(({ bar }) => bar).length)
  })

  it('every tool that can hurt says so in a heavy box', () => {
    const says: Readonly<Record<string, RegExp>> = {
      'guide-bushing': /shatter.*face shield.*never strike it/,
      'shim-pack': /shatter.*face shield.*never strike it/,
      'cutter-bar': /isolator.*spindle locked.*never start it/,
    }
    everyDrawing((design, part) => {
      const wanted = says[part.name]
      if (!wanted) return
      const cautions = part.drawing(design).notes.filter(({ caution }) => caution)
      expect(cautions.flatMap(({ lines }) => lines.map((line) => inWords(line, metric))).join(' ')).toMatch(wanted)
    })
  })

  it('pulled, the bar is told what that asks; pushed, nothing', () => {
    const words = (stroke: 'push' | 'pull'): string => {
      const design = specimen('cider-mill-pulley')
      const bar = design.spec.tooling.bar
      if (!bar) throw new Error('no bar')
      return wordsOf(
        { ...design, spec: { ...design.spec, tooling: { ...design.spec.tooling, bar: { ...bar, stroke } } } },
        'cutter-bar',
        metric,
      )
    }
    expect(words('pull')).toContain('Pull stroke: bit turned over')
    expect(words('push')).not.toMatch(/pull/i)
  })

  it('the bit is cut off inside its window, at full length where both sides are open', () => {
    for (const design of everyDesign)
      if (design.bit && design.bit.lengthMin < design.bit.lengthMax) {
        const { lower, upper } = lengthSize(design, design.bit)
        expect(lower).toBeGreaterThanOrEqual(design.bit.lengthMin - 1e-9)
        expect(upper).toBeLessThanOrEqual(design.bit.lengthMax + 1e-9)
        expect(upper - lower).toBeGreaterThan(0)
        expect(upper - lower).toBeLessThanOrEqual(1.0161)
      }
  })

  it('what a caliper reads stays inside its limits', () => {
    for (const design of everyDesign.filter(({ bit }) => bit)) {
      const { bit } = design
      if (!bit) continue
      // A leaning bit's face may climb: its drop is not read.
      const sizes = [bit.neckUnder, bit.widthAtHeel, bit.endSetBack, ...(bit.rake > 0 ? [bit.faceDrop] : [])]
      for (const { lower, upper } of sizes) {
        const [low, , high] = byCaliper(design, lower, upper)
        if (typeof low !== 'object' || typeof high !== 'object') throw new Error('two sizes')
        expect(low.value).toBeGreaterThanOrEqual(lower - 1e-9)
        expect(high.value).toBeLessThanOrEqual(upper + 1e-9)
        expect(high.value).toBeGreaterThan(low.value)
      }
    }
  })

  it('a round bit says how high its edge stands, and that the nose fits there', () => {
    for (const design of everyDesign) {
      const { bit } = design
      if (bit?.shape !== 'round') continue
      if (!bit.edgeLimits) throw new Error('a round bit without limits for its edge')
      const { lower, upper } = bit.edgeLimits
      for (const height of [lower, upper])
        if (bit.groundWidth.lower <= bit.size)
          expect(Math.hypot(bit.groundWidth.lower / 2, height - bit.size / 2)).toBeLessThanOrEqual(bit.size / 2 + 1e-9)
      expect(upper).toBeLessThanOrEqual(bit.size - (bit.flat ?? 0) + 1e-9)
    }
  })

  it('stock that makes a shim up adds up as it is printed', () => {
    const words = wordsOf(specimen('winch-drum-gear'), 'shim-pack', inch)
    expect(words).toContain('Shim 1: .0320 + .0080 + .0010 makes .0410, .0004 over: rub it down.')
  })

  it('a measured bore stands as measured under the title and in the table', () => {
    const { block } = partNamed('cutter-bar').drawing(specimen('butter-churn-gear'))
    expect(block.job).toBe('for butter-churn-gear, bore 30.017 measured x 38.1')
  })

  it('the bit always carries its cautions in a box', () => {
    everyDrawing((design, part) => {
      if (part.name !== 'tool-bit') return
      const caution = part.drawing(design).notes.find(({ heading }) => heading === 'CAUTION')
      expect(caution?.caution).toBe(true)
      expect(caution?.lines.map((line) => inWords(line, metric)).join(' ')).toMatch(
        /Eye protection.*dust.*guard.*Stand aside/,
      )
    })
  })

  it('the gauge says what it is not for', () => {
    everyDrawing((design, part) => {
      if (part.name !== 'plug-gauge') return
      const headings = part.drawing(design).notes.map(({ heading }) => heading)
      expect(headings.some((heading) => /^GO-CHECK ±\S+, NOT FOR ACCEPTANCE$/.test(heading))).toBe(true)
    })
  })

  it('inch jobs ask for stock, drills and threads by name', () => {
    const design = specimen('winch-drum-gear')
    const words = wordsOf(design, 'cutter-bar', inch)
    expect(words).toContain(design.bar?.screw.callout ?? '-')
    expect(words).toMatch(/Ø\d+(-\d+)?\/\d+ bar/)
    expect(words).toContain(`drill ${design.bar?.screw.tapDrill.name} (.`)
  })
})
