/**
 * A PDF that is written page by page: no clock, no scaling when it is printed, and nothing compressed, since every release of a compressor packs
 * differently and the same pages shall give the same bytes everywhere. Objects are numbered and ordered as pdfkit does, which a test holds it to.
 */
import { oneLine } from './marks.ts'
import { md5 } from './md5.ts'
import { type Embedded, embedded, putFace, type SetText, setIn } from './pdf-face.ts'
import { bytesOf, dictionary, type Entries, list, literal, number, to } from './pdf-objects.ts'
import { metadataOf } from './pdf-metadata.ts'
import { openFace } from './true-type.ts'

/** PDF points for one millimetre. */
export const point = 72 / 25.4
export const round = (value: number): number => Math.round(value * 1e4) / 1e4

const maker = 'borewright'
/** No clock: every file of ours says the same day. */
const day = { iso: '2000-01-01T00:00:00Z', pdf: '(D:20000101000000Z)', ms: Date.UTC(2000, 0, 1) }

/** The first objects of every document. */
const tree = 1
const names = 2
const root = 3

export class PdfDocument {
  readonly outline: Outline
  private readonly title: string
  private readonly preferences: number
  private readonly faces: ReadonlyMap<string, Embedded>
  private readonly written: (string | Uint8Array)[] = []
  private length = 0
  /** Where each object stands, by its number less one. */
  private readonly places: number[] = [0, 0, 0]
  private readonly pages: number[] = []
  private open: Page | undefined

  /**
   * A document without a page yet, true to scale: viewers are asked not to fit it to the paper.
   * @param faces TrueType files by the name they are used by; the letters used are embedded.
   */
  constructor(title: string, faces: Readonly<Record<string, Uint8Array>>) {
    this.title = oneLine(title)
    this.outline = new Outline(this)
    this.preferences = this.reserved()
    this.faces = new Map(
      Object.entries(faces).map(([name, file], at) => [name, embedded(openFace(file), `F${at + 1}`)] as const),
    )
    this.add('%PDF-1.7\n%\xff\xff\xff\xff\n')
  }

  /** The number of an object that is to be put later. */
  reserved(): number {
    return this.places.push(0)
  }

  /** Writes an object; a stream comes with its length. */
  put(object: number, is: Entries | string, stream?: string | Uint8Array): void {
    this.places[object - 1] = this.length
    const entries = stream === undefined || typeof is === 'string' ? is : { ...is, Length: stream.length }
    this.add(`${object} 0 obj\n${typeof entries === 'string' ? entries : dictionary(entries)}\n`)
    if (stream !== undefined) {
      this.add('stream\n')
      this.add(stream)
      this.add('\nendstream\n')
    }
    this.add('endobj\n')
  }

  private add(piece: string | Uint8Array): void {
    this.written.push(piece)
    this.length += piece.length
  }

  /** Ends the page before it and begins one, points wide and high. */
  page(width: number, height: number): Page {
    this.endPage()
    this.open = new Page(this, width, height)
    this.pages.push(this.open.object)
    return this.open
  }

  private endPage(): void {
    const page = this.open
    if (!page) return
    const { object, contents, resources, width, height, operators } = page
    this.put(object, {
      Type: '/Page',
      Parent: to(tree),
      MediaBox: list([0, 0, number(width), number(height)]),
      Contents: to(contents),
      Resources: to(resources),
      UserUnit: 1,
    })
    const fonts = [...page.faces].map((face) => [face.name, to(face.object)] as const)
    this.put(resources, {
      ProcSet: '[/PDF /Text /ImageB /ImageC /ImageI]',
      ...(fonts.length > 0 && { Font: dictionary(Object.fromEntries(fonts)) }),
      ColorSpace: dictionary({}),
    })
    this.put(contents, {}, `${operators.join('\n')}\n`)
  }

  /** What leads to the page that is open. */
  get openPage(): string {
    if (!this.open) throw new RangeError('no page to lead to')
    return to(this.open.object)
  }

  /** A text set in the face of that name. */
  set(face: string, text: string): SetText {
    const found = this.faces.get(face)
    if (!found) throw new RangeError(`no face '${face}'`)
    return setIn(found, text)
  }

  /** Ends the last page and the document. */
  end(): Uint8Array {
    this.endPage()
    const information = this.reserved()
    const said = {
      Producer: literal(maker),
      Creator: literal(maker),
      CreationDate: day.pdf,
      Title: literal(this.title),
    }
    const objects = Object.entries(said).map(([key, value]) => {
      const object = this.reserved()
      this.put(object, value)
      return [key, to(object)] as const
    })
    this.put(information, Object.fromEntries(objects))
    for (const face of this.faces.values()) if (face.object > 0) putFace(this, face)
    const outlines = this.outline.write()
    const metadata = this.reserved()
    const about = metadataOf(this.title, maker, day.iso)
    this.put(metadata, { length: about.length, Type: '/Metadata', Subtype: '/XML' }, new TextEncoder().encode(about))
    this.put(root, {
      Type: '/Catalog',
      Pages: to(tree),
      Names: to(names),
      Lang: '(en)',
      ViewerPreferences: to(this.preferences),
      Outlines: outlines,
      PageMode: '/UseOutlines',
      Metadata: to(metadata),
    })
    this.put(tree, { Type: '/Pages', Count: this.pages.length, Kids: list(this.pages.map(to)) })
    this.put(names, { Dests: '<<\n  /Names [\n]\n>>' })
    this.put(this.preferences, { PrintScaling: '/None' })
    this.endFile(information)
    return bytesOf(this.written, this.length)
  }

