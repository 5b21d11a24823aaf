/**
 * Printed no-go for across: the go plug's form, short, on a waist, slack in bore and width. Its form: plug-form.ts.
 */
import type { Design } from '../src/design.ts'
import type { AcrossNoGo } from '../src/dimensions/across-no-go.ts'
import type { Drawing, Notes } from '../src/drawing/view.ts'
import type { Solid } from '../src/solid/solid.ts'
import type { Part } from './part.ts'
import { type PlugSection, plugEnd, plugFront, plugSolid, sectionOf } from './plug-form.ts'
import { asPrinted, goCheck, offsetWords, printedBlock, printingOrder } from './printed.ts'

const gaugeOf = (design: Design): AcrossNoGo => {
  if (!design.acrossNoGo) throw new Error('this design has no no-go for across')
  return design.acrossNoGo
}

const sectionIn = (design: Design, offset = 0): PlugSection =>
  sectionOf(gaugeOf(design), design.section.cornerLimits?.upper ?? design.section.cornerRadius, offset)

const solid = (design: Design): Solid => plugSolid(gaugeOf(design), sectionIn(design, gaugeOf(design).offset))

const notes = (design: Design): readonly Notes[] => {
  const gauge = gaugeOf(design)
  return [
    {
      heading: goCheck(design, gauge.tolerance),
      caution: true,
      lines: [
        ['It must not go in. If it does, the slot is too deep: measure before anything else is done.'],
        ['It is slack in bore and width: only the depth can stop it. Try it at both ends, square, without force.'],
      ],
    },
    printingOrder('Print it standing on the gauging end, nothing under it.', [['Try it against a known size.']]),
    { heading: 'FOR THE PRINTER', lines: [offsetWords(design, gauge.offset)] },
  ]
}

const drawing = (design: Design): Drawing => {
  const gauge = gaugeOf(design)
  return {
    part: 'across-no-go',
    title: 'No go, across',
    number: '41',
    views: [plugFront(gauge, sectionIn(design)), plugEnd(gauge, sectionIn(design))],
    notes: notes(design),
    asMade: {
      heading: 'AS PRINTED, AS FILED: write both down',
      rows: [
        { what: 'Across', limits: asPrinted(design, gauge.across, gauge.tolerance) },
        { what: 'Key width', limits: asPrinted(design, gauge.keyWidth, gauge.tolerance) },
      ],
    },
    block: printedBlock(design, gauge.tolerance),
  }
}

export const acrossNoGo: Part = {
  name: 'across-no-go',
  title: 'No go, across',
  of: 'job',
  belongs: (design) => design.acrossNoGo !== undefined,
  solid,
  prints: (design) => [{ name: 'across-no-go', solid: solid(design) }],
  drawing,
}
