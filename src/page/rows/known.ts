import { type Asked, featureOf, type Group, type Kind, type Row } from './row.ts'

const length: Kind = { is: 'length' }
const fine: Kind = { is: 'length', fit: true }
const zero: Kind = { is: 'length', zero: true }
const limits: Kind = { is: 'limits' }
const zeroLimits: Kind = { is: 'limits', zero: true }
const force: Kind = { is: 'force' }
const count: Kind = { is: 'number', whole: true }
const words = (words: Readonly<Record<string, string>>): Kind => ({ is: 'word', words })
const yes: Kind = { is: 'flag' }

const under = (above: string, rows: readonly Row[], more: Partial<Row> = {}): readonly Row[] =>
  rows.map((row) => ({ ...row, path: `${above}.${row.path}`, ...more }))

const of = (kind: string, rows: readonly Row[]): readonly Row[] =>
  under(`feature.${kind}`, rows).map((row) => ({
    ...row,
    when: (job) => featureOf(job) === kind && (row.when?.(job) ?? true),
  }))

const isBlind = (job: Asked): boolean => job.has('bore.blind')

const bore: Group = {
  heading: 'The bore',
  rows: [
    { path: 'bore.diameter', word: 'Bore', kind: length },
    { path: 'bore.tolerance', word: 'Limits', kind: { is: 'tolerance' }, worked: ({ spec }) => spec.bore.tolerance },
    { path: 'bore.measured', word: 'As measured', kind: fine },
    { path: 'bore.length', word: 'Length', kind: length },
    { path: 'bore.mouth', word: 'Chamfer at the mouth', kind: zero, worked: ({ spec }) => spec.bore.mouth },
    { path: 'bore.blind', word: 'Far end', kind: { is: 'presence', without: 'open', within: 'blind' } },
    { path: 'bore.blind.beyond', word: 'Beyond the cut', kind: zero, when: isBlind },
    { path: 'bore.blind.relief.diameter', word: 'Relief across', kind: length, when: isBlind },
    { path: 'bore.blind.relief.length', word: 'Relief long', kind: length, when: isBlind },
    { path: 'bore.chromed', word: 'Hard-chromed', kind: yes, seldom: true },
  ],
}

const byHand = (job: Asked): boolean =>
  ['width', 'height', 'across', 'depth'].some((name) => job.has(`feature.keyway.${name}`))

const keyway = of('keyway', [
  {
    path: 'standard',
    word: 'From',
    kind: words({ 'iso-773': 'ISO 773', 'asme-b17.1': 'ASME B17.1' }),
    worked: ({ spec: { feature } }) => (feature.kind === 'keyway' ? feature.standard : undefined),
  },
  {
    path: 'form',
    word: 'Form',
    kind: words({ square: 'square', rectangular: 'rectangular' }),
    worked: ({ spec: { feature } }) =>
      feature.kind === 'keyway' && feature.taper === undefined ? feature.form : undefined,
    when: (job) => job.at('units') === 'in' || job.at('feature.keyway.standard') === 'asme-b17.1',
  },
  {
    path: 'fit',
    word: 'Fit',
    kind: words({ normal: 'normal', tight: 'tight', sliding: 'sliding', 'class 1': 'class 1', 'class 2': 'class 2' }),
    worked: ({ spec: { feature } }) =>
      feature.kind === 'keyway' && feature.standard !== undefined ? feature.fit : undefined,
    when: (job) => !byHand(job) || job.has('feature.keyway.standard') || job.has('feature.keyway.fit'),
  },
  { path: 'width', word: 'Width', kind: limits, worked: ({ section }) => section.width },
  { path: 'height', word: 'Height of the key', kind: limits, worked: ({ section }) => section.key?.height?.nominal },
  { path: 'across', word: 'Across', kind: limits, worked: ({ section }) => section.across },
  { path: 'at', word: 'At', kind: { is: 'angles' }, worked: ({ section }) => section.at },
  {
    path: 'depth.crown',
    word: 'or depth from the crown',
    kind: limits,
    worked: ({ section }) => section.crownDepth,
    seldom: true,
  },
  {
    path: 'depth.side',
    word: 'or depth at the side',
    kind: limits,
    worked: ({ section }) => section.sideDepth,
    seldom: true,
  },
  { path: 'corner', word: 'Corners', kind: zeroLimits, worked: ({ section }) => section.cornerRadius, seldom: true },
  { path: 'taper', word: 'For a taper key', kind: words({ '1:96': '1:96', '1:100': '1:100' }), seldom: true },
  { path: 'found.offset', word: 'Found off the middle by', kind: zero, seldom: true },
  { path: 'found.lead', word: 'Found out of line by', kind: zero, seldom: true },
])

