/** Figures as the card's pictures: true to a round scale, and said at which. */
import { moved } from '../drawing/strokes.ts'
import type { Figure } from '../figures/figure.ts'
import { strokesOf } from '../figures/strokes.ts'
import type { Block, Picture } from './document.ts'

/** A picture whose strokes are drawn when they are first looked at: most are tried for their size alone. */
const drawnOnDemand = (frame: Omit<Picture, 'strokes'>, draw: () => Picture['strokes']): Picture => {
  let strokes: Picture['strokes'] | undefined
  return {
    ...frame,
    get strokes() {
      strokes ??= draw()
      return strokes
    },
  }
}

const pictureOf = (figure: Figure): Picture => {
  const { width, height, title, says } = figure
  return drawnOnDemand({ width, height, title, says }, () => strokesOf(figure))
}

export const pictured = (figure: Figure | undefined): readonly Block[] =>
  figure ? [{ block: 'picture', picture: pictureOf(figure) }] : []

/** Two figures that share their axis, one under the other without a gap. */
export const pairedUnder = (upper: Figure, lower: Figure): readonly Block[] => {
  const [over, under] = [pictureOf(upper), pictureOf(lower)]
  const frame = {
    width: Math.max(over.width, under.width),
    height: over.height + under.height,
    title: over.title,
    says: `${over.says} ${under.says}`,
  }
  const draw = () => [...over.strokes.map((stroke) => moved(stroke, 0, under.height)), ...under.strokes]
  return [{ block: 'picture', picture: drawnOnDemand(frame, draw) }]
}

/** `3 : 1`, `full size`, `1 : 2`. */
export const scaleSaid = ({ scale }: Figure): string => {
  if (scale === undefined) return 'not to scale'
  if (Math.abs(scale - 1) < 1e-6) return 'full size'
  const round = (value: number): number => Number(value.toFixed(2))
  return scale > 1 ? `${round(scale)} : 1` : `1 : ${round(1 / scale)}`
}
