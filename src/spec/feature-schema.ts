import { z } from 'zod/mini'
import { angleAs, keyed, lengthAs, maybe, numberAs, pairAs, textAs, told, wordAs } from './leaf.ts'

/** The features other than a keyway, as written. */

const limitsPhrase = 'a length (exact), or [least, most]'

/** A size given exactly, or as limits. */
export const limited = (description: string, example: string | number, zero = false) => {
  const leaf = lengthAs(description, [example], { zero })
  return told(z.union([leaf, pairAs(`${description}, [least, most]`, leaf, limitsPhrase)], { error: limitsPhrase }), {
    description: `${description}: exact, or [least, most]`,
  })
}

const first = (what: string) => maybe(() => angleAs(`Angle of the first ${what}, degrees; left out: 0`, [0], -360, 360))

const sizePhrase = 'a size: 6x23x26 (iso-14), or the major diameter (sae-j499): "1-1/4 in"'
export const spline = () =>
  keyed('Straight-sided splines: by a standard, or their sizes by hand', {
    standard: maybe(() => wordAs('Left out: iso-14 where a size is given, else sizes by hand', ['iso-14', 'sae-j499'])),
    size: maybe(
      () => z.union([textAs('Size', ['6x23x26'], sizePhrase), z.number({ error: sizePhrase })], { error: sizePhrase }),
      {
        description: 'iso-14: slots x bore x major diameter; sae-j499: the major diameter',
        examples: ['6x23x26', '1-1/4 in'],
      },
    ),
    treated: maybe(() => z.boolean({ error: 'true or false' }), {
      description: 'iso-14: the hub is hardened after its slots are cut; left out: no',
    }),
    fit: maybe(() =>
      wordAs('sae-j499: A permanent, B sliding when not under load, C sliding under load', ['A', 'B', 'C']),
    ),
    count: maybe(() =>
      numberAs('Number of splines; iso-14 has it in its size', [6], {
        least: 2,
        most: 36,
        whole: true,
      }),
    ),
    width: maybe(() => limited('Width of a slot, by hand', 6)),
    major: maybe(() => limited('Diameter over the floors, by hand', 26)),
    corner: maybe(() => limited('Corner radius that a slot may have', 0.2, true)),
    at: first('slot'),
  })

export const socket = () =>
  keyed('A square, hexagon or other socket, cut corner by corner', {
    sides: () => numberAs('Number of sides', [4, 6], { least: 3, most: 12, whole: true }),
    across: () => limited('Across flats', 12),
    tip: maybe(() => lengthAs('Tip radius of the V-nose; left out: pointed', [0.2], { zero: true })),
    at: first('corner'),
  })

export const slit = () =>
  keyed('Slits right through the wall, as of a collet', {
    width: () => limited('Width', 1),
    count: maybe(() =>
      numberAs('Number of slits, evenly round; left out: one', [3], { least: 1, most: 36, whole: true }),
    ),
    outside: maybe(() => lengthAs('Outside diameter that the slits run out through; left out: the hub’s', [16])),
    at: first('slit'),
  })

export const groove = () =>
  keyed('An oil groove, cut with a round nose', {
    radius: () => lengthAs('Radius of the nose', [1.5]),
    depth: () => limited('Depth from the crown of the bore', 1),
    at: maybe(
      () =>
        z.union(
          [
            angleAs('Angle of the groove', [0], -360, 360),
            z
              .array(angleAs('Angle of a groove', [90], -360, 360), { error: 'a list of angles' })
              .check(z.minLength(1, { error: 'one to 36 angles' }), z.maxLength(36, { error: 'one to 36 angles' })),
          ],
          { error: 'an angle in degrees, or a list of them: [0, 90]' },
        ),
      { description: 'Angles of the grooves, degrees; left out: one, at 0', examples: [[0], [0, 180]] },
    ),
  })
