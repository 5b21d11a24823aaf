/**
 * Printed go plug for the finished bore and keyway, with a handle. Its form: plug-form.ts.
 */
import type { Design } from '../src/design.ts'
import { takesPlug } from '../src/dimensions/plug-gauge.ts'
import type { AsMadeRow, Drawing, Notes } from '../src/drawing/view.ts'
import type { Solid } from '../src/solid/solid.ts'
import type { Part } from './part.ts'
import { contour, type PlugSection, plugEnd, plugFront, plugSolid, sectionOf } from './plug-form.ts'
import { asPrinted, goCheck, offsetWords, printedBlock, proud } from './printed.ts'
import { plain } from './wording.ts'

export { contour }

/** Section as finished, or with the printer's offset taken off all round. */
export const plugSection = ({ plug, section }: Design, offset = 0): PlugSection =>
  sectionOf(plug, section.cornerLimits?.upper ?? section.cornerRadius, offset)

const solid = (design: Design): Solid => plugSolid(design.plug, plugSection(design, design.plug.offset))

const notes = (design: Design): readonly Notes[] => [
  {
    heading: goCheck(design, design.plug.tolerance),
    caution: true,
    lines: [
      ['If it does not enter, the slot is too small or out of line. If it enters, measure. Not for class fits.'],
      ...(design.section.at.length > 1
        ? [['One key: try it in each slot; it says nothing of the angle between them.']]
        : []),
      ['Never drive it in, never turn a machine with it in the bore.'],
    ],
  },
  {
    heading: 'ORDER OF WORK',
    numbered: true,
    lines: [
      ['Print it standing on the entering end, nothing under it.'],
      ['Let it cool. Measure at both ends.'],
      ['Over size: file. Under: correct the offset, print again.'],
      ['Try it first in a bore that is known.'],
    ],
  },
  {
    heading: 'FOR THE PRINTER',
    lines: [
      offsetWords(design, design.plug.offset),
      [`On the handle: ${design.plug.marking.join(', ')}. The letters stand `, plain(proud), ' proud.'],
    ],
  },
]

const asMade = (design: Design): readonly AsMadeRow[] => {
  const { plug } = design
  return [
    { what: 'Plug Ø, printed / filed', limits: asPrinted(design, plug.diameter, plug.tolerance) },
    { what: 'Key width, printed / filed', limits: asPrinted(design, plug.keyWidth, plug.tolerance) },
    { what: 'Across, printed / filed', limits: asPrinted(design, plug.across, plug.tolerance) },
  ]
}

const drawing = (design: Design): Drawing => ({
  part: 'plug-gauge',
  title: 'Plug gauge',
  number: '40',
  views: [plugFront(design.plug, plugSection(design)), plugEnd(design.plug, plugSection(design))],
  notes: notes(design),
  asMade: { heading: 'AS PRINTED, AS FILED: write both down', rows: asMade(design) },
  block: printedBlock(design, design.plug.tolerance),
})

export const plugGauge: Part = {
  name: 'plug-gauge',
  title: 'Plug gauge',
  of: 'job',
  belongs: ({ section }) => takesPlug(section),
  solid,
  prints: (design) => [{ name: 'plug-gauge', solid: solid(design) }],
  drawing,
}
