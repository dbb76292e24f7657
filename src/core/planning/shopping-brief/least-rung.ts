import type { Garment } from '../../garments/garment.ts'
import type { CheckAnswer, CheckQuestion } from '../check.ts'
import { checkQuestion } from '../check-question.ts'
import type { LayPlacement } from '../lay.ts'
import { withMeasuresReduced } from '../measures-off.ts'
import type { BriefQuestion, Enough } from './brief.ts'
import { type BriefControl, SEARCH_AGAIN_LOOKS, SEARCH_LOOKS, searchOf } from './effort.ts'
import { garmentOf, type Rungs } from './rungs.ts'

/** A brief with the cloth it takes for granted. */
export interface Asked extends BriefQuestion {
  readonly cloth: Partial<Garment['cloth']>
}

/**
 * The lowest rung on which a lay is found, by halving and then by trying harder just below; null: none. The lay is there
 * although the tape shows every measure too large by the doubt. A larger garment need not do where a smaller one does, by geometry
 * or by a search that found nothing, so lower rungs may do that were passed over.
 */
export function leastRung(asked: Asked, rungs: Rungs, control: BriefControl): Enough | null {
  let [low, high] = [-1, rungs.length]
  let best: Enough | null = null
  const offer = (at: number, looks: number): boolean => {
    const found = enoughAt(asked, rungs, at, control, looks, best?.answer.lay.placements)
    if (found) best = found
    return found !== null
  }
  while (high - low > 1 && !control.deadline.passed()) {
    const middle = (low + high) >> 1
    if (offer(middle, SEARCH_LOOKS)) high = middle
    else low = middle
  }
  while (best && high > 0 && !control.deadline.passed() && offer(high - 1, SEARCH_AGAIN_LOOKS)) high--
  return best
}

function enoughAt(
  asked: Asked,
  rungs: Rungs,
  at: number,
  control: BriefControl,
  looks: number,
  warmStart: readonly LayPlacement[] | undefined,
): Enough | null {
  const rung = rungs[at]
  if (!rung) return null
  const garment = garmentOf(asked.kind, rung, asked.cloth)
  const answer = answerOn(asked, garment, control, looks, warmStart)
  return answer && { width: rung.width, length: rung.length, garment, answer }
}

/** The answer for the garment less the doubt, if it has a lay. */
export function answerOn(
  asked: Asked,
  garment: Garment,
  control: BriefControl,
  looks: number,
  warmStart: readonly LayPlacement[] = [],
): CheckAnswer | null {
  const result = checkQuestion(checkOf(asked, withMeasuresReduced(garment, asked.doubt)), {
    ...searchOf(control, looks),
    warmStart,
  })
  return result.ok && result.value.lay.verdict === 'fits' ? result.value : null
}

export function checkOf(
  { pattern, version, size, roles, clearance }: Asked,
  garment: Garment,
): CheckQuestion {
  return { pattern, version, size, roles, clearance, garment }
}
