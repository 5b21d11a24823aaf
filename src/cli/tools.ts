import { existsSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import type { Tools } from '../make.ts'

// Beside the bundled program; in the package that they come from when run from the sources.
const found = (name: string, within: string): string => {
  const beside = fileURLToPath(new URL(name, import.meta.url))
  return existsSync(beside) ? beside : fileURLToPath(new URL(`../../node_modules/${within}/${name}`, import.meta.url))
}
const bytes = async (name: string, within: string): Promise<Uint8Array> =>
  new Uint8Array(await readFile(found(name, within)))
const face = (name: string): Promise<Uint8Array> => bytes(name, 'dejavu-fonts-ttf/ttf')

// The card's face: beside the bundled program, or where it lies among the sources.
const cardFace = async (name: string): Promise<Uint8Array> => {
  const beside = fileURLToPath(new URL(name, import.meta.url))
  const path = existsSync(beside) ? beside : fileURLToPath(new URL(`../writers/faces/${name}`, import.meta.url))
  return new Uint8Array(await readFile(path))
}

let opened: Tools | undefined

/** Kernel, fonts and faces from the files beside the program, each read once, when it is first asked for. */
export const openTools = (): Tools => {
  if (opened !== undefined) return opened
  let kernel: ReturnType<Tools['kernel']> | undefined
  let fonts: ReturnType<Tools['fonts']> | undefined
  let faces: ReturnType<Tools['faces']> | undefined
  opened = {
    kernel: () => {
      kernel ??= (async () => {
        const { openKernel } = await import('../solid/mesh.ts')
        return openKernel(await bytes('manifold.wasm', 'manifold-3d'))
      })()
      return kernel
    },
    fonts: () => {
      fonts ??= (async () => ({
        regular: await face('DejaVuSansCondensed.ttf'),
        bold: await face('DejaVuSansCondensed-Bold.ttf'),
      }))()
      return fonts
    },
    faces: () => {
      faces ??= (async () => ({
        print: {
          regular: await cardFace('AtkinsonHyperlegibleNext-Regular.ttf'),
          bold: await cardFace('AtkinsonHyperlegibleNext-Bold.ttf'),
        },
        web: {
          regular: await cardFace('AtkinsonHyperlegibleNext-Regular.woff2'),
          bold: await cardFace('AtkinsonHyperlegibleNext-Bold.woff2'),
        },
      }))()
      return faces
    },
  }
  return opened
}
