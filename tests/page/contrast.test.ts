import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'

const css = readFileSync(join(import.meta.dirname, '../../src/page/page.css'), 'utf8')

/** The tokens of each rule that sets them all, in the order of the file: day, night by the computer, night, strong, strong at night. */
const lights = [...css.matchAll(/\{([^{}]*--untold:[^{}]*)\}/g)].map(([, body = '']) =>
  Object.fromEntries(
    [...body.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6})/g)].map(([, name, colour]) => [name ?? '', colour ?? '']),
  ),
)
const [day, byComputer, night, strong, strongNight] = lights

/** Relative luminance. WCAG 2.2, definition of relative luminance. */
const luminance = (colour: string): number => {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

/** Contrast ratio. WCAG 2.2, definition of contrast ratio. */
const contrast = (one: string, other: string): number => {
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].toSorted((a, b) => b - a)
  return (light + 0.05) / (dark + 0.05)
}

const all = { day, byComputer, night, strong, strongNight }

describe('the lights', () => {
  it('works contrast out as it is published', () => {
    // Black on white is 21 by definition; #767676 on white is the grey that just passes, common practice.
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5)
    expect(contrast('#767676', '#ffffff')).toBeGreaterThan(4.5)
    expect(contrast('#777777', '#ffffff')).toBeLessThan(4.5)
  })

  it('there are five, each with every token, and night is the same however it is asked for', () => {
    expect(lights.length).toBe(5)
    for (const light of lights) expect(Object.keys(light).toSorted()).toEqual(Object.keys(day ?? {}).toSorted())
    expect(byComputer).toEqual(night)
  })

  for (const [name, light] of Object.entries(all))
    it(`${name}: words can be read on every ground they stand on`, () => {
      const of = (token: string): string => light?.[token] ?? ''
      const wanted: [string, string, number][] = [
        ...['paper', 'well'].flatMap((ground) =>
          ['ink', 'quiet', 'mark', 'hold', 'care', 'broken', 'untold'].map((word): [string, string, number] => [
            word,
            ground,
            4.5,
          ]),
        ),
        ['ink', 'wash', 4.5],
        ['mark', 'wash', 4.5],
        ['ink', 'metal', 4.5],
        ['quiet', 'metal', 4.5],
        ['mark', 'metal', 4.5],
        ['paper', 'mark', 4.5],
        ['paper', 'ink', 4.5],
        ['care', 'care-wash', 4.5],
        ['broken', 'broken-wash', 4.5],
        ['untold', 'untold-wash', 4.5],
        // Lines of blanks and edges of bodies: WCAG 2.2, 1.4.11.
        ['blank', 'paper', 3],
        ['edge', 'paper', 3],
        ['edge', 'metal', 3],
        ['edge', 'steel', 3],
        ['bit', 'paper', 3],
      ]
      const poor = wanted
        .map(([word, ground, least]) => [word, ground, contrast(of(word), of(ground)), least] as const)
        .filter(([, , found, least]) => !(found >= least))
      expect(poor).toEqual([])
    })

  it('by day ink stands 15 times darker than paper, in strong light 21 times', () => {
    expect(contrast(day?.['ink'] ?? '', day?.['paper'] ?? '')).toBeGreaterThan(15)
    expect(contrast(strong?.['ink'] ?? '', strong?.['paper'] ?? '')).toBeCloseTo(21, 3)
  })
})
