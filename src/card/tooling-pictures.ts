/** Pictures of the tooling leaf: what is to be made, where it will be. */
import type { Design } from '../design.ts'
import { onPaper } from '../figures/figure.ts'
import { lengthwise } from '../figures/lengthwise.ts'
import { touchAndFloor } from '../figures/touch-and-floor.ts'
import type { Block } from './document.ts'
import { pictured, scaleSaid } from './pictures.ts'

/** The bar along its bore at the end of the stroke; mm of paper that it may be high. */
export const barViewOf = (design: Design, height = 70): readonly Block[] =>
  pictured(lengthwise(design, onPaper(186, height), 'floor'))

/** The bar across its bore, drawn back and at full depth, with what is left free; mm of paper that it may take. */
export const inTheBore = (design: Design, width: number, height: number): readonly Block[] => {
  const figure = touchAndFloor(design, onPaper(width, height))
  return figure ? [{ block: 'heading', text: 'In the bore', beside: scaleSaid(figure) }, ...pictured(figure)] : []
}
