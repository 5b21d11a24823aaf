import { describe, expect, it } from 'vitest'
import { calledAs, typed, widthOf } from '../../src/cli/desk.ts'

describe('the desk', () => {
  it('a terminal that reports no width, or none to read in, is taken for 80', () => {
    expect([0, 39, 40, 80, 300, undefined].map(widthOf)).toEqual([80, 80, 40, 80, 110, 100])
  })

  it('the program is called again as it was called', () => {
    expect(calledAs('/usr/local/bin/borewright', '/home/a')).toBe('borewright')
    expect(calledAs('/home/a/dist/borewright.js', '/home/a')).toBe('node dist/borewright.js')
    expect(calledAs('/home/a b/dist/borewright.js', '/srv')).toBe('node "/home/a b/dist/borewright.js"')
    // The link that npm writes on Windows hands over the file itself.
    expect(calledAs('C:\\npm\\node_modules\\borewright\\dist\\borewright.js', 'C:\\')).toBe('borewright')
  })

  it('a name with blanks or signs is typed in quotes', () => {
    expect(['a-b_1.yaml', 'my spec.yaml', 'cost$.yaml'].map(typed)).toEqual([
      'a-b_1.yaml',
      '"my spec.yaml"',
      '"cost\\$.yaml"',
    ])
  })
})
