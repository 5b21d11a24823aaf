import { featureOf, type Group, type Kind, type Row } from './row.ts'

const length: Kind = { is: 'length' }
const zero: Kind = { is: 'length', zero: true }
const limits: Kind = { is: 'limits' }
const angles: Kind = { is: 'angles' }
const words = (words: Readonly<Record<string, string>>): Kind => ({ is: 'word', words })

const of = (kind: string, rows: readonly Row[]): readonly Row[] =>
  rows.map((row) => ({
    ...row,
    path: `feature.${kind}.${row.path}`,
    when: (job) => featureOf(job) === kind && (row.when?.(job) ?? true),
  }))

const bore: Group = {
  heading: 'The bore',
  rows: [
    { path: 'bore.diameter', word: 'Bore', kind: length },
    { path: 'bore.tolerance', word: 'Limits', kind: { is: 'tolerance' }, worked: ({ spec }) => spec.bore.tolerance },
    { path: 'bore.measured', word: 'As measured', kind: { is: 'length', fit: true } },
    { path: 'bore.length', word: 'Length', kind: length },
    { path: 'bore.mouth', word: 'Chamfer at the mouth', kind: zero, worked: ({ spec }) => spec.bore.mouth },
    { path: 'bore.blind', word: 'Far end', kind: { is: 'presence', without: 'open', within: 'blind' } },
    { path: 'bore.blind.beyond', word: 'Beyond the cut', kind: zero, when: (job) => job.has('bore.blind') },
    { path: 'bore.blind.relief.diameter', word: 'Relief across', kind: length, when: (job) => job.has('bore.blind') },
    { path: 'bore.blind.relief.length', word: 'Relief long', kind: length, when: (job) => job.has('bore.blind') },
  ],
}

const keyway = of('keyway', [
  {
    path: 'standard',
    word: 'From',
    kind: words({ 'iso-773': 'ISO 773', 'asme-b17.1': 'ASME B17.1' }),
    worked: ({ section }) => section.key?.designation,
  },
  {
    path: 'form',
    word: 'Form',
    kind: words({ square: 'square', rectangular: 'rectangular' }),
    when: (job) => job.at('units') === 'in' || job.at('feature.keyway.standard') === 'asme-b17.1',
  },
  {
    path: 'fit',
    word: 'Fit',
    kind: words({ normal: 'normal', tight: 'tight', sliding: 'sliding', 'class 1': 'class 1', 'class 2': 'class 2' }),
    worked: ({ spec: { feature } }) =>
      feature.kind === 'keyway' && feature.standard !== undefined ? feature.fit : undefined,
  },
  { path: 'width', word: 'Width', kind: limits, worked: ({ section }) => section.width },
  { path: 'height', word: 'Height of the key', kind: limits, worked: ({ section }) => section.key?.height?.nominal },
  { path: 'across', word: 'Across', kind: limits, worked: ({ section }) => section.across },
  { path: 'depth.crown', word: 'or depth from the crown', kind: limits, worked: ({ section }) => section.crownDepth },
  { path: 'depth.side', word: 'or depth at the side', kind: limits, worked: ({ section }) => section.sideDepth },
  {
    path: 'corner',
    word: 'Corners',
    kind: { is: 'limits', zero: true },
    worked: ({ section }) => section.cornerRadius,
  },
  { path: 'at', word: 'At', kind: angles, worked: ({ section }) => section.at },
])

const spline = of('spline', [
  { path: 'standard', word: 'From', kind: words({ 'iso-14': 'ISO 14', 'sae-j499': 'SAE J499' }) },
  { path: 'size', word: 'Size', kind: { is: 'text' } },
  { path: 'fit', word: 'Fit', kind: words({ A: 'A, permanent', B: 'B, sliding idle', C: 'C, sliding loaded' }) },
  { path: 'count', word: 'How many', kind: { is: 'number', whole: true } },
  { path: 'width', word: 'Width', kind: limits, worked: ({ section }) => section.width },
  { path: 'major', word: 'Over the floors', kind: limits },
  {
    path: 'corner',
    word: 'Corners',
    kind: { is: 'limits', zero: true },
    worked: ({ section }) => section.cornerRadius,
  },
  { path: 'at', word: 'First at', kind: angles, worked: ({ section }) => section.at.slice(0, 1) },
])

