import { checkPacking, neededAreAll } from '../../src/core/packing/check/check-packing.ts'
import type { Lay } from '../../src/core/planning/lay.ts'
import type { LayProblem } from '../../src/core/planning/lay-problem.ts'
import { translateProblem } from '../../src/core/planning/translate.ts'
import { placementsFrom } from '../../src/core/planning/warm-start.ts'
import { writeLayFile } from '../../src/readers/problem-file/lay-schema.ts'
import { writeProblem } from '../../src/readers/problem-file/write-problem.ts'
import { type LayFile, layFaults, type ProblemFile } from './lay-checker.ts'

/** Everything that the app's own checker and the separate one have against a whole lay; empty if it holds. */
export function faultsByBoth(problem: LayProblem, lay: Lay): unknown[] {
  const translation = translateProblem(problem)
  const placements = placementsFrom(translation, lay.placements)
  const placed = new Set(placements.map(({ item, copy }) => `${item}#${copy}`))
  const leftOut = translation.packing.items.flatMap(({ copies }, item) =>
    Array.from({ length: copies }, (_, copy) => ({ item, copy })).filter(
      (ref) => !placed.has(`${ref.item}#${ref.copy}`),
    ),
  )
  return [
    ...checkPacking(translation.packing, placements, leftOut),
    ...(neededAreAll(translation.packing, leftOut) ? [] : ['needed copies are left out']),
    ...layFaults(writeProblem(problem) as ProblemFile, writeLayFile(lay) as LayFile),
  ]
}
