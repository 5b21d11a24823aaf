import type { Group, Kind, Row } from './row.ts'

const length: Kind = { is: 'length' }
const fine: Kind = { is: 'length', fit: true }

const broach = (rows: readonly Row[]): readonly Row[] =>
  rows.map((row) => ({ ...row, path: `tooling.press.broach.${row.path}` }))

/** A broach as it lies on the bench, and the press that pushes it. */
export const press: readonly Group[] = [
  {
    heading: 'The broach, heights from its back',
    rows: broach([
      { path: 'toothWidth', word: 'Tooth width', kind: fine },
      { path: 'bodyWidth', word: 'Body width', kind: fine },
      { path: 'firstTooth', word: 'First tooth', kind: length },
      { path: 'lastTooth', word: 'Last tooth', kind: length },
      { path: 'pilot', word: 'Pilot', kind: length },
      { path: 'pilotLength', word: 'Pilot length', kind: length },
      { path: 'toothedLength', word: 'Toothed length', kind: length },
      { path: 'teeth', word: 'Teeth', kind: { is: 'number', whole: true } },
      { path: 'overall', word: 'Overall', kind: length },
    ]),
  },
  {
    heading: 'If you can measure them',
    rows: broach([
      { path: 'shoulder', word: 'Shoulder', kind: length },
      { path: 'finishingTeeth', word: 'Finishing teeth', kind: { is: 'number', whole: true } },
      { path: 'heights', word: 'Every tooth’s height', kind: { is: 'list', of: 'lengths' } },
      { path: 'faceAngle', word: 'Face angle', kind: { is: 'angle' } },
      { path: 'gulletArea', word: 'One gullet', kind: { is: 'area' } },
      { path: 'rootHeight', word: 'Root of the first gullet', kind: length },
      { path: 'yield', word: 'Its yield', kind: { is: 'stress' } },
    ]),
  },
  {
    heading: 'The press',
    rows: [
      { path: 'tooling.press.force', word: 'The press gives', kind: { is: 'force' } },
      { path: 'tooling.press.lever.pull', word: 'or pull', kind: { is: 'force' } },
      { path: 'tooling.press.lever.length', word: 'on a handle of', kind: length },
      { path: 'tooling.press.lever.pinion', word: 'Pinion, to the pitch line', kind: length },
      {
        path: 'tooling.press.lever.efficiency',
        word: 'Of that arrives',
        kind: { is: 'number' },
        worked: ({ spec }) => spec.tooling.press?.lever?.efficiency,
      },
      {
        path: 'tooling.press.ram',
        word: 'Its ram is',
        kind: { is: 'word', words: { guided: 'guided', loose: 'loose' } },
        worked: ({ spec }) => spec.tooling.press?.ram,
      },
      { path: 'tooling.press.stroke', word: 'The ram goes', kind: length },
      { path: 'tooling.press.below', word: 'Room under the table', kind: { is: 'length', zero: true } },
      { path: 'tooling.press.daylight', word: 'Table to ram', kind: length },
      { path: 'tooling.press.opening', word: 'Hole in the table', kind: length },
    ],
  },
]