const socket = of('socket', [
  { path: 'sides', word: 'Sides', kind: { is: 'number', whole: true } },
  { path: 'across', word: 'Across flats', kind: limits },
  { path: 'tip', word: 'Tip of the nose', kind: zero },
  { path: 'at', word: 'A corner at', kind: angles, worked: ({ section }) => section.at.slice(0, 1) },
])

const slit = of('slit', [
  { path: 'width', word: 'Width', kind: limits },
  { path: 'count', word: 'How many', kind: { is: 'number', whole: true } },
  { path: 'outside', word: 'Outside of the wall', kind: length },
  { path: 'at', word: 'At', kind: angles, worked: ({ section }) => section.at },
])

const groove = of('groove', [
  { path: 'radius', word: 'Radius', kind: length },
  { path: 'depth', word: 'Depth', kind: limits },
  { path: 'at', word: 'At', kind: angles, worked: ({ section }) => section.at },
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
    { path: 'hub.hardness', word: 'Hardness, HRC', kind: { is: 'number' } },
    { path: 'load.torque', word: 'Torque to carry', kind: { is: 'torque' } },
    { path: 'load.service', word: 'Service factor', kind: { is: 'number' }, worked: ({ spec }) => spec.load?.service },
    { path: 'use', word: 'What it is for', kind: { is: 'text', long: true } },
  ],
}

const machine: Group = {
  heading: 'The machine',
  rows: [
    {
      path: 'tooling.bar.machine',
      word: 'Cut on',
      kind: words({ lathe: 'lathe', mill: 'mill' }),
      worked: ({ asked }) => asked?.machine,
    },
    {
      path: 'tooling.bar.dial.mark',
      word: 'One dial mark',
      kind: { is: 'length', fit: true },
      worked: ({ asked }) => asked?.dial.mark,
    },
    {
      path: 'tooling.bar.dial.reads',
      word: 'The dial reads',
      kind: words({ travel: 'travel', diameter: 'diameter' }),
      worked: ({ asked }) => asked?.dial.reads,
    },
    { path: 'tooling.bar.behind', word: 'Open behind the hub', kind: zero, worked: ({ asked }) => asked?.behind },
    {
      path: 'tooling.bar.give',
      word: 'Give of the machine',
      kind: { is: 'stiffness' },
      worked: ({ loads }) => loads?.machineGive,
      why: 'loads.machineGive',
    },
    {
      path: 'tooling.bar.points',
      word: 'The nose points to the',
      kind: words({ back: 'back', front: 'front' }),
      worked: ({ asked }) => asked?.points,
    },
    {
      path: 'tooling.bar.stroke',
      word: 'The cut is',
      kind: words({ push: 'pushed', pull: 'pulled' }),
      worked: ({ asked }) => asked?.stroke,
    },
  ],
}

const drawings: Group = {
  heading: 'The drawings',
  rows: [
    {
      path: 'drafting.convention',
      word: 'Drawn by',
      kind: words({ iso: 'ISO', asme: 'ASME' }),
      worked: ({ spec }) => spec.drafting.convention.toUpperCase(),
    },
    {
      path: 'drafting.paper',
      word: 'Paper',
      kind: words({ A4: 'A4', Letter: 'Letter' }),
      worked: ({ spec }) => spec.drafting.paper,
    },
    {
      path: 'drafting.projection',
      word: 'Projection',
      kind: words({ first: 'first angle', third: 'third angle' }),
      worked: ({ spec }) => `${spec.drafting.projection} angle`,
    },
  ],
}

/** What the machinist knows, in the order in which it is asked for at a bench. */
export const known: readonly Group[] = [bore, feature, hub, machine, drawings]
