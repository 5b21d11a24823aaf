import { type Document, isMap, isPair, isScalar, LineCounter, type Pair, parseDocument, visit } from 'yaml'
import { commaPhrase, complaint } from './complain.ts'
import type { Complaint } from './complaint.ts'

/** Far longer than any spec, characters. */
const longest = 200_000
/** Mappings within mappings: a spec has five. */
const deepest = 20
const mostAliases = 20
const mostComplaints = 20
/** Keys by which a document could reach into what it is read with. */
const forbidden = new Set(['__proto__', 'constructor', 'prototype'])

const tooDeep = ['nested too deep', `mappings and lists at most ${deepest} deep`] as const
const fault = (at: string, read: string, accepted: string): Complaint => ({ path: '', at, read, accepted })

type Parsed = { readonly document: unknown } | { readonly complaints: readonly Complaint[] }
type Where = (offset: number | undefined) => string

/**
 * A text, YAML or the JSON within it, as plain data. Refused, with line and column: what cannot be parsed, keys given
 * twice, tags, more than one document, more than a few aliases, numbers in hex or octal, and texts too long or too deep.
 * Never throws.
 */
export function parse(text: string): Parsed {
  if (text.length > longest)
    return { complaints: [complaint('', `${text.length} characters`, `a spec of at most ${longest} characters`)] }
  const steep = steepLine(text)
  if (steep !== undefined) return { complaints: [fault(`line ${steep}`, ...tooDeep)] }
  try {
    return parsed(text.replace(/^\uFEFF/, ''))
  } catch (error) {
    // The parser's own: an alias without its anchor or too many of them, and nesting past the depth of its stack.
    const read = error instanceof RangeError || !(error instanceof Error) ? 'nested too deep' : firstLine(error.message)
    return { complaints: [complaint('', read, 'YAML or JSON, without more than a few aliases')] }
  }
}

/** What to type in place of the commonest slips. */
const meant = (message: string): string =>
  message.startsWith('Tabs are not allowed')
    ? 'spaces before each line: YAML is not indented by tabs'
    : /Implicit keys need to be on a single line|Implicit map keys need to be followed by map values/.test(message)
      ? 'a colon and a space after each key: `name: pulley`'
      : 'YAML or JSON'

function parsed(text: string): Parsed {
  const lines = new LineCounter()
  const tree = parseDocument(text, {
    lineCounter: lines,
    uniqueKeys: false, // looked for below, in one go
    version: '1.2',
    schema: 'core',
    merge: false,
    logLevel: 'error',
    prettyErrors: false, // the place of each is told below; told by the parser, many errors cost their square
  })
  const where: Where = (offset = 0) => {
    const { line, col } = lines.linePos(offset)
    return `line ${Math.max(line, 1)}, column ${Math.max(col, 1)}`
  }
  const errors = [...tree.errors, ...tree.warnings]
  const steep = errors.find((error) => error.message.includes('call stack'))
  if (steep) return { complaints: [fault(where(steep.pos[0]), ...tooDeep)] }
  const faults = errors
    .slice(0, mostComplaints)
    .map((error) =>
      error.code === 'MULTIPLE_DOCS'
        ? fault(where(error.pos[0]), 'a second document', 'one document, one job')
        : fault(where(error.pos[0]), firstLine(error.message), meant(error.message)),
    )
  const complaints = [...faults, ...refusals(tree, where)]
  if (complaints.length > 0) return { complaints: complaints.slice(0, mostComplaints) }
  return { document: tree.toJS({ maxAliasCount: mostAliases }) as unknown }
}

/** What YAML allows and a spec does not. */
function refusals(tree: Document.Parsed, where: Where): readonly Complaint[] {
  const found: Complaint[] = []
  const refuse = (offset: number | undefined, read: string, accepted: string): void => {
    found.push(fault(where(offset), read, accepted))
  }
  visit(tree, {
    Node: (_, node, path) => {
      const at = node.range?.[0]
      if (path.filter((above) => !isPair(above)).length > deepest) {
        refuse(at, ...tooDeep)
        return visit.BREAK
      }
      if (node.tag !== undefined) refuse(at, `the tag ${node.tag}`, 'plain numbers, texts, lists and mappings')
      if (isScalar(node) && (node.format === 'HEX' || node.format === 'OCT'))
        refuse(at, node.source ?? 'a number', 'a decimal number')
      if (isMap(node)) {
        refuseKeys(node.items, refuse)
        if (node.flow) refuseCommas(node.items, refuse)
      }
      return undefined
    },
  })
  return found
}

/** `{ diameter: 24,5 }` is a diameter of 24 and a key 5 with nothing after it: the comma was meant for a decimal one. */
function refuseCommas(
  pairs: readonly Pair[],
  refuse: (offset: number | undefined, read: string, accepted: string) => void,
): void {
  for (const [n, { key, value }] of pairs.entries()) {
    const before = pairs[n - 1]?.value
    const [whole, rest] = [before, key].map((node) =>
      isScalar(node) && node.type === 'PLAIN' ? node.source : undefined,
    )
    const empty = value === null || (isScalar(value) && value.value === null)
    if (
      empty &&
      whole !== undefined &&
      rest !== undefined &&
      /^-?\d+$/.test(whole) &&
      /^\d+(?:\s*[a-z]+)?$/i.test(rest)
    )
      refuse(isScalar(before) ? before.range?.[0] : undefined, `${whole},${rest}`, commaPhrase(`${whole},${rest}`))
  }
}

function refuseKeys(
  pairs: readonly Pair[],
  refuse: (offset: number | undefined, read: string, accepted: string) => void,
): void {
  const met = new Set<string>()
  for (const { key } of pairs) {
    const at = isScalar(key) ? key.range?.[0] : undefined
    if (!isScalar(key) || key.value === null || typeof key.value === 'object') {
      refuse(at, 'a key that is no word', 'keys that are words')
      continue
    }
    const word = String(key.value)
    if (forbidden.has(word)) refuse(at, `the key ${word}`, 'the keys of a spec')
    if (met.has(word)) refuse(at, `the key ${word} a second time`, 'each key once')
    met.add(word)
  }
}

/** Signs of nesting, on one line or left open, that no spec comes near and the parser would choke on. */
const steepest = 100

/** The first line (from 1) that nests past all reason, told from the bare text before the parser sees it. */
function steepLine(text: string): number | undefined {
  let open = 0
  for (const [n, whole] of text.split(/\r\n?|\n/).entries()) {
    const line = whole.replace(/(^|\s)#.*$/, '')
    const edge = line.search(/[^\s?:-]/)
    if ((edge < 0 ? line.length : edge) > steepest) return n + 1
    if ((line.match(/[?:-]\s/g)?.length ?? 0) > steepest) return n + 1
    for (const sign of line) {
      if (sign === '[' || sign === '{') open += 1
      else if ((sign === ']' || sign === '}') && open > 0) open -= 1
      if (open > steepest) return n + 1
    }
  }
  return undefined
}

/** The parser's own words without the place, which stands before them, and without the lines it quotes. */
const firstLine = (message: string): string =>
  (message.split('\n')[0] ?? message).replace(/(?: at line \d+, column \d+)?:?$/, '').trim()
