import type { LegFigures } from '../drafting/leg-block.ts'
import type { Measures } from '../kind.ts'
import { read } from './measures.ts'

/** The leg that the tape reads, waistband and all. */
export function wornLeg(measures: Measures): LegFigures {
  return {
    waist: read(measures, 'waist-width') / 2,
    hip: read(measures, 'hip-width') / 2,
    thigh: read(measures, 'thigh-width'),
    opening: read(measures, 'leg-opening'),
    rise: read(measures, 'front-rise'),
    raise: 0,
    inseam: read(measures, 'inseam'),
  }
}
