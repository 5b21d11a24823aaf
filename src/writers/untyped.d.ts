// The shapes that these packages, which ship no types, are used by.

declare module '@jscad/stl-serializer/CSGToStlb.js' {
  import type { Geom3 } from '@jscad/modeling/src/geometries/types.js'
  const writer: { serializeBinary(solids: readonly Geom3[], report: object): readonly ArrayBuffer[] }
  export default writer
}

declare module '@jscadui/3mf-export' {
  interface PackedFile {
    readonly name: string
    readonly content: string
  }
  export const fileForContentTypes: PackedFile
  export class FileForRelThumbnail implements PackedFile {
    readonly name: string
    readonly content: string
    add3dModel(path: string): void
  }
  export function to3dmodelSimple(
    meshes: readonly {
      readonly id: number
      readonly name: string
      readonly vertices: ArrayLike<number>
      readonly indices: ArrayLike<number>
      readonly transform?: readonly number[]
    }[],
    header: {
      readonly unit: 'millimeter'
      readonly title: string
      readonly application: string
      readonly creationDate: Date | null
    },
    precision: number,
  ): string
}

declare module '@jscad/stl-deserializer' {
  import type { Geom3 } from '@jscad/modeling/src/geometries/types.js'
  const reader: {
    deserialize(how: { readonly output: 'geometry'; readonly filename?: string }, stl: ArrayBufferLike): Geom3 | Geom3[]
  }
  export default reader
}

declare module '@jscad/dxf-serializer' {
  import type { Path2 } from '@jscad/modeling/src/geometries/types.js'
  const writer: { serialize(how: object, ...shapes: readonly Path2[]): readonly string[] }
  export default writer
}