const spline = of('spline', [
  { path: 'standard', word: 'From', kind: words({ 'iso-14': 'ISO 14', 'sae-j499': 'SAE J499' }) },
  { path: 'size', word: 'Size', kind: { is: 'text' } },
  { path: 'fit', word: 'Fit', kind: words({ A: 'A, permanent', B: 'B, sliding idle', C: 'C, sliding loaded' }) },
  { path: 'count', word: 'How many', kind: count, worked: ({ section }) => section.at.length },
  { path: 'width', word: 'Width', kind: limits, worked: ({ section }) => section.width },
  { path: 'major', word: 'Over the floors', kind: limits, worked: ({ section }) => 2 * section.floor },
  { path: 'at', word: 'First at', kind: { is: 'angle' }, worked: ({ section }) => section.at[0] },
  { path: 'corner', word: 'Corners', kind: zeroLimits, worked: ({ section }) => section.cornerRadius, seldom: true },
  { path: 'treated', word: 'Hardened after', kind: yes, seldom: true },
])

const socket = of('socket', [
  { path: 'sides', word: 'Sides', kind: count },
  { path: 'across', word: 'Across flats', kind: limits },
  { path: 'tip', word: 'Tip of the nose', kind: zero },
  { path: 'at', word: 'A corner at', kind: { is: 'angle' }, worked: ({ section }) => section.at[0] },
])

const slit = of('slit', [
  { path: 'width', word: 'Width', kind: limits },
  { path: 'count', word: 'How many', kind: count, worked: ({ section }) => section.at.length },
  { path: 'outside', word: 'Outside of the wall', kind: length },
  { path: 'at', word: 'First at', kind: { is: 'angle' }, worked: ({ section }) => section.at[0] },
])

const groove = of('groove', [
  { path: 'radius', word: 'Radius', kind: length },
  { path: 'depth', word: 'Depth', kind: limits },
  { path: 'at', word: 'At', kind: { is: 'angles' }, worked: ({ section }) => section.at },
])

const feature: Group = {
  heading: 'What goes in it',
  rows: [
    {
      path: 'feature',
      word: 'Feature',
      kind: {
        is: 'branch',
        words: { keyway: 'keyway', spline: 'splines', socket: 'socket', slit: 'slits', groove: 'oil groove' },
      },
    },
    ...keyway,
    ...spline,
    ...socket,
    ...slit,
    ...groove,
  ],
}

const keyAndShaft: Group = {
  heading: 'The key and the shaft',
  seldom: true,
  when: (job) => ['keyway', 'spline'].includes(featureOf(job)) || job.has('shaft'),
  rows: [
    ...of('keyway', [
      { path: 'key.length', word: 'Key, over all', kind: length },
      { path: 'key.ends', word: 'Its ends', kind: words({ square: 'square', round: 'round' }) },
      { path: 'key.height', word: 'Its height', kind: limits },
      { path: 'key.chamfer', word: 'Its edges broken by', kind: zeroLimits },
      { path: 'key.material', word: 'Its metal', kind: { is: 'text' } },
      { path: 'key.yield', word: 'or its yield', kind: { is: 'stress' } },
    ]),
    { path: 'shaft.diameter', word: 'Shaft', kind: limits },
    { path: 'shaft.across', word: 'Keyseat, across', kind: limits },
    { path: 'shaft.break', word: 'Its edges broken by', kind: zero },
    { path: 'shaft.material', word: 'Its metal', kind: { is: 'text' } },
    { path: 'shaft.yield', word: 'or its yield', kind: { is: 'stress' } },
  ],
}

const hub: Group = {
  heading: 'The hub',
  rows: [
    { path: 'hub.outside', word: 'Outside', kind: length },
    {
      path: 'hub.material',
      word: 'Metal',
      kind: { is: 'text', offered: 'materials' },
      worked: ({ spec }) => spec.hub.material,
    },
    { path: 'load.torque', word: 'Torque to carry', kind: { is: 'torque' } },
    { path: 'load.service', word: 'Service factor', kind: { is: 'number' }, worked: ({ spec }) => spec.load?.service },
    { path: 'use', word: 'What it is for', kind: { is: 'text', long: true } },
    { path: 'hub.hardness', word: 'Hardness, HRC', kind: { is: 'number' }, seldom: true },
  ],
}

const isLathe = (job: Asked): boolean => job.at('tooling.bar.machine') !== 'mill'

