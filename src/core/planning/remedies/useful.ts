import { ringsArea, ringsDifference } from '../../geometry/clipper.ts'
import { polygonArea, polygonCounterClockwise } from '../../geometry/polygon.ts'
import type { CheckAnswer } from '../check.ts'
import type { LayProblem } from '../lay-problem.ts'
import { sum } from './change.ts'
import type { RemedyKind, RemedyStep } from './remedy.ts'
import { CHANGE_STRETCH } from './short-of-stretch.ts'

/** Rounding of areas by the polygon library, as a share, many times over. */
const AREA_NOISE = 1e-6

/**
 * Which steps the answer leaves any hope for. What is ruled out cannot help, because the reason why the question has no
 * answer holds for the changed one as well:
 * - Too little stretch, or heads against the pile: only what changes turns, pile or pieces helps.
 * - More area of pieces than of cloth: turning and joining pieces helps nothing.
 * - A proof about some pieces: changing others only leaves it as it is. With a pile this says nothing, since the
 *   answer gives the proof for one way of the heads only.
 */
export function usefulSteps({ problem, lay }: CheckAnswer): (step: RemedyStep) => boolean {
  const { reason } = lay
  const short = isShortOfCloth(problem)
  const oneWay = problem.panels.some(({ surface }) => surface === 'one-way')
  return (step) => {
    if (short && AREA_KEPT.includes(step.kind)) return false
    if (reason?.kind === 'stretch') return CHANGE_STRETCH.includes(step.kind) && touches(step, reason.pieces)
    if (reason?.kind === 'surface') return CHANGE_PILE.includes(step.kind) && touches(step, reason.pieces)
    return reason === null || oneWay || touches(step, reason.pieces)
  }
}

/** The pieces' total area stays or grows. */
const AREA_KEPT: readonly RemedyKind[] = [
  'tilt',
  'quarter-turn',
  'join',
  'against-pile',
  'bias-cut',
  'larger-size',
]
const CHANGE_PILE: readonly RemedyKind[] = ['against-pile', 'other-garment', 'other-version']

/** Whether the step changes one of the pieces; steps that change the garment or all pieces change every one. */
function touches(step: RemedyStep, pieces: readonly string[]): boolean {
  if (step.kind === 'join') return pieces.includes(step.piece)
  return 'pieces' in step ? step.pieces.some((id) => pieces.includes(id)) : true
}

/** Lemma: pieces that do not overlap cover no more than the cloth there is. */
function isShortOfCloth({ panels, pieces }: LayProblem): boolean {
  const needed = pieces.filter(({ optional }) => !optional)
  const asked = sum(needed.map(({ count, outline }) => count * Math.abs(polygonArea(outline))))
  const cloth = panels.map(({ outline, flaws }) =>
    ringsArea(ringsDifference([polygonCounterClockwise(outline)], flaws.map(polygonCounterClockwise))),
  )
  return asked > sum(cloth) * (1 + AREA_NOISE)
}
