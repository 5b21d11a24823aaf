// Which changes can be made to a source, one at a time, and the source with all chosen ones in it, each behind its own number.
import { createHash } from 'node:crypto'
import { parseSync } from 'vite'

export const folders = ['dimensions', 'mechanics', 'checks', 'plan']
export const kinds = [
  'arithmetic',
  'sign',
  'constant',
  'Math',
  'comparison',
  'boundary',
  'logic',
  'condition',
  'boolean',
]
export const folderOf = (file) => file.split('/')[1]

const arithmetic = { '+': '-', '-': '+', '*': '/', '/': '*', '%': '*' }
const boundary = { '<': '<=', '<=': '<', '>': '>=', '>=': '>' }
const comparison = { '<': '>=', '<=': '>', '>': '<=', '>=': '<', '===': '!==', '!==': '===' }
const logic = { '&&': '||', '||': '&&' }
const functions = { min: 'max', max: 'min', sin: 'cos', cos: 'sin', floor: 'ceil', ceil: 'floor' }

/** Properties that hold words for a reader: what is written there is held by tests of the words. */
const words = new Set(['say', 'reason', 'states', 'source', 'why', 'basis'])
/** Of the type checker's own nodes only these hold what runs. */
const running = new Set(['TSAsExpression', 'TSNonNullExpression', 'TSSatisfiesExpression', 'TSInstantiationExpression'])

const isText = (node) => node.type === 'TemplateLiteral' || (node.type === 'Literal' && typeof node.value === 'string')
/** A sentence, or nothing in its place: a name has no space in it. */
const isWording = (node) =>
  (node.type === 'Literal' && typeof node.value === 'string' && (node.value === '' || node.value.includes(' '))) ||
  (node.type === 'TemplateLiteral' && node.quasis.some(({ value }) => value.raw.includes(' ')))

/** Against rounding alone: 1e-9 may as well be 1.1e-9. */
const isGuard = (node) =>
  node.type === 'Literal' && typeof node.value === 'number' && node.value !== 0 && Math.abs(node.value) < 1e-6
const holdsGuard = (node) =>
  node !== null &&
  typeof node === 'object' &&
  (isGuard(node) || ['left', 'right', 'expression', 'argument'].some((key) => key in node && holdsGuard(node[key])))

const another = (value) => {
  if (Number.isInteger(value) && Math.abs(value) <= 12) return `${value + 1}`
  return `${Number((value * 1.1).toPrecision(12))}`
}

/**
 * Every mutant of a file, in the order of the text: its kind, the range that it stands for, what stands there in its place. Its name keeps from one
 * release to the next while its own line is the same.
 */
