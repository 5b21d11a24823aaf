import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cardOf } from '../../src/card/card-of.ts'
import { plain, type Words } from '../../src/card/document.ts'
import { flow } from '../../src/card/flow.ts'
import { design } from '../../src/design.ts'
import { readSpec } from '../../src/spec/read.ts'
import { cardHtml } from '../../src/writers/card-html.ts'
import { documents } from '../checks/documents.ts'
import { featureDocuments } from '../checks/feature-documents.ts'
import { specimen } from '../spec/specimens.ts'
import { eightBroach } from '../dimensions/broaches.ts'
import { allBlocks, blocksOf, laidOver, machineSides, names, specimenCard, worked } from './cards.ts'
import { both, faults } from './faults.ts'
import { runs } from './runs.ts'
import { bare, saidBy } from './said.ts'

/** Everything that a card says. */
const textOf = (card: ReturnType<typeof cardOf>): string => saidBy(card).flat().join(' ')
const machineText = (card: ReturnType<typeof cardOf>): string =>
  saidBy({ ...card, leaves: card.leaves.filter(({ leaf }) => leaf === 'machine') })
    .flat()
    .join(' ')
const ticksOf = (card: ReturnType<typeof cardOf>, signal: string): readonly string[] =>
  allBlocks(card).flatMap((block) =>
    block.block === 'caution' && block.says[0]?.signal === signal
      ? (block.ticks ?? []).map((words: Words) => plain(words))
      : [],
  )
const sheets = (card: ReturnType<typeof cardOf>): number =>
  flow(card).filter(({ leaf }) => leaf.leaf === 'machine').length
const doc = (name: string): Record<string, unknown> => specimen(`${name}.yaml`)

describe('a card, whatever the job', () => {
  it('is laid without words over words, lines through words, or anything off the paper', () => {
    const holds = (document: unknown): void => {
      const read = readSpec(document)
      if ('complaints' in read) return
      const made = design(read.spec)
      const card = cardOf(made)
      const sides = flow(card)
      expect(both(sides).flatMap(faults)).toEqual([])
      expect(textOf(card)).not.toMatch(/NaN|Infinity|undefined/)
      // One slot that is sound: one sheet at the machine, both sides.
      if (made.verdict !== 'fail' && made.section.at.length === 1 && (made.plan?.cuts.length ?? 1) <= 3)
        expect(sheets(card)).toBeLessThanOrEqual(2)
    }
    fc.assert(fc.property(documents, holds), { numRuns: runs(8, 120), seed: 186 })
    fc.assert(fc.property(featureDocuments, holds), { numRuns: runs(6, 80), seed: 252 })
  }, 900_000)

  it.each(names)('%s stands on one sheet at the machine', (name) => {
    expect(sheets(specimenCard(name).card)).toBe(2)
  })

  it.each(names)('%s shows its bar drawn back and at the floor, and force and depth pass by pass', (name) => {
    const { card, design: made } = specimenCard(name)
    const titles = allBlocks(card).flatMap((block) => (block.block === 'picture' ? [block.picture.title] : []))
    const byBar = card.leaves.some(({ sides }) => sides.some(({ title }) => title === 'the bar'))
    const times = byBar ? 1 : 0
    expect(titles.filter((title) => title === 'The bar in its bore, withdrawn and at full depth')).toHaveLength(times)
    if (made.verdict !== 'fail')
      expect(titles.filter((title) => title.startsWith('The infeed drawn long'))).toHaveLength(times)
  })

  it.each(names)('%s defers to licensed hands and the local code on every side', (name) => {
    for (const { deferral } of flow(specimenCard(name).card)) {
      expect(deferral).toContain('licensed hands')
      expect(deferral).toContain('the local code')
      expect(deferral).toMatch(/Steering, brakes, .*lifting, pressure, aircraft/)
    }
  })
})

