/** Why each dimension is what it is: one reason a dimension, or it does not compile. */
export type Basis<D> = { readonly [K in keyof D]-?: string }

/** Dimensions of one part together with their reasons. */
export interface Reasoned<D> {
  readonly sizes: D
  readonly basis: Basis<D>
}
