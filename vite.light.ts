import { parseAst, type Plugin } from 'vite'

interface Node {
  readonly type: string
  readonly start: number
  readonly end: number
  readonly [key: string]: unknown
}

const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null && 'type' in value
const within = (node: Node): readonly Node[] =>
  Object.values(node).flatMap((value) => (Array.isArray(value) ? value.filter(isNode) : isNode(value) ? [value] : []))

const isFunction = ({ type }: Node): boolean => type === 'FunctionExpression' || type === 'FunctionDeclaration'
const isClass = ({ type }: Node): boolean => type === 'ClassExpression' || type === 'ClassDeclaration'

/** Whether an arrow function reads anything that another function would have of its own. */
const leans = (node: Node): boolean =>
  ['ThisExpression', 'Super', 'MetaProperty'].includes(node.type) ||
  (node.type === 'Identifier' && node['name'] === 'arguments') ||
  within(node).some((inner) => !isFunction(inner) && leans(inner))

/** The arrow functions that stand in no other function. */
const outermost = (node: Node): readonly Node[] =>
  node.type === 'ArrowFunctionExpression'
    ? [node]
    : isFunction(node) || isClass(node)
      ? []
      : within(node).flatMap(outermost)

interface Edit {
  readonly from: number
  readonly to: number
  readonly text: string
}

/** What turns one arrow function into another function. */
const turned = (code: string, arrow: Node): readonly Edit[] => {
  const params = arrow['params'] as readonly Node[]
  const body = arrow['body'] as Node
  const [first, last] = [params.at(0), params.at(-1)]
  const named = first && last ? code.slice(first.start, last.end) : ''
  const head = `${arrow['async'] === true ? 'async ' : ''}function(${named})`
  if (body.type === 'BlockStatement') return [{ from: arrow.start, to: body.start, text: head }]
  const answer = code.indexOf('=>', last?.end ?? arrow.start) + 2
  return [
    { from: arrow.start, to: answer, text: `${head}{return ` },
    { from: arrow.end, to: arrow.end, text: '}' },
  ]
}

/**
 * Code with its outermost arrow functions turned into other functions. V8 passes over those until they are called; an arrow function in a
 * module it takes apart to the last sign before anything runs (ParseArrowFunctionLiteral, seen in V8 11, which is in Node 20), which takes it four times as long.
 */
export const withoutArrows = (code: string): string => {
  const edits = outermost(parseAst(code) as unknown as Node)
    .filter((arrow) => !leans(arrow))
    .flatMap((arrow) => turned(code, arrow))
    .toSorted((a, b) => a.from - b.from)
  const ends = [0, ...edits.map(({ to }) => to)]
  const kept = edits.map(({ from, text }, at) => code.slice(ends[at], from) + text)
  return kept.join('') + code.slice(ends.at(-1))
}

/** Code in ASCII: text that holds any sign beyond it is kept, and looked through, at two bytes a sign. */
export const inAscii = (code: string): string => {
  if (/\braw`[^`]*[^\0-\x7f]/.test(code)) throw new Error('a raw text would be shown with its signs by their numbers')
  return code.replace(/[^\0-\x7f]/g, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`)
}

/** Leaves the bundle as it is, but lighter to load. */
export const light: Plugin = {
  name: 'light',
  generateBundle: {
    order: 'post',
    handler: (_, bundle) => {
      for (const chunk of Object.values(bundle))
        if (chunk.type === 'chunk') chunk.code = inAscii(withoutArrows(chunk.code))
    },
  },
}
