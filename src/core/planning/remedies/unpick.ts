import type { Garment } from '../../garments/garment.ts'
import { panelsOf } from '../../garments/panels-of.ts'
import { polygonArea } from '../../geometry/polygon.ts'
import { sum } from './change.ts'
import type { RemedyMaker } from './remedy.ts'

/** Less cloth is no gain, mm²: a postage stamp. */
const LEAST_GAIN = 500

/** Unpicks the seams and lets down the hems of a garment that was to be cut open. */
export const unpick: RemedyMaker = {
  kinds: ['unpick'],
  propose(question) {
    if (question.garment.opening === 'unpicked') return []
    const garment: Garment = { ...question.garment, opening: 'unpicked' }
    const gained = clothIn(garment) - clothIn(question.garment)
    if (gained < LEAST_GAIN) return []
    return [{ steps: [{ kind: 'unpick', gained }], question: { ...question, garment } }]
  },
}

function clothIn(garment: Garment): number {
  return sum(panelsOf(garment).map(({ outline }) => polygonArea(outline)))
}