describe('cautions stand where the danger is', () => {
  it('stop at the head of a lathe job, with its five ticks, before anything is set up', () => {
    const { card } = specimenCard('cider-mill-pulley')
    const [first] = machineSides(card)
    expect(first?.blocks.slice(0, 2).map(({ block }) => block)).toEqual(['job', 'caution'])
    expect(machineText(card)).toContain(
      'Power must not reach the spindle while the bar is in the hub: one turn folds the bar and throws the bit.',
    )
    expect(ticksOf(card, 'Stop.')).toEqual([
      'plug out',
      'spindle held, lock or strap',
      'chuck key put away',
      'feed levers out',
      'eyes covered',
    ])
    expect(machineText(card)).not.toContain('quill')
  })

  it('a heavy handle and sharp edges before the gates', () => {
    for (const name of ['cider-mill-pulley', 'organ-bench-crank', 'chaff-cutter-clutch']) {
      const text = machineText(specimenCard(name).card)
      const at = text.indexOf('Handle suddenly heavy?')
      expect(at).toBeGreaterThan(text.indexOf('set the dial to 0'))
      expect(at).toBeLessThan(Math.max(text.lastIndexOf('go on'), text.indexOf('Turn one way only,')))
      expect(text).toContain('never by finger, never by air line')
    }
  })

  it('the quill on a mill, with what the machine may push', () => {
    const { card, design: made } = specimenCard('organ-bench-crank')
    const text = machineText(card)
    expect(text).toContain('The quill’s rack is made for drilling.')
    expect(text).toContain(`Stay under ${Math.round((made.loads?.pushMost ?? 0) / 4.4482216152605)} lbf`)
    expect(text).toContain('Belt and hand do not hold a spindle; the gear or the lock does.')
  })

  it('iron dust in grey iron, and nowhere else', () => {
    for (const name of names) {
      const { card, design: made } = specimenCard(name)
      expect(machineText(card).includes('Iron dust'), name).toBe(
        made.spec.hub.material === 'grey iron' && sheets(card) > 0,
      )
    }
  })

  it('the wheel before the bit is ground, the cross hole before the bar is drilled', () => {
    const { card } = specimenCard('cider-mill-pulley')
    const tooling = card.leaves.find(({ leaf }) => leaf === 'tooling')
    const [bar, bit] = tooling?.sides ?? []
    expect(bit?.blocks[0]).toMatchObject({ block: 'caution', says: [{ signal: 'Before the wheel.' }] })
    expect(ticksOf(card, 'Before the wheel.')).toContain('no aluminium or brass on this wheel')
    const order = blocksOf(bar?.blocks ?? []).map((block) =>
      block.block === 'caution' ? block.says[0]?.signal : block.block,
    )
    expect(order.indexOf('Cross hole first, then the tapped end.')).toBeLessThan(order.indexOf('list'))
    expect(order).toContain('Cross hole first, then the tapped end.')
  })

  it('the press: guard, shield, nobody in line, never struck, never drawn back', () => {
    const { card } = specimenCard('winch-drum-gear')
    const [first, second] = machineSides(card)
    expect(first?.blocks[1]).toMatchObject({ block: 'caution', says: [{ signal: 'Stop.' }] })
    expect(ticksOf(card, 'Stop.')).toEqual(
      expect.arrayContaining([
        'guard between it and you',
        'full face shield',
        'nobody in line with it, left, right or front',
      ]),
    )
    const text = saidBy({ ...card, leaves: [{ leaf: 'machine', title: '', sides: second ? [second] : [] }] })
      .flat()
      .join(' ')
    for (const words of ['Never strike it.', 'Never draw it back up', 'Force jumps, or it leans: stop,'])
      expect(text).toContain(words)
    expect(machineText(card)).not.toContain('Power must not reach the spindle')
  })

  it('the press: daylight from the table, room for the teeth and for the whole broach, a pusher after a short tail', () => {
    const { card } = specimenCard('winch-drum-gear')
    const said = bare(machineText(card))
    // Hub 1.375 + 6.75 − .9 of pilot = 7.225, and the spacer of 2.500; .9 + 5 of teeth; 6.75 + 1/16 of bushing, up to 1/8.
    for (const words of [
      'Daylight, table to ram: 9.725, the spacer of 2.500 counted',
      'Under the part 5.900 clear for the teeth to pass, 6.875 for the broach to fall free; with less, the hub is lifted off it',
      // Tail .85; hub 1.375, collar .250, head of the shim .3125, and 1/4: 1.3375, up to 1/8.
      'Pusher at hand, 0.180 wide and 0.325 high at most, 1.375 long at least',
    ])
      expect(said).toContain(bare(words))
    expect(textOf(card)).toContain('it follows the broach through the bushing’s slot')
    // With room under its table, no spacer; with .9 + 5 + 2 the tail stands over collar and shim.
    const long = { below: 6, 'broach.overall': 7.9, 'broach.rootHeight': 0.35 }
    const other = worked(
      Object.entries(long).reduce(
        (document, [path, value]) => laidOver(document, `tooling.press.${path}`, value),
        doc('winch-drum-gear'),
      ),
    )
    expect(bare(machineText(other.card))).toContain(bare('Daylight, table to ram: 8.375'))
    expect(machineText(other.card)).not.toContain('spacer')
    expect(textOf(other.card)).not.toMatch(/pusher/i)
  })

  it('a heavy hub is slung, and a light one is not spoken of', () => {
    const heavy = specimenCard('stone-crusher-sheave')
    // π/4 · (180² − 100²) · 160 mm of iron at 7.9 kg/dm³.
    expect(heavy.design.hubWeight).toBeCloseTo(22.24, 1)
    expect(machineText(heavy.card)).toContain('About 22 kg')
    expect(machineText(specimenCard('cider-mill-pulley').card)).not.toContain('Sling it')
  })
})

