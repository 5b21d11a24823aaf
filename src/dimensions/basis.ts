/** Why each dimension is what it is: one reason a dimension, or it does not compile. */
export type Basis<D> = { readonly [K in keyof D]-?: string }

/** Dimensions of one part together with their reasons; a search puts none into words, so that a part it asks much for gives them by a getter. */
export interface Reasoned<D> {
  readonly sizes: D
  readonly basis: Basis<D>
}

/** Reasons of the sizes that stand one level down, by path: `socket.vertex`. */
export const within = <D extends object>(name: string, sizes: D, reasons: Basis<D>): Readonly<Record<string, string>> =>
  Object.fromEntries(
    Object.entries<string>(reasons)
      .filter(([key]) => key in sizes)
      .map(([key, why]) => [`${name}.${key}`, why]),
  )
