// polygon-clipping's module form is CommonJS with a default export that its types do not tell of.
import clipping, { type MultiPolygon, type Polygon, type Ring } from 'polygon-clipping'

export type { MultiPolygon, Polygon, Ring }

export const difference = (from: MultiPolygon, ...less: (Polygon | MultiPolygon)[]): MultiPolygon =>
  clipping.difference(from, ...less)
export const union = (first: Polygon | MultiPolygon, ...more: (Polygon | MultiPolygon)[]): MultiPolygon =>
  clipping.union(first, ...more)
export const intersection = (first: MultiPolygon, other: MultiPolygon): MultiPolygon =>
  clipping.intersection(first, other)
