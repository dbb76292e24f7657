import type { Mm } from '../../base/units.ts'
import { chordPoints, tangentPoints } from './arc.ts'
import { hem, type Path, seam, through } from './draft.ts'

/** A front or back of a skirt, laid flat: widths along the edge, length down the centre. */
export interface SkirtFigures {
  readonly waist: Mm
  readonly hem: Mm
  readonly length: Mm
}

/** Half the opening angle of a panel that makes half a full circle; cloth beyond a full circle is not counted. */
const FULLEST = Math.PI / 2

/** A flare below this angle is drawn straight. */
const STRAIGHTEST = 0.01

/**
 * Right half of a flared skirt: a sector of a ring, so that waist and hem lie square to the side seams. Its edges are as
 * long as the tape says, hence its area is length × (waist + hem) / 2, as of the trapezium with the same figures.
 */
export function flaredHalf({ waist, hem: hemWidth, length }: SkirtFigures): Path {
  const half = Math.min((hemWidth - waist) / (2 * length), FULLEST)
  if (half < STRAIGHTEST) {
    return { start: [0, 0], edges: [hem([hemWidth / 2, 0]), seam([waist / 2, length]), seam([0, length])] }
  }
  const inner = waist / (2 * half)
  const centreY = inner + length
  const atWaist = { centreY, radius: inner, from: half, to: 0 }
  const edges = [
    ...through(chordPoints({ centreY, radius: centreY, from: 0, to: half }), hem),
    seam([inner * Math.sin(half), centreY - inner * Math.cos(half)]),
    ...through(tangentPoints(atWaist), seam),
  ]
  return { start: [0, 0], edges }
}

/** Right half of a gathered skirt: as wide at the waist as at the hem, once the gathers are let out. */
export function gatheredHalf({ hem: width, length }: SkirtFigures): Path {
  return { start: [0, 0], edges: [hem([width / 2, 0]), seam([width / 2, length]), seam([0, length])] }
}

/** Right half of a skirt shaped over the hip. */
export function straightHalf(figures: SkirtFigures & { readonly hip: Mm; readonly hipDepth: Mm }): Path {
  const { waist, hip, hem: hemWidth, length, hipDepth } = figures
  const hipY = length - hipDepth
  const edges = [
    hem([hemWidth / 2, 0]),
    seam([hip / 2, hipY]),
    seam([waist / 2, length], [hip / 2, hipY + hipDepth / 2]),
    seam([0, length]),
  ]
  return { start: [0, 0], edges }
}