  private endFile(information: number): void {
    const from = this.length
    const size = this.places.length + 1
    const places = this.places.map((place) => `${String(place).padStart(10, '0')} 00000 n \n`)
    const id = `<${md5(new TextEncoder().encode(this.identity()))}>`
    const trailer = dictionary({ Size: size, Root: to(root), Info: to(information), ID: list([id, id]) })
    this.add(`xref\n0 ${size}\n0000000000 65535 f \n${places.join('')}trailer\n${trailer}\nstartxref\n${from}\n%%EOF\n`)
  }

  /** What the document is told apart from others by. */
  private identity(): string {
    return `${day.ms}\nProducer: ${maker}\nCreator: ${maker}\nCreationDate: ${day.ms}\nTitle: ${this.title}\n`
  }
}

/**
 * What is drawn on a page: points from its upper left corner, x to the right and y down, black. Numbers are written as they come: callers round
 * them.
 */
export class Page {
  readonly operators: string[]
  readonly faces = new Set<Embedded>()
  readonly contents: number
  readonly resources: number
  readonly object: number
  readonly width: number
  readonly height: number
  /** Turns y down, from the page's lower left corner, and up again. */
  private readonly over: string
  private readonly document: PdfDocument

  constructor(document: PdfDocument, width: number, height: number) {
    this.document = document
    this.contents = document.reserved()
    this.resources = document.reserved()
    this.object = document.reserved()
    this.width = width
    this.height = height
    this.over = `1 0 0 -1 0 ${number(height)} cm`
    this.operators = [this.over]
  }

  moveTo([x, y]: Point): void {
    this.operators.push(`${x} ${y} m`)
  }

  lineTo([x, y]: Point): void {
    this.operators.push(`${x} ${y} l`)
  }

  /** A cubic curve by its two handles and its end. */
  curveTo([ax, ay]: Point, [bx, by]: Point, [x, y]: Point): void {
    this.operators.push(`${ax} ${ay} ${bx} ${by} ${x} ${y} c`)
  }

  rectangle([x, y]: Point, width: number, height: number): void {
    this.operators.push(`${x} ${y} ${width} ${height} re`)
  }

  close(): void {
    this.operators.push('h')
  }

  fill(): void {
    this.operators.push('f')
  }

  stroke(): void {
    this.operators.push('S')
  }

  lineWidth(width: number): void {
    this.operators.push(`${width} w`)
  }

  lineCap(cap: 'butt' | 'round'): void {
    this.operators.push(cap === 'round' ? '1 J' : '0 J')
  }

  save(): void {
    this.operators.push('q')
  }

  restore(): void {
    this.operators.push('Q')
  }

  /** Turns what is drawn next a quarter counter-clockwise round a point. */
  turn([x, y]: Point): void {
    this.operators.push(`0 -1 1 0 ${number(x - y)} ${number(x + y)} cm`)
  }

  /** Text from the left end of its baseline, `size` points; `stretch` is a percentage of its width. */
  text({ face, codes }: SetText, size: number, [x, y]: Point, stretch = 100): void {
    if (face.object === 0) face.object = this.document.reserved()
    this.faces.add(face)
    this.operators.push('q', this.over, 'BT', `1 0 0 1 ${x} ${number(this.height - y)} Tm`, `/${face.name} ${size} Tf`)
    if (stretch !== 100) this.operators.push(`${stretch} Tz`)
    this.operators.push(`[<${codes}> 0] TJ`, 'ET', 'Q')
  }
}

type Point = readonly [x: number, y: number]

/** What a document lists of itself: an entry, and those under it. */
export class Outline {
  private readonly document: PdfDocument
  private readonly object: number
  private readonly own: Entries
  private readonly under: Outline[] = []

  constructor(document: PdfDocument, own: Entries = {}) {
    this.document = document
    this.object = document.reserved()
    this.own = own
  }

  /** An entry under this one that leads to the page that is open. */
  add(title: string): Outline {
    const own = { Dest: list([this.document.openPage, '/Fit']), Parent: to(this.object), Title: literal(title) }
    const entry = new Outline(this.document, own)
    this.under.push(entry)
    return entry
  }

  /** Writes what is under it, then itself with its neighbours. */
  write(neighbours: Entries = {}): string {
    this.under.forEach((entry, at) => {
      const [before, after] = [this.under[at - 1], this.under[at + 1]]
      entry.write({ ...(before && { Prev: to(before.object) }), ...(after && { Next: to(after.object) }) })
    })
    const [first, last] = [this.under[0], this.under.at(-1)]
    const ends = first && last && { First: to(first.object), Last: to(last.object) }
    this.document.put(this.object, { ...this.own, ...neighbours, ...ends })
    return to(this.object)
  }
}
