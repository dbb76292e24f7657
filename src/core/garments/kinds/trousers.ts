import type { Mm } from '../../base/units.ts'
import { measure } from '../body-sizes.ts'
import { boxFlaw, otherSide } from '../drafting/draft.ts'
import { type LegFigures, legPanel } from '../drafting/leg-block.ts'
import { legTapes, trouserShape } from '../drafting/leg-figure.ts'
import type { Line } from '../drafting/lines.ts'
import type { BuiltInFlaw, GarmentKind, Traits } from '../kind.ts'
import { WAISTBAND_DEPTH } from '../losses.ts'
import { hipWidth, waistWidth } from './measures.ts'
import { wornLeg } from './worn-leg.ts'

/** The back's centre rises this much above the front's: common practice 25 to 60 mm. */
const BACK_RAISE: Mm = 40

/** A leg's back is this much wider, and its front this much narrower, than it lies flat. Common practice. */
const BACK_WIDER: Mm = 10

/** Fly, slanting front pocket and back patch pocket with the cloth they spoil. Common practice. */
const FLY = { width: 45, length: 180 } as const
const FRONT_POCKET = { width: 150, depth: 230 } as const
const BACK_POCKET = { width: 150, height: 160, below: 60 } as const

export const trousers: GarmentKind = {
  id: 'trousers',
  measures: [
    waistWidth(20),
    hipWidth(60),
    measure('thigh-width', 130, 500, (body) => body.thigh / 2 + 30),
    measure('front-rise', 140, 450, (body) => body.rise - 5),
    measure('inseam', 150, 1000, (body) => body.innerLeg - 20),
    measure('leg-opening', 80, 500, (body) => body.thigh * 0.32),
  ],
  traits: [
    { id: 'waistband', usual: true },
    { id: 'pockets', usual: true },
    { id: 'zip', usual: true },
  ],
  less: [],

  figure(measures, traits) {
    const leg = wornLeg(measures)
    return { shapes: [trouserShape(leg)], seams: seamLines(leg, traits), tapes: legTapes(leg) }
  },

  drafts(measures, traits) {
    const leg = wornLeg(measures)
    const rise = leg.rise - (traits.waistband ? WAISTBAND_DEPTH : 0)
    const front = { ...leg, rise, thigh: leg.thigh - BACK_WIDER, opening: leg.opening - BACK_WIDER }
    const back = {
      ...leg,
      rise,
      thigh: leg.thigh + BACK_WIDER,
      opening: leg.opening + BACK_WIDER,
      raise: BACK_RAISE,
    }
    const frontRight = legPanel('front-right', front, frontFlaws(front, traits))
    const backLeft = legPanel('back-left', back, traits.pockets ? [backPocket(back)] : [])
    return [frontRight, otherSide('front-left', frontRight), backLeft, otherSide('back-right', backLeft)]
  },
}

function seamLines(leg: LegFigures, traits: Traits): readonly Line[] {
  const top = leg.inseam + leg.rise
  const band = top - WAISTBAND_DEPTH
  const lines: Line[] = [
    [
      [0, leg.inseam],
      [0, top],
    ],
  ]
  if (traits.waistband)
    lines.push([
      [-leg.waist, band],
      [leg.waist, band],
    ])
  if (traits.zip)
    lines.push([
      [FLY.width, band],
      [FLY.width, top - FLY.length],
      [0, top - FLY.length - 20],
    ])
  if (traits.pockets) {
    const mouth: Line = [
      [leg.waist * 0.6, band],
      [leg.hip * 0.95, band - 120],
    ]
    lines.push(
      mouth,
      mouth.map(([x, y]) => [-x, y] as const),
    )
  }
  return lines
}

function frontFlaws(f: LegFigures, traits: Traits): readonly BuiltInFlaw[] {
  const top = f.inseam + f.rise
  const left = Math.max(0, f.hip - f.waist) / 2
  const centre = left + f.waist
  const pocketEnd = left + Math.min(FRONT_POCKET.width, f.waist * 0.7)
  return [
    ...(traits.pockets ? [boxFlaw('pocket', 0, top - FRONT_POCKET.depth, pocketEnd, top)] : []),
    ...(traits.zip ? [boxFlaw('zip', centre - FLY.width, top - FLY.length, centre, top)] : []),
  ]
}

function backPocket(f: LegFigures): BuiltInFlaw {
  const top = f.inseam + f.rise - BACK_POCKET.below
  const width = Math.min(BACK_POCKET.width, f.hip * 0.7)
  const left = (f.hip - width) / 2
  return boxFlaw('pocket', left, top - BACK_POCKET.height, left + width, top)
}
