/** A job card from a design: wording and order; every number is the design's own. */
import type { Design } from '../design.ts'
import { deferral } from './cautions.ts'
import { cuttingSides, stripLeftOver } from './cutting.ts'
import type { Card, Leaf } from './document.ts'
import type { Cover } from './fitting.ts'
import { aboutOf } from './naming.ts'
import { pressLeaves } from './press.ts'
import { reasonsLeaf } from './reasons.ts'
import { sayingOf } from './saying.ts'
import { setUpSide } from './set-up.ts'
import { toolingLeaf } from './tooling.ts'
import { withoutTooling } from './without-tooling.ts'

/** The way that the card is for: the recommended of two, else the one that is worked out. */
const wayOf = ({ ways, bar, groundBar, bushing }: Design): 'bar' | 'press' | undefined => {
  const made = (bar ?? groundBar) ? 'bar' : bushing ? 'press' : undefined
  if (ways?.recommended === 'press' && bushing) return 'press'
  return made
}

/**
 * The job card of a design: machine leaf, tooling leaf, reasons leaf. It is made of whatever it is given; of what is not sound every side says so, and
 * the gates are left out.
 */
export const cardOf = (design: Design): Card => {
  const says = sayingOf(design.spec)
  const by = wayOf(design)
  const broken = design.findings.filter(({ verdict }) => verdict === 'fail').map(({ rule }) => rule)
  const cover: Cover = {
    name: design.spec.name,
    about: aboutOf(design, says),
    units: says.metric ? 'millimetres' : 'inches',
    ...(broken.length > 0 && { notSound: broken }),
    deferral,
  }
  const leaves = leavesOf(design, by, cover)
  const sides = leaves.flatMap((leaf) => leaf.sides)
  return {
    ...cover,
    leaves: [...leaves, reasonsLeaf(design, says, by, by === 'bar' ? stripLeftOver(design, sides) : [])],
  }
}

const leavesOf = (design: Design, by: 'bar' | 'press' | undefined, cover: Cover): readonly Leaf[] => {
  const says = sayingOf(design.spec)
  switch (by) {
    case 'bar':
      return [
        {
          leaf: 'machine',
          title: 'Machine leaf',
          sides: [setUpSide(design, says, cover), ...cuttingSides(design, says, cover)],
        },
        toolingLeaf(design, says, cover),
      ]
    case 'press':
      return pressLeaves(design, says, cover)
    case undefined:
      return [withoutTooling(design, says)]
  }
}
