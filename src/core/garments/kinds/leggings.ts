import type { Mm } from '../../base/units.ts'
import type { Point } from '../../geometry/types.ts'
import { measure } from '../body-sizes.ts'
import { type DraftEdge, hem, otherSide, type PanelDraft, seam } from '../drafting/draft.ts'
import type { LegFigures } from '../drafting/leg-block.ts'
import { legTapes, trouserShape } from '../drafting/leg-figure.ts'
import type { Line } from '../drafting/lines.ts'
import type { GarmentKind } from '../kind.ts'
import { CASING_DEPTH } from '../losses.ts'
import { hipWidth, waistWidth } from './measures.ts'
import { wornLeg } from './worn-leg.ts'

/** Leggings are cut about 15 % smaller than the body. Common practice for knits that stretch 50 % or more. */
const OF_BODY = 0.85

/** The back's centre rises this much above the front's. Common practice. */
const BACK_RAISE: Mm = 40

export const leggings: GarmentKind = {
  id: 'leggings',
  measures: [
    { ...waistWidth(0), start: measure('waist-width', 150, 850, (body) => (body.waist * OF_BODY) / 2).start },
    { ...hipWidth(0), start: measure('hip-width', 200, 900, (body) => (body.hip * OF_BODY) / 2).start },
    measure('thigh-width', 90, 450, (body) => (body.thigh * OF_BODY) / 2),
    measure('front-rise', 120, 450, (body) => body.rise - 10),
    measure('inseam', 100, 1000, (body) => body.innerLeg * 0.9),
    measure('leg-opening', 50, 400, (body) => body.thigh * 0.19),
  ],
  traits: [{ id: 'elastic-waist', usual: true }],
  less: [],

  figure(measures, traits) {
    const leg = wornLeg(measures)
    const top = leg.inseam + leg.rise
    const casing: Line = [
      [-leg.waist, top - CASING_DEPTH],
      [leg.waist, top - CASING_DEPTH],
    ]
    const centre: Line = [
      [0, leg.inseam],
      [0, top],
    ]
    return {
      shapes: [trouserShape(leg)],
      seams: traits['elastic-waist'] ? [centre, casing] : [centre],
      tapes: legTapes(leg),
    }
  },

  drafts(measures, traits) {
    const left = legAround('leg-left', wornLeg(measures), traits['elastic-waist'] ? casingHem : seam)
    return [left, otherSide('leg-right', left)]
  },
}

const casingHem = (to: Point): DraftEdge => hem(to, CASING_DEPTH)

/**
 * A leg without outseam, opened along its inseam: the left one seen from outside, so its front is on the left. Its own fold
 * is the line x = 0, and the grain.
 */
function legAround(id: string, leg: LegFigures, waistEdge: (to: Point) => DraftEdge): PanelDraft {
  const { inseam, thigh, opening, waist } = leg
  const top = inseam + leg.rise
  const seat = Math.min(leg.hip, thigh)
  const edges = [
    hem([opening, 0]),
    seam([thigh, inseam]),
    seam([waist, top + BACK_RAISE], [seat, inseam]),
    waistEdge([-waist, top]),
    seam([-thigh, inseam], [-seat, inseam]),
    seam([-opening, 0]),
  ]
  return { id, start: [-opening, 0], edges, flaws: [] }
}
