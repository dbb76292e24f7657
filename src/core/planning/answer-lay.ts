import { brokenInvariant } from '../base/assertions.ts'
import { writeLength } from '../base/length.ts'
import type { Mm } from '../base/units.ts'
import { solveAlike } from '../packing/alike/solve-alike.ts'
import type { Refutation } from '../packing/answer.ts'
import type { CopyRef } from '../packing/problem.ts'
import { refuteByArea } from '../packing/proof/area.ts'
import { recheck } from '../packing/proof-check/recheck.ts'
import type { PartialPacking } from '../packing/solve.ts'
import type { SolveControl } from './check.ts'
import { clothRefutation } from './cloth-refutation.ts'
import { knownLay } from './known-lay.ts'
import type { Lay, Reason } from './lay.ts'
import { isTrue, layOf, nothingPlaced } from './lay-of.ts'
import type { LayProblem } from './lay-problem.ts'
import { withSpare } from './lay-spare.ts'
import { answerWithWishes } from './own-edges.ts'
import { reasonText } from './reason-text.ts'
import { type Source, type Translation, translateProblem } from './translate.ts'
import { placementsFrom } from './warm-start.ts'

/**
 * Can these pieces be cut from these panels? First the lays known before, then the rules of cloth, then the packing with
 * its proofs; what is to spare comes last. Every lay is checked by code that shares nothing with the search before it
 * leaves here, part-lays for progress too.
 */
export function answerLay(problem: LayProblem, control: SolveControl): Lay {
  const start = control.clock()
  const lay = answerWithWishes(problem, control, answerWithin)
  const { seed, deadline, spareAsked, known = [] } = control
  const upTo = spareAsked === undefined ? {} : { upTo: spareAsked }
  const answer = spareAsked === 0 ? lay : withSpare(problem, lay, { seed, deadline, known, ...upTo })
  return { ...answer, elapsedMs: control.clock() - start }
}

function answerWithin(problem: LayProblem, control: SolveControl): Lay {
  const before = knownLay(problem, control)
  if (before) return before
  const cloth = clothRefutation(problem)
  if (cloth) return cannot(cloth, problem)
  const translation = translateProblem(problem)
  const { packing } = translation
  // Before the search: it would take an overlap within the tolerance of the format for a lay.
  const area = refuteByArea(packing)
  if (area) return refuted(area, translation, problem, control)
  const { onProgress, warmStart, spareAsked: _, known: __, ...rest } = control
  const answer = solveAlike(packing, {
    ...rest,
    ...(warmStart ? { warmStart: placementsFrom(translation, warmStart) } : {}),
    ...(onProgress
      ? { onProgress: (best: PartialPacking) => tellProgress(translation, best, onProgress) }
      : {}),
  })
  if (answer.verdict === 'cannot') return refuted(answer.refutation, translation, problem, control)
  return layOf(translation, isTrue(packing, answer) ? answer : nothingPlaced(packing))
}

/** What a re-check may cost an answer: some milliseconds. Tests follow every proof to its end. */
const RECHECK_WORK = 30_000

/** The proof, verified as far as that takes milliseconds. One that does not hold is a mistake of ours and is never shown. */
function refuted(
  refutation: Refutation,
  translation: Translation,
  problem: LayProblem,
  { glance }: Pick<SolveControl, 'glance'>,
): Lay {
  const { packing } = translation
  // At a glance the re-check would take longer than the proof.
  if (glance || recheck(packing, refutation, RECHECK_WORK) !== 'fails')
    return cannot(reasonOf(refutation, translation), problem)
  brokenInvariant(`a proof does not hold: ${JSON.stringify(refutation)}`)
  return layOf(translation, nothingPlaced(packing))
}

function cannot(reason: Omit<Reason, 'text'>, problem: LayProblem): Lay {
  const text = reasonText(reason, (id) => id, inCentimetres)
  const leftOut = problem.pieces.flatMap(({ id, count }) =>
    Array.from({ length: count }, (_, i) => `${id}#${i + 1}`),
  )
  return {
    verdict: 'cannot',
    placements: [],
    reason: { ...reason, text },
    leftOut,
    spare: null,
    spareIs: null,
    elapsedMs: 0,
  }
}

function inCentimetres(length: Mm): string {
  return `${writeLength(length, { unit: 'cm', decimalSign: '.', rounding: 'nearest' })} cm`
}

/** A refutation in the terms of the trade: both halves of a pair are one piece. */
function reasonOf({ kind, items, figures }: Refutation, { sources }: Translation): Omit<Reason, 'text'> {
  const pieces = [...new Set(items.map((item) => (sources[item] as Source).piece.id))]
  return { kind, pieces, figures }
}

function tellProgress(
  translation: Translation,
  best: PartialPacking,
  onProgress: NonNullable<SolveControl['onProgress']>,
): void {
  const { packing } = translation
  if (!isTrue(packing, { verdict: 'not-found', ...best })) return
  const needed = ({ item }: CopyRef) => !packing.items[item]!.optional
  const missing = best.leftOut.filter(needed).length
  const of = packing.items.reduce((sum, { copies, optional }) => sum + (optional ? 0 : copies), 0)
  onProgress({ placed: of - missing, of, best: layOf(translation, { verdict: 'not-found', ...best }) })
}
