/** Sizes of the card's lettering, lines and boxes: read at arm's length, written on in pencil. */

/** Points. */
export const body = 10
export const inTable = 9.5
export const note = 8.8
export const large = 11.5
export const dial = 13
export const nameSize = 19
export const small = 8

/** mm: rims and the slotted line, boxes, lines in tables. */
export const heavy = 0.6
export const slotted = 0.35
export const boxed = 0.35
export const thin = 0.15

/** mm: a box to tick; a box to write in, at least; a line to write on. */
export const tickBox = 4.2
export const writeBox = { width: 17, height: 7 }
export const blankLine = 17

/** Matter of a side, mm: with it A4 and Letter break alike. */
export const matter = { width: 186, height: 252 }