export const mutantsOf = (file, source) => {
  const { program, comments, errors } = parseSync(file, source)
  if (errors.length > 0) throw new Error(`${file}: ${errors[0].message}`)
  const found = []
  const raw = ({ start, end }) => {
    let text = source.slice(start, end)
    for (const comment of comments.toReversed())
      if (comment.start >= start && comment.end <= end)
        text = text.slice(0, comment.start - start) + text.slice(comment.end - start)
    return text
  }
  const add = (kind, { start, end }, text) => found.push({ file, kind, start, end, text })

  const change = (node, parent) => {
    switch (node.type) {
      case 'BinaryExpression': {
        const { left, operator, right } = node
        const told = (other) => `(${raw(left)}) ${other} (${raw(right)})`
        if (operator in arithmetic && ![left, right].some((side) => isText(side) || isGuard(side)))
          add('arithmetic', node, told(arithmetic[operator]))
        if (operator in boundary && !holdsGuard(left) && !holdsGuard(right))
          add('boundary', node, told(boundary[operator]))
        if (operator in comparison) add('comparison', node, told(comparison[operator]))
        break
      }
      case 'LogicalExpression':
        if (node.operator in logic)
          add('logic', node, `(${raw(node.left)}) ${logic[node.operator]} (${raw(node.right)})`)
        break
      case 'UnaryExpression':
        if (node.operator === '-') add('sign', node, `(${raw(node.argument)})`)
        if (node.operator === '!') add('logic', node, `(${raw(node.argument)})`)
        break
      case 'Literal':
        if (typeof node.value === 'boolean') add('boolean', node, `${!node.value}`)
        if (typeof node.value === 'number' && !isGuard(node)) add('constant', node, another(node.value))
        break
      case 'MemberExpression':
        if (parent.type === 'CallExpression' && node.object.name === 'Math' && node.property.name in functions)
          add('Math', node, `Math.${functions[node.property.name]}`)
        break
      case 'ConditionalExpression':
        add('condition', node, `(${raw(node.consequent)})`)
        add('condition', node, `(${raw(node.alternate)})`)
        break
      case 'IfStatement':
        add('condition', node.test, 'true')
        add('condition', node.test, 'false')
        break
    }
  }

  const visit = (node, parent) => {
    if (Array.isArray(node)) {
      for (const one of node) visit(one, parent)
      return
    }
    if (node === null || typeof node !== 'object' || typeof node.type !== 'string') return
    if (/^(?:Import|Export(?:All|Specifier))/.test(node.type) || node.type === 'TemplateLiteral') return
    if (node.type.startsWith('TS')) {
      if (running.has(node.type)) visit(node.expression, node)
      return
    }
    if (node.type === 'Property' && !node.computed) {
      if (!words.has(node.key.name)) visit(node.value, node)
      return
    }
    if (node.type === 'ConditionalExpression' && isWording(node.consequent) && isWording(node.alternate)) return
    change(node, parent)
    for (const [key, value] of Object.entries(node)) if (key !== 'type') visit(value, node)
  }
  visit(program, undefined)

  const starts = [0]
  for (const { index } of source.matchAll(/\n/g)) starts.push(index + 1)
  const seen = new Map()
  return found
    .toSorted((a, b) => a.start - b.start || b.end - a.end)
    .map((mutant) => {
      const line = starts.findLastIndex((start) => start <= mutant.start)
      const text = source.slice(starts[line], starts[line + 1] ?? source.length).trim()
      const short = (of) => of.replaceAll(/\s+/g, ' ')
      const told = `${short(source.slice(mutant.start, mutant.end))} → ${short(mutant.text)}`
      const bare = `${file} | ${text} | ${told}`
      const count = (seen.get(bare) ?? 0) + 1
      seen.set(bare, count)
      return { ...mutant, line: line + 1, change: told, name: count === 1 ? bare : `${bare} | ${count}` }
    })
}

/** The source with every mutant in it, each behind its number: `__mutants.active` says which one is alive. Lines stay where they are. */
export const withMutants = (source, mutants) => {
  const inside = (start, end, of) => {
    let text = ''
    let at = start
    while (of.length > 0) {
      const [{ start: from, end: to }] = of
      const here = of.filter((mutant) => mutant.start === from && mutant.end === to)
      const within = of.filter((mutant) => mutant.start < to && !here.includes(mutant))
      const lines = source.slice(from, to).split('\n').length - 1
      let choice = `(${inside(from, to, within)})`
      for (const { number, text: instead } of here)
        choice = `((__mutants.hit[${number}] = 1), __mutants.active === ${number} ? (${instead.replaceAll(/\s*\n\s*/g, ' ')}) : ${choice})`
      if (choice.split('\n').length - 1 !== lines) throw new Error(`lines moved: ${choice}`)
      text += source.slice(at, from) + choice
      at = to
      of = of.filter((mutant) => mutant.start >= to)
    }
    return text + source.slice(at, end)
  }
  const ordered = mutants.toSorted((a, b) => a.start - b.start || b.end - a.end)
  return `const __mutants = globalThis.__mutants; ${inside(0, source.length, ordered)}`
}

/**
 * So many of them, shared among folders and kinds by what each has (largest remainders); within a share those that come first in an order made from
 * their names and the seed, so that a line that is written elsewhere does not change the choice.
 */
export const sampled = (mutants, count, seed) => {
  const strata = new Map()
  for (const mutant of mutants) {
    const stratum = `${folderOf(mutant.file)} ${mutant.kind}`
    strata.set(stratum, [...(strata.get(stratum) ?? []), mutant])
  }
  const shares = [...strata.values()].map((all) => ({ all, exact: (count * all.length) / mutants.length }))
  let left = count
  for (const share of shares) left -= Math.floor(share.exact)
  const byRemainder = shares.toSorted((a, b) => (b.exact % 1) - (a.exact % 1))
  const key = ({ name }) => createHash('sha256').update(`${seed} ${name}`).digest('hex')
  const inOrder = (all) => all.toSorted((a, b) => (a.key < b.key ? -1 : 1))
  return inOrder(
    byRemainder.flatMap(({ all, exact }, at) =>
      inOrder(all.map((mutant) => ({ mutant, key: key(mutant) }))).slice(0, Math.floor(exact) + (at < left ? 1 : 0)),
    ),
  ).map(({ mutant }) => mutant)
}
