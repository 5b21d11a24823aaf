import type { Design } from '../../src/design.ts'
import type { Figure, Target } from '../../src/figures/figure.ts'
import { firstTouch } from '../../src/figures/first-touch.ts'
import { fourLengths } from '../../src/figures/lengths.ts'
import { lengthwise } from '../../src/figures/lengthwise.ts'
import { longInfeed } from '../../src/figures/long-infeed.ts'
import { pinAndPlug } from '../../src/figures/pin-and-plug.ts'
import { pressLengthwise } from '../../src/figures/press-lengthwise.ts'
import { pressSection } from '../../src/figures/press-section.ts'
import { sectionFigure } from '../../src/figures/section.ts'
import { setUp } from '../../src/figures/set-up.ts'
import { touchAndFloor } from '../../src/figures/touch-and-floor.ts'

/** Every figure that a job has, at several moments of its cut. */
export const figuresOf = (design: Design, target: Target): readonly Figure[] =>
  [
    sectionFigure(design, 'withdrawn', target),
    sectionFigure(design, { infeed: 0.4 * design.section.infeed }, target),
    sectionFigure(design, 'floor', target),
    fourLengths(design, target),
    longInfeed(design, target),
    longInfeed(design, target, { infeed: 0.5 * design.section.infeed }),
    longInfeed(design, target, { infeed: 0 }),
    lengthwise(design, target),
    lengthwise(design, target, 'floor'),
    touchAndFloor(design, target),
    pressSection(design, target),
    pressLengthwise(design, target),
    pinAndPlug(design, target),
    firstTouch(design, target),
    setUp(design, target),
  ].flatMap((figure) => figure ?? [])
