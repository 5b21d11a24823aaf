import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import type { Plugin } from 'vite'

/** Something that is shipped without being a module: a folder with its licence in it. */
export interface Shipped {
  readonly name: string
  readonly folder: string
}

interface Package {
  readonly name: string
  readonly version?: string
  readonly license?: string
  readonly author?: string | { readonly name: string }
}

/** The package that a module stands in: the nearest package.json that has a name and a version. Undefined for our own files. */
const folderOf = (module: string): string | undefined => {
  const path = module.replace(/^\0+/, '').replace(/\?.*$/, '')
  if (!path.includes('/node_modules/')) return undefined
  for (let folder = dirname(path); folder.includes('/node_modules/'); folder = dirname(folder)) {
    const own = join(folder, 'package.json')
    if (!existsSync(own)) continue
    const { name, version } = JSON.parse(readFileSync(own, 'utf8')) as Partial<Package>
    if (name !== undefined && version !== undefined) return folder
  }
  return undefined
}

/** The text that a package that says MIT and brings no text is under, as the Open Source Initiative prints it. */
const mit = (holder: string): string => `MIT License

Copyright (c) ${holder}

Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated documentation files (the
"Software"), to deal in the Software without restriction, including without limitation the rights to use, copy, modify, merge, publish,
distribute, sublicense, and/or sell copies of the Software, and to permit persons to whom the Software is furnished to do so, subject to
the following conditions:

The above copyright notice and this permission notice shall be included in all copies or substantial portions of the Software.

THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE WARRANTIES OF
MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR COPYRIGHT HOLDERS BE LIABLE FOR
ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE
SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.`

/** A heading and the licence's text; an error where there is none, for nothing is shipped without. */
const entry = ({ folder, name }: { readonly folder: string; readonly name?: string }): string => {
  const own = join(folder, 'package.json')
  const told = existsSync(own) ? (JSON.parse(readFileSync(own, 'utf8')) as Package) : undefined
  const files = readdirSync(folder).filter((file) => /^(?:licen[cs]e|copying|unlicense|notice|ofl)\b/i.test(file))
  const texts = files.map((file) => readFileSync(join(folder, file), 'utf8').replaceAll('\r\n', '\n').trim())
  const holder = typeof told?.author === 'object' ? told.author.name : told?.author
  if (texts.length === 0 && told?.license === 'MIT') texts.push(mit(holder ?? `the authors of ${told.name}`))
  if (texts.length === 0) throw new Error(`no licence is found in ${folder}`)
  const title = name ?? `${told?.name} ${told?.version}${told?.license === undefined ? '' : ` (${told.license})`}`
  return `## ${title}\n\n${texts.join('\n\n').replaceAll(/^(?=#|---)/gm, ' ')}\n`
}

/**
 * Two plugins that write `licenses.md`: `gather` notes whose modules go into a bundle (the workers' bundles want it too), `write` is for the bundle
 * beside which the file is to stand. In order of names, so that it comes out the same each time.
 */
export const licences = (shipped: readonly Shipped[]): { readonly gather: Plugin; readonly write: Plugin } => {
  const folders = new Set<string>()
  const note: NonNullable<Plugin['generateBundle']> = (_, bundle) => {
    for (const chunk of Object.values(bundle))
      if (chunk.type === 'chunk')
        for (const module of chunk.moduleIds) {
          const folder = folderOf(module)
          if (folder !== undefined) folders.add(folder)
        }
  }
  return {
    gather: { name: 'gather-licences', generateBundle: note },
    write: {
      name: 'write-licences',
      generateBundle: {
        order: 'post',
        handler(...given) {
          note.apply(this, given)
          const entries = [...[...folders].map((folder) => entry({ folder })), ...shipped.map(entry)]
          const source = [
            '# Licences',
            'What is carried in these files and was made by others, under their own licences.',
            ...[...new Set(entries)].toSorted(),
          ].join('\n\n')
          this.emitFile({ type: 'asset', fileName: 'licenses.md', source })
        },
      },
    },
  }
}