const machine: Group = {
  heading: 'The machine',
  rows: under('tooling.bar', [
    {
      path: 'machine',
      word: 'Cut on',
      kind: { is: 'text', offered: 'machines' },
      worked: ({ asked }) => asked?.machine,
    },
    { path: 'dial.mark', word: 'One dial mark', kind: fine, worked: ({ asked }) => asked?.dial.mark },
    {
      path: 'dial.reads',
      word: 'The dial reads',
      kind: words({ travel: 'travel', diameter: 'diameter' }),
      worked: ({ asked }) => asked?.dial.reads,
    },
    { path: 'behind', word: 'Open behind the hub', kind: zero, worked: ({ asked }) => asked?.behind },
    { path: 'opening', word: 'Hole behind the hub', kind: length, seldom: true },
    {
      path: 'give',
      word: 'Give of the machine',
      kind: { is: 'stiffness' },
      worked: ({ loads }) => loads?.machineGive,
      why: 'loads.machineGive',
    },
    { path: 'pull.force', word: 'or pulled at the nose by', kind: force, seldom: true },
    { path: 'pull.moves', word: 'it comes along', kind: fine, seldom: true },
    { path: 'dial.slide', word: 'Slide set over to', kind: { is: 'angle' }, seldom: true },
    {
      path: 'points',
      word: 'The nose points to the',
      kind: words({ back: 'back', front: 'front' }),
      worked: ({ asked }) => asked?.points,
      when: isLathe,
      seldom: true,
    },
    {
      path: 'stroke',
      word: 'The cut is',
      kind: words({ push: 'pushed', pull: 'pulled' }),
      worked: ({ asked }) => asked?.stroke,
      seldom: true,
    },
    {
      path: 'hold',
      word: 'Spindle held by',
      kind: words({ lock: 'lock', gear: 'gear', belt: 'belt', hand: 'hand' }),
      worked: ({ asked }) => asked?.hold,
      seldom: true,
    },
    { path: 'travel', word: 'It strokes', kind: length, worked: ({ asked }) => asked?.travel, seldom: true },
    { path: 'thrust', word: 'Pushes at most', kind: force, worked: ({ asked }) => asked?.thrust, seldom: true },
    { path: 'handle.radius', word: 'Handle, radius', kind: length, seldom: true },
    { path: 'handle.travel', word: 'Stroke for one turn', kind: length, seldom: true },
    { path: 'rack.module', word: 'Rack, module', kind: length, seldom: true },
    { path: 'rack.width', word: 'Rack, face width', kind: length, seldom: true },
    {
      path: 'work.held',
      word: 'Work held in',
      kind: words({ chuck: 'chuck', vise: 'vise', strap: 'strap' }),
      worked: ({ asked }) => asked?.work?.held,
      seldom: true,
    },
    { path: 'work.jaws', word: 'One jaw presses', kind: force, worked: ({ asked }) => asked?.work?.jaws, seldom: true },
    { path: 'work.stop', word: 'The stop bears', kind: force, worked: ({ asked }) => asked?.work?.stop, seldom: true },
    { path: 'work.support', word: 'Stands on, from the axis', kind: length, seldom: true },
    { path: 'work.above', word: 'Stands above the jaws', kind: length, seldom: true },
    {
      path: 'work.clamp',
      word: 'The clamp holds',
      kind: force,
      worked: ({ asked }) => asked?.work?.clamp,
      seldom: true,
    },
  ]),
}

const index: Group = {
  heading: 'Turned from slot to slot',
  seldom: true,
  rows: under('tooling.index', [
    {
      path: 'by',
      word: 'By a',
      kind: words({ 'dividing head': 'dividing head', gear: 'gear', plate: 'plate' }),
    },
    { path: 'ratio', word: 'Turns for one of the work', kind: count },
    { path: 'circles', word: 'Holes in its circles', kind: { is: 'list', of: 'counts' } },
    { path: 'gear', word: 'Teeth of the spindle gear', kind: count },
    { path: 'plate.radius', word: 'Own plate, to the holes', kind: length },
    { path: 'plate.hole', word: 'a hole is off by at most', kind: zero },
    { path: 'eccentric', word: 'Bore off the axis by', kind: zero },
    { path: 'play', word: 'Play of the mating teeth', kind: zero },
  ]),
}

const drawings: Group = {
  heading: 'The drawings',
  seldom: true,
  rows: under('drafting', [
    {
      path: 'convention',
      word: 'Drawn by',
      kind: words({ iso: 'ISO', asme: 'ASME' }),
      worked: ({ spec }) => spec.drafting.convention,
    },
    {
      path: 'paper',
      word: 'Paper',
      kind: words({ A4: 'A4', Letter: 'Letter' }),
      worked: ({ spec }) => spec.drafting.paper,
    },
    {
      path: 'projection',
      word: 'Projection',
      kind: words({ first: 'first angle', third: 'third angle' }),
      worked: ({ spec }) => spec.drafting.projection,
    },
    { path: 'dual', word: 'Other unit on the card', kind: yes },
  ]),
}

/** What the machinist knows, in the order in which it is asked for at a bench. */
export const known: readonly Group[] = [bore, feature, hub, machine, keyAndShaft, index, drawings]
