import { runInThisContext } from 'node:vm'
import { describe, expect, it } from 'vitest'
import { inAscii, withoutArrows } from '../vite.light.ts'

/** What a text of code answers. */
const answerOf = (code: string): unknown => runInThisContext(`(() => { ${code} })()`)

describe('a bundle made light', () => {
  it('says the same in ASCII', () => {
    const code = 'const s = `½ – ’ 😀`, r = /^[½–😀]+$/u; return [s, r.test("–😀"), "é".length, s.length]'
    expect(inAscii(code)).toMatch(/^[\0-\x7f]*$/)
    expect(answerOf(inAscii(code))).toEqual(['½ – ’ 😀', true, 1, 8])
    expect(() => inAscii('String.raw`½`')).toThrow()
  })

  it.each([
    ['const a = (b) => { return b + 1 }', 'const a = function(b){ return b + 1 }'],
    ['const a = b => b + 1', 'const a = function(b){return  b + 1}'],
    ['const a = () => ({ b: 1 })', 'const a = function(){return  ({ b: 1 })}'],
    ['const a = async (b) => b', 'const a = async function(b){return  b}'],
    [
      'const a = (b = (c) => c, { d } = {}, ...e) => b(d)',
      'const a = function(b = (c) => c, { d } = {}, ...e){return  b(d)}',
    ],
    ['const a = (b) => (c) => b + c', 'const a = function(b){return  (c) => b + c}'],
    [
      'const a = [1].map((b) => b), c = { d: (e) => e }',
      'const a = [1].map(function(b){return  b}), c = { d: function(e){return  e} }',
    ],
    // Own to an arrow function: it has none of these, and reads those around it.
    ['const a = () => this', 'const a = () => this'],
    ['const a = () => [1].map(() => arguments)', 'const a = () => [1].map(() => arguments)'],
    ['const a = () => function() { return this }', 'const a = function(){return  function() { return this }}'],
    // In another function they are passed over with it.
    ['function a() { return (b) => b }', 'function a() { return (b) => b }'],
    ['class A { b = () => this; c = (d) => d }', 'class A { b = () => this; c = (d) => d }'],
  ])('%s', (code, turned) => {
    expect(withoutArrows(code).replaceAll(/\) *\{/g, '){')).toBe(turned.replaceAll(/\) *\{/g, '){'))
  })

  it('answers the same', () => {
    const code = `const add = (a, b = () => 2) => a + b(), twice = (f) => (x) => f(f(x)), pair = (a) => ({ a, b: [a] })
      const sum = (...all) => { let s = 0; for (const each of all) s += each; return s }
      return [add(1), twice(add)(1), pair(3), sum(1, 2, 3), add.name, sum.length]`
    const light = withoutArrows(code.replace('return [', 'globalThis.answer = [')).replace(
      'globalThis.answer = [',
      'return [',
    )
    expect(light).not.toContain('const sum = (')
    expect(answerOf(light)).toEqual(answerOf(code))
  })
})
