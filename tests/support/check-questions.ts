import type { Garment } from '../../src/core/garments/garment.ts'
import { emptyGarment } from '../../src/core/garments/starting.ts'
import type { Polygon } from '../../src/core/geometry/index.ts'
import type { Pattern, PatternPiece } from '../../src/core/patterns/pattern.ts'
import type { CheckAnswer, CheckQuestion, SolveControl } from '../../src/core/planning/check.ts'
import { layProblemFor } from '../../src/core/planning/check-problem.ts'
import { checkQuestion } from '../../src/core/planning/check-question.ts'
import { rectangle } from './lay-problems.ts'
import { aPattern, aPiece } from './pattern-builder.ts'

/** Builders of shop checks for tests. */

/** A drawn piece of cloth, nothing of which is lost. */
export function remnant(outline: Polygon, cloth: Partial<Garment['cloth']> = {}): Garment {
  const garment = emptyGarment('free-outline', 'remnant')
  return { ...garment, name: 'Remnant', outline, cloth: { ...garment.cloth, ...cloth } }
}

/** A rectangle of cloth with raw edges, by its measures. */
export function measuredCloth(width: number, length: number, traits: Garment['traits'] = {}): Garment {
  const garment = emptyGarment('cloth', 'cloth')
  return {
    ...garment,
    name: 'Cloth',
    measures: { 'cloth-width': width, 'cloth-length': length },
    traits: { selvedges: false, hemmed: false, ...traits },
  }
}

/** One rectangle in one size, cut as given. */
export function boxPiece(
  id: string,
  width: number,
  height: number,
  more: Partial<PatternPiece> = {},
): PatternPiece {
  const shapes = { M: { form: 'box', width, height, allowance: 0 } } as const
  return aPiece({ id, name: id, copies: 1, shapes, ...more })
}

/** All the pieces, in size M and a version `all`. */
export function patternOf(pieces: readonly PatternPiece[], more: Partial<Pattern> = {}): Pattern {
  const versions = [{ id: 'all', name: 'All', pieces: pieces.map(({ id }) => id) }]
  return aPattern({ sizes: ['M'], versions, pieces, clearance: 0, ...more })
}

export function asking(pattern: Pattern, garment: Garment, more: Partial<CheckQuestion> = {}): CheckQuestion {
  const { id = '' } = pattern.versions[0] ?? {}
  return { pattern, version: id, size: 'M', garment, roles: null, clearance: 0, ...more }
}

export const SHEET = rectangle(300, 100)

export function answered(question: CheckQuestion, control: SolveControl): CheckAnswer {
  const result = checkQuestion(question, control)
  if (!result.ok) throw new Error(JSON.stringify(result.faults))
  return result.value
}

/** An answer that found nothing and proved nothing, without a search. */
export function undecided(question: CheckQuestion): CheckAnswer {
  const problem = layProblemFor(question)
  if (!problem.ok) throw new Error(JSON.stringify(problem.faults))
  const leftOut = problem.value.pieces.flatMap(({ id, count }) =>
    Array.from({ length: count }, (_, k) => `${id}#${k + 1}`),
  )
  return {
    problem: problem.value,
    heads: 'up',
    lay: {
      verdict: 'not-found',
      placements: [],
      reason: null,
      leftOut,
      spare: null,
      spareIs: null,
      elapsedMs: 0,
    },
  }
}