describe('what each kind of job asks', () => {
  it('two lanes: one zero for both, found over the first', () => {
    const { card, design: made } = specimenCard('cider-mill-pulley')
    expect(made.plan?.lanes.length).toBe(2)
    const said = machineText(card)
    // 8 wide by a nose of 5: 1.50 to one side, which on a lathe is down; before the dial is set to 0, not after.
    expect(said.indexOf('Now over to lane 1')).toBeGreaterThan(said.indexOf('begin again'))
    expect(bare(said)).toContain(bare('the bar 1.50 lower, by shims, half of what 8.00 is wider than your nose'))
    expect(said.indexOf('set the dial to 0')).toBeGreaterThan(said.indexOf('Now over to lane 1'))
    expect(machineText(specimenCard('loom-crank').card)).not.toContain('Now over')
    expect(machineText(card)).toContain('Do not set the dial to 0 again for the second lane')
    expect(bare(said)).toContain(bare('Lane 2: 1.50 above the middle'))
    // Half of the play of 0.018 mm that an 8 mm key has in JS9.
    expect(bare(said)).toContain(bare('turned over: half of it; ends alike to 0.009'))
    // On a mill another slide moves it.
    const mill = machineText(worked(laidOver(doc('cider-mill-pulley'), 'tooling.bar.machine', 'mill')).card)
    expect(bare(mill)).toContain(bare('to one side, half of what 8.00 is wider than your nose'))
  })

  it('splines: every slot to a gate before any goes deeper, floor to floor, back to slot 1', () => {
    const text = machineText(specimenCard('chaff-cutter-clutch').card)
    for (const words of [
      'Every slot to a gate before any goes deeper',
      'Turn one way only,',
      'Do not move the bit between slots.',
      'Floor to floor',
      '1 and 4',
      'closing error:',
      'half of what is missing',
    ])
      expect(text).toContain(words)
    expect(text).not.toContain('measured across')
  })

  it('a socket: the V and its tip; no side depth and nothing to measure at the gates', () => {
    const text = machineText(specimenCard('sluice-gate-wheel').card)
    expect(text).toContain('90°')
    expect(text).toContain('The infeed is corrected for that tip')
    expect(text).toContain('Across flats')
    expect(text).not.toContain('side depth')
  })

  it('slits: the web and half infeed', () => {
    const text = machineText(specimenCard('engraver-collet').card)
    expect(text).toContain('Last passes at half infeed: the web snaps sideways.')
    expect(text).toContain('no web left, seen through end to end')
  })

  it('a groove has one depth, from the crown', () => {
    const text = textOf(specimenCard('line-shaft-bush').card)
    expect(text).toContain('Its depth is from the crown: there is no other.')
    // The same in every bore: one number, no table.
    expect(bare(text)).toContain(bare('Infeed 1.100 whatever the bore'))
    expect(text).not.toContain('Ring the row')
    expect(machineText(specimenCard('line-shaft-bush').card)).not.toContain('side depth')
  })

  it('settings of the projection: bar out, bit out, and the dial set anew', () => {
    const staged = worked({
      ...doc('press-slide'),
      tooling: { bar: { behind: 20, diameter: 8, clearance: { back: 0.1, front: 0.1, withdrawn: 0.1 } } },
    })
    expect(staged.design.plan?.settings.length).toBeGreaterThan(1)
    expect(machineText(staged.card)).toMatch(
      /Here: bar out, bit out to \d+\.\d\d, over bar and nose \d+\.\d\d, bar back in with the nose in the slot\./,
    )
  })

  it('a blind bore asks how far it goes on, and never for room behind the hub', () => {
    const blind = worked(laidOver(doc('loom-crank'), 'bore.blind', { beyond: 14, relief: { diameter: 27, length: 6 } }))
    const text = machineText(blind.card)
    expect(text).toContain('Bore goes on past the slot by at least')
    expect(text).toContain('Relief groove at the bottom')
    expect(text).not.toContain('Behind the hub open')
  })

  it('a bar of one piece is hardened, and has no bit', () => {
    const { card, design: made } = specimenCard('clock-barrel')
    expect(made.groundBar).toBeDefined()
    expect(textOf(card)).toContain('harden head and neck, draw them to straw')
    expect(machineText(card)).toContain('Over back and nose')
    expect(textOf(card)).not.toContain('Tool bit')
  })

  it('a taper key tilts the hub', () => {
    const taper = worked(
      laidOver(doc('saw-bench-pulley'), 'feature', {
        keyway: { width: [14, 14.043], height: 9, across: [53.8, 54], taper: '1:100' },
      }),
    )
    expect(taper.design.section.key?.taper).toBeDefined()
    expect(bare(machineText(taper.card))).toContain(bare('Hub tilted 0.573°, so that the floor falls 1:100'))
    // What is measured at one end is not what is measured at the other.
    for (const words of ['Across is that of the deep end: measure there.', 'deep end less the other', 'the deep end’s'])
      expect(textOf(taper.card)).toContain(words)
    expect(textOf(taper.card)).not.toContain('key slides in by hand')
  })

  it('a pull cut: a stop before the hub, and the stroke from behind it', () => {
    const { card, design: made } = worked(laidOver(doc('loom-crank'), 'tooling.bar', { stroke: 'pull', behind: 60 }))
    const said = machineText(card)
    expect(said).toContain('A stop or a strap before the hub:')
    const { before, past } = made.plan?.stroke ?? { before: 0, past: 0 }
    expect(before).toBeGreaterThan(past)
    // It starts the overtravel behind the hub and runs out before it.
    expect(bare(said)).toContain(
      bare(`edge ${past} clear behind the hub at the start, ${before} past its front at the end`),
    )
    expect(machineText(specimenCard('loom-crank').card)).not.toContain('A stop or a strap')
  })

  it('asks how much is open behind the hub where nobody has told', () => {
    const { card, design: made } = specimenCard('loom-crank')
    expect(made.findings.find(({ rule }) => rule === 'room-behind-hub')?.verdict).toBe('unknown')
    // The bar’s end and half a millimetre.
    expect(bare(machineText(card))).toContain(
      bare(`Behind the hub open at least ${((made.bar?.tipBeyond ?? 0) + 0.5).toFixed(2)}`),
    )
  })

  it('many lanes and slots: more tables than one', () => {
    const { card } = worked({
      units: 'mm',
      name: 'trial',
      bore: { diameter: 32.385, length: 38.862, mouth: 0 },
      feature: { spline: { standard: 'sae-j499', count: 6, fit: 'B', size: '1-1/2 in' } },
      tooling: { bar: { nose: { width: 0.614 } } },
    })
    expect(both(flow(card)).flatMap(faults)).toEqual([])
    expect(
      allBlocks(card).filter((block) => block.block === 'table' && block.title === 'Slots').length,
    ).toBeGreaterThan(1)
  })

  it('a dial that reads diameter: twice what is missing', () => {
    const text = machineText(specimenCard('butter-churn-gear').card)
    expect(text).toContain('twice the infeed')
    expect(text).toContain('the dial, and twice what is missing')
  })

  it('both ways open: the card of the better one, and a sentence of the other', () => {
    const { card, design: made } = specimenCard('winch-drum-gear')
    expect(made.ways?.recommended).toBe('press')
    expect(machineText(card)).toContain('The over is the across.')
    expect(textOf(card)).toContain(made.ways?.says)
  })
})

