/** One thing wrong with what was read. Printing is elsewhere. */
export interface Complaint {
  /** `feature.keyway.width`; empty for the whole document. */
  readonly path: string
  /** Where in the text it stands, where the text itself is at fault: `line 4, column 1`. */
  readonly at?: string
  /** What was read, as text: `"8 furlongs"`. */
  readonly read: string
  /** What is accepted, a plain phrase. */
  readonly accepted: string
  /** A near miss: the key or word that was probably meant. */
  readonly meant?: string
}
