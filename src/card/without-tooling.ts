/** A machine leaf for a job that no tooling was found for: bore and slot, and nothing to cut it with. */
import type { Design } from '../design.ts'
import { onPaper } from '../figures/figure.ts'
import { sectionFigure } from '../figures/section.ts'
import type { Leaf } from './document.ts'
import { measureTheBore } from './measure-bore.ts'
import { measureTheSlot } from './measure-slot.ts'
import { sentenceOf } from './naming.ts'
import { pictured } from './pictures.ts'
import type { Saying } from './saying.ts'

export const withoutTooling = (design: Design, says: Saying): Leaf => ({
  leaf: 'machine',
  title: 'Machine leaf',
  sides: [
    {
      title: 'no tooling yet',
      blocks: [
        { block: 'job', name: design.spec.name, says: sentenceOf(design, says, undefined) },
        {
          block: 'paragraph',
          size: 'large',
          words: 'No bar and no bushing is worked out for this job: the reasons leaf says why, and what would help.',
        },
        {
          block: 'columns',
          columns: [
            { width: 108, blocks: pictured(sectionFigure(design, 'floor', onPaper(108, 100))) },
            { blocks: measureTheBore(design, says, 'press') },
          ],
        },
        ...measureTheSlot(design, says, { pin: true, boxes: true }),
      ],
    },
  ],
})
