import type { Garment } from '../../garments/garment.ts'
import { lateProofs, refuteEarly } from '../../packing/proof/refute.ts'
import { layProblemFor } from '../check-problem.ts'
import { clothRefutation } from '../cloth-refutation.ts'
import { withMeasuresRaised } from '../measures-off.ts'
import { translateProblem } from '../translate.ts'
import type { TwoMeasures } from './brief.ts'
import { type BriefControl, PROOF_SLICES } from './effort.ts'
import { type Asked, checkOf } from './least-rung.ts'
import { garmentOf, type Rungs } from './rungs.ts'

/**
 * The highest rung such that it and every rung below it are proved to yield nothing, even if the tape shows too little by
 * the doubt; null: not even the lowest. Each is proved by itself: panels of a smaller garment need not lie inside
 * those of a larger one.
 */
export function tooSmall(asked: Asked, rungs: Rungs, control: BriefControl): TwoMeasures | null {
  let proved: TwoMeasures | null = null
  for (const rung of rungs) {
    const { width, length } = rung
    const garment = withMeasuresRaised(garmentOf(asked.kind, rung, asked.cloth), asked.doubt)
    if (control.deadline.passed() || !isTooSmall(asked, garment, control)) break
    proved = { width, length }
  }
  return proved
}

function isTooSmall(asked: Asked, garment: Garment, { deadline }: BriefControl): boolean {
  const problem = layProblemFor(checkOf(asked, garment))
  // Nothing is left of so small a garment: the pieces themselves are known to be sound.
  if (!problem.ok || clothRefutation(problem.value)) return true
  const { packing } = translateProblem(problem.value)
  if (refuteEarly(packing)) return true
  const proofs = lateProofs(packing)
  for (let k = 0; k < PROOF_SLICES && !deadline.passed(); k++) {
    const { done, value } = proofs.next()
    if (done) return value !== null
  }
  return false
}
