/** The face of the drawings: DejaVu Sans Condensed as TrueType files, upright and bold; the letters used are embedded. */
export interface Fonts {
  readonly regular: Uint8Array
  readonly bold: Uint8Array
}
