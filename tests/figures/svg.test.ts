import { describe, expect, it } from 'vitest'
import { onPage, onPaper } from '../../src/figures/figure.ts'
import { marginBar } from '../../src/figures/margin-bar.ts'
import { svgOf } from '../../src/figures/svg.ts'
import { specimen, specimenNames } from '../generators/designs.ts'
import { tagsOf, textOf, tree } from '../writers/xml.ts'
import { figuresOf } from './all.ts'

const every = specimenNames.flatMap((name) => figuresOf(specimen(name), onPage(560)))

describe('a figure as SVG', () => {
  it('is well formed, and says its title and its numbers', () => {
    for (const figure of every) {
      const root = tree(svgOf(figure))
      const tags = tagsOf(root)
      expect(root.name).toBe('svg')
      expect(tags.find(({ name }) => name === 'title')?.content.join('')).toBe(figure.title)
      expect(tags.find(({ name }) => name === 'desc')?.content.join('')).toBe(figure.says)
    }
  })

  it('takes its looks from classes alone', () => {
    for (const figure of every)
      for (const { name, attributes } of tagsOf(tree(svgOf(figure)))) {
        expect(attributes).not.toHaveProperty('style')
        expect(attributes).not.toHaveProperty('stroke')
        expect(attributes['fill'] ?? 'url(#').toMatch(/^url\(#/)
        if (name === 'path' || name === 'text') expect(attributes['class']).toMatch(/\w/)
      }
  })

  it('keeps ids its own: two figures in one document share none', () => {
    const [one, other] = every
    if (!one || !other) throw new Error('no figures')
    const ids = [svgOf(one, 'one'), svgOf(other, 'other')].flatMap((svg) =>
      tagsOf(tree(svg)).flatMap(({ attributes }) => attributes['id'] ?? []),
    )
    expect(ids.length).toBeGreaterThan(4)
    expect(new Set(ids).size).toBe(ids.length)
  })

  it('every hatch that is used is there', () => {
    for (const figure of every) {
      const tags = tagsOf(tree(svgOf(figure)))
      const ids = tags.flatMap(({ attributes }) => attributes['id'] ?? [])
      for (const { attributes } of tags) {
        const used = /^url\(#(.+)\)$/.exec(attributes['fill'] ?? '')?.[1]
        if (used !== undefined) expect(ids).toContain(used)
      }
    }
  })

  it('an id is one word, whatever the figure is called', () => {
    const svg = svgOf(marginBar({ verdict: 'pass', says: '', measured: 1, most: 2 }, onPage(322)))
    for (const { attributes } of tagsOf(tree(svg))) expect(attributes['id'] ?? '').not.toMatch(/\s/)
  })

  it('escapes what is written', () => {
    const figure = marginBar({ verdict: 'fail', says: 'a < b & "c"', measured: 2, most: 1 }, onPage(322))
    const desc = tagsOf(tree(svgOf(figure))).find(({ name }) => name === 'desc')
    expect(desc && textOf(desc)).toBe('a < b & "c"')
  })

  it('the same design gives the same bytes; on paper it is as large as it says', () => {
    const design = specimen('cider-mill-pulley')
    const drawn = () => figuresOf(design, onPaper(108, 79)).map((figure) => svgOf(figure, figure.name, 'mm'))
    expect(drawn()).toEqual(drawn())
    expect(tree(drawn()[0] ?? '').attributes['width']).toBe('108mm')
  })
})
