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

let opened: Tools | undefined

/** Kernel and fonts from the files beside the program, each read once, when it is first asked for. */
export const openTools = (): Tools => {
  if (opened !== undefined) return opened
  let kernel: ReturnType<Tools['kernel']> | undefined
  let fonts: ReturnType<Tools['fonts']> | undefined
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
  }
  return opened
}
