/** The bar as it stands in its bore at the end of the stroke: what is to be made, where it will be. */
import type { Design } from '../design.ts'
import { onPaper } from '../figures/figure.ts'
import { lengthwise } from '../figures/lengthwise.ts'
import type { Block } from './document.ts'
import { pictured } from './pictures.ts'

export const barViewOf = (design: Design): readonly Block[] => pictured(lengthwise(design, onPaper(186, 70), 'floor'))
