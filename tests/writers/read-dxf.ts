import dxfParser, { type IDxf } from 'dxf-parser'

// Its types promise a default within the default; the module itself is the class.
const Parser = dxfParser as unknown as typeof dxfParser.default

/** A DXF file as a reader not ours sees it. Throws where it sees nothing. */
export function readDxf(source: string): IDxf {
  const file = new Parser().parseSync(source)
  if (!file) throw new Error('the reader made nothing of it')
  return file
}
