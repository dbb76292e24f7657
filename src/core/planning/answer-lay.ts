import { brokenInvariant } from '../base/assertions.ts'
import { sooner } from '../base/deadline.ts'
import { writeLength } from '../base/length.ts'
import type { Mm } from '../base/units.ts'
import type { PackingAnswer, Refutation } from '../packing/answer.ts'
import { checkPacking, neededAreAll } from '../packing/check/check-packing.ts'
import type { CopyRef, PackingProblem, Placement } from '../packing/problem.ts'
import { refuteByArea } from '../packing/proof/area.ts'
import { recheck } from '../packing/proof-check/recheck.ts'
import { type PartialPacking, solve } from '../packing/solve.ts'
import { hasSpare, spare } from '../packing/spare.ts'
import type { SolveControl } from './check.ts'
import { clothRefutation } from './cloth-refutation.ts'
import type { Lay, Reason } from './lay.ts'
import type { LayProblem } from './lay-problem.ts'
import { answerWithWishes } from './own-edges.ts'
import { reasonText } from './reason-text.ts'
import {
  placementsFrom,
  type Source,
  type Translation,
  translateCopy,
  translatePlacement,
  translateProblem,
} from './translate.ts'

/** The spare may take this long, or as long as the lay took if that is more: a figure beside the answer, not the answer. */
const SPARE_MS = 600

/**
 * Can these pieces be cut from these panels? First the rules of cloth, then the packing with its proofs. Every lay
 * is checked by code that shares nothing with the search before it leaves here, part-lays for progress too.
 */
export function answerLay(problem: LayProblem, control: SolveControl): Lay {
  const start = control.clock()
  const answer = answerWithWishes(problem, control, (asked, share) =>
    answerWithin(asked, share, share.clock()),
  )
  return { ...answer, elapsedMs: control.clock() - start }
}

function answerWithin(problem: LayProblem, control: SolveControl, start: number): Lay {
  const cloth = clothRefutation(problem)
  if (cloth) return cannot(cloth, problem)
  const translation = translateProblem(problem)
  const { packing } = translation
  // Before the search: it would take an overlap within the tolerance of the format for a lay.
  const area = refuteByArea(packing)
  if (area) return refuted(area, translation, problem, control)
  const { onProgress, warmStart, spareAsked: _, ...rest } = control
  const answer = solve(packing, {
    ...rest,
    ...(warmStart ? { warmStart: placementsFrom(translation, warmStart) } : {}),
    ...(onProgress
      ? { onProgress: (best: PartialPacking) => tellProgress(translation, best, onProgress) }
      : {}),
  })
  if (answer.verdict === 'cannot') return refuted(answer.refutation, translation, problem, control)
  if (!isTrue(packing, answer)) return layOf(translation, nothingPlaced(packing), null)
  const placed = layOf(translation, answer, null)
  if (answer.verdict !== 'fits') return placed
  return { ...placed, spare: spareOf(packing, answer.placements, control, control.clock() - start) }
}

/** True if the lay keeps every rule. A lay that does not is a mistake of ours and is never shown. */
function isTrue(packing: PackingProblem, answer: Exclude<PackingAnswer, { verdict: 'cannot' }>): boolean {
  const faults = checkPacking(packing, answer.placements, answer.leftOut)
  const whole = answer.verdict !== 'fits' || neededAreAll(packing, answer.leftOut)
  if (faults.length === 0 && whole) return true
  brokenInvariant(`the search gave a lay that is none: ${JSON.stringify(faults.slice(0, 3))}`)
  return false
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
  return layOf(translation, nothingPlaced(packing), null)
}

function nothingPlaced({ items }: PackingProblem): Placed {
  const leftOut = items.flatMap(({ copies }, item) =>
    Array.from({ length: copies }, (_, copy) => ({ item, copy })),
  )
  return { verdict: 'not-found', placements: [], leftOut }
}

interface Placed {
  readonly verdict: 'fits' | 'not-found'
  readonly placements: readonly Placement[]
  readonly leftOut: readonly CopyRef[]
}

function layOf(translation: Translation, { verdict, placements, leftOut }: Placed, spareMm: Mm | null): Lay {
  return {
    verdict,
    placements: placements.map((placement) => translatePlacement(translation, placement)),
    reason: null,
    leftOut: leftOut.map((ref) => translateCopy(translation, ref)),
    spare: spareMm,
    elapsedMs: 0,
  }
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

function spareOf(
  packing: PackingProblem,
  placements: readonly Placement[],
  control: SolveControl,
  spent: number,
): Mm {
  const { seed, clock, deadline, spareAsked } = control
  if (spareAsked === 0) return 0
  const share = { seed, clock, deadline: sooner(deadline, Math.max(SPARE_MS, spent), clock) }
  if (spareAsked === undefined) return spare(packing, placements, share)
  return hasSpare(packing, placements, spareAsked, share) ? spareAsked : 0
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
  onProgress({ placed: of - missing, of, best: layOf(translation, { verdict: 'not-found', ...best }, null) })
}