describe('on a screen', () => {
  it.each(['cider-mill-pulley', 'chaff-cutter-clutch', 'winch-drum-gear', 'press-slide'])('%s stands alone', (name) => {
    const face = new Uint8Array([1, 2, 3])
    const html = cardHtml(specimenCard(name).card, { regular: face, bold: face })
    expect(html).not.toMatch(/<script|<link|<img|\shref=|\ssrc=|\sstyle=|https?:(?!\/\/www\.w3\.org)/)
    expect(html).toContain('licensed hands')
  })
})

describe('a job that is not sound', () => {
  it('says so with the rules on every side, and gives no gates', () => {
    const { card, design: made } = specimenCard('press-slide')
    expect(made.verdict).toBe('fail')
    expect(card.notSound).toEqual(made.findings.filter(({ verdict }) => verdict === 'fail').map(({ rule }) => rule))
    expect(allBlocks(card).some((block) => block.block === 'table' && ['Gates', 'Passes'].includes(block.title))).toBe(
      false,
    )
    expect(machineText(card)).toContain('No gates are given')
  })

  it.each([
    // A hole wider than its bar; a nose that no projection brings to the floor; teeth as wide as the bore.
    { bar: { diameter: 5, bit: { size: 6 } } },
    { bar: { diameter: 23.9 } },
    {
      press: {
        broach: { ...eightBroach, toothWidth: 30, bodyWidth: 29 },
      },
    },
  ])('writes no number where none can be worked out: %j', (tooling) => {
    const { card, design: made } = worked({ ...doc('cider-mill-pulley'), tooling })
    expect(made.verdict).toBe('fail')
    expect(textOf(card)).not.toMatch(/NaN|Infinity|undefined/)
  })
})

describe('the other unit', () => {
  it('stands small beside lengths where it is asked for, and nowhere else', () => {
    const dual = worked({ ...doc('cider-mill-pulley'), drafting: { dual: true } })
    const bores = machineSides(dual.card)
      .flatMap(({ blocks }) => blocksOf(blocks))
      .flatMap((block) => (block.block === 'table' && block.title === 'Infeed for each bore' ? [block] : []))[0]
    // 24.000 mm and 4.029 mm in inches.
    expect(bores?.rows[0]).toMatchObject({
      cells: [{ number: '24.000', dual: '0.9449' }, { number: '4.029', dual: '0.1586' }, {}],
    })
    expect(JSON.stringify(specimenCard('cider-mill-pulley').card)).not.toContain('"dual"')
    expect(sheets(dual.card)).toBe(2)
    expect(both(flow(dual.card)).flatMap(faults)).toEqual([])
  })
})
