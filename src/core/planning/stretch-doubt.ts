import { sooner } from '../base/deadline.ts'
import type { Stretch } from '../base/terms.ts'
import type { Percent } from '../base/units.ts'
import { turnsOn } from '../cloth/index.ts'
import type { CheckAnswer, SolveControl } from './check.ts'
import { clothRefutation } from './cloth-refutation.ts'
import type { Lay, LayPlacement } from './lay.ts'
import type { LayPanel, LayPiece, LayProblem } from './lay-problem.ts'
import { reasonText } from './reason-text.ts'

/** How far a stretch measured by hand may be off, in points of its percentage (common practice: about 5). */
export const STRETCH_DOUBT: Percent = 5

/**
 * How the cloth's stretch stands to what the pieces need where they lie, if it may be off by the doubt either way. `sure`: enough
 * even so. `barely`: as measured it is enough. `just-under`: as measured it is not, by no more than the doubt.
 * `unmeasured`: it has to be, and nobody measured it, or not on the bias, where the piece lies.
 */
export type StretchStanding = 'sure' | 'barely' | 'just-under' | 'unmeasured'

/** The piece that hangs most on the stretch, with what it needs and what its panel was measured to give. */
export interface StretchFinding {
  readonly standing: StretchStanding
  readonly piece: string
  readonly needs: Stretch
  readonly has: Stretch | null
}

/** Needs are never eased to nothing: cloth that gives nothing is no stretch cloth, whatever the gauge. In points. */
const LEAST_NEED: Percent = 1

/** More than any need. */
const ALL = Number.POSITIVE_INFINITY

/** The problem if every piece that needs stretch needed so many points less; negative: more. `ALL`: none at all. */
export function withNeedsEased(problem: LayProblem, by: Percent): LayProblem {
  if (by === 0) return problem
  return { ...problem, pieces: problem.pieces.map((piece) => eased(piece, by)) }
}

function eased(piece: LayPiece, by: Percent): LayPiece {
  const { across, along } = piece.needs
  return { ...piece, needs: { across: less(across, by), along: less(along, by) } }
}

function less(need: Percent, by: Percent): Percent {
  if (need === 0 || by === ALL) return 0
  return Math.max(need - by, Math.min(need, LEAST_NEED))
}

/**
 * By how many points to ease the needs, one try after another, strictest first: a lay that is sure is better than one that hangs
 * on the gauge, and only the last may prove that there is none. Where two tries allow the same turns only the stricter is kept, and
 * one in which a piece may lie nowhere is no try, unless it is the last.
 *
 * @param doubt Absent: the figures are taken at their word, as a file's are, and a stretch not measured is none.
 */
export function easings(problem: LayProblem, doubt: Percent | undefined): readonly Percent[] {
  if (doubt === undefined) return [0]
  const unmeasured = problem.panels.some(({ stretch }) => stretch === null)
  const tries = [...new Set([-doubt, 0, doubt, ...(unmeasured ? [ALL] : [])])]
  const kept: Percent[] = []
  let before = ''
  for (const by of tries) {
    const tried = withNeedsEased(problem, by)
    const ways = waysAllowed(tried)
    if (ways === before || (by !== tries.at(-1) && clothRefutation(tried))) continue
    kept.push(by)
    before = ways
  }
  return kept
}

/** Every turn that cloth allows, as a text: the same text, the same turns. */
export function waysAllowed({ pieces, panels }: LayProblem): string {
  return JSON.stringify(pieces.map((piece) => panels.map((panel) => turnsOn(piece, panel))))
}

/**
 * Solves the problem in tries of `easings` and gives the first answer that fits, else the last, whose proof is one even if
 * the gauge is off. With it comes how the stretch stands, and its problem is the true one wherever the lay answers that.
 *
 * @param problem Any heading of it: cloth is the same both ways.
 * @param solve Solves it with its needs changed by `ease`.
 */
export function answerByStretch(
  problem: LayProblem,
  doubt: Percent | undefined,
  control: SolveControl,
  solve: (ease: (problem: LayProblem) => LayProblem, control: SolveControl) => CheckAnswer,
): CheckAnswer {
  const tries = easings(problem, doubt)
  let answer: CheckAnswer | null = null
  for (const [i, by] of tries.entries()) {
    const share = control.deadline.left() / (tries.length - i)
    const deadline = sooner(control.deadline, share, control.clock)
    answer = solve((asked) => withNeedsEased(asked, by), { ...control, deadline })
    if (answer.lay.verdict === 'fits') break
  }
  return toldTrue(answer as CheckAnswer, problem.pieces, doubt)
}

/** The answer with the pieces' true needs, as far as it holds of them. */
function toldTrue(answer: CheckAnswer, pieces: readonly LayPiece[], doubt: Percent | undefined): CheckAnswer {
  if (doubt === undefined) return answer
  const needs = new Map(pieces.map((piece) => [piece.id, piece.needs]))
  const problem = {
    ...answer.problem,
    pieces: answer.problem.pieces.map((piece) => ({ ...piece, needs: needs.get(piece.id) ?? piece.needs })),
  }
  const { lay } = answer
  // Whatever is proved of pieces that need less holds of these.
  if (lay.verdict === 'cannot') return { ...answer, problem, lay: reasonTrue(lay, problem, doubt) }
  const stretch = stretchFinding(problem, lay.placements, doubt)
  const isTrue = !stretch || stretch.standing === 'sure' || stretch.standing === 'barely'
  return { ...answer, ...(isTrue ? { problem } : {}), ...(stretch ? { stretch } : {}) }
}

function reasonTrue(lay: Lay, { pieces }: LayProblem, doubt: Percent): Lay {
  const { reason } = lay
  const needs = pieces.find(({ id }) => id === reason?.pieces[0])?.needs
  if (reason?.kind !== 'stretch' || !needs) return lay
  const figures = { ...reason.figures, needsAcross: needs.across, needsAlong: needs.along, doubt }
  return {
    ...lay,
    reason: { ...reason, figures, text: reasonText({ ...reason, figures }, (id) => id, String) },
  }
}

const WORST_FIRST: readonly StretchStanding[] = ['unmeasured', 'just-under', 'barely', 'sure']

/** How the stretch stands in a lay, at the piece that hangs on it most; undefined: no piece of it needs any. Needs are the true ones. */
export function stretchFinding(
  { pieces, panels }: LayProblem,
  placements: readonly LayPlacement[],
  doubt: Percent,
): StretchFinding | undefined {
  const found = placements.flatMap((placement): readonly StretchFinding[] => {
    const piece = pieces.find(({ id }) => id === placement.piece)
    const panel = panels.find(({ id }) => id === placement.panel)
    if (!piece || !panel || (piece.needs.across === 0 && piece.needs.along === 0)) return []
    const stands = standingAt(piece, panel, placement.turn, doubt)
    return [{ standing: stands, piece: piece.id, needs: piece.needs, has: panel.stretch }]
  })
  const most = ({ needs }: StretchFinding) => needs.across + needs.along
  const rank = ({ standing }: StretchFinding) => WORST_FIRST.indexOf(standing)
  return found.sort((a, b) => rank(a) - rank(b) || most(b) - most(a))[0]
}

function standingAt(piece: LayPiece, panel: LayPanel, turn: number, doubt: Percent): StretchStanding {
  if (panel.stretch === null) return 'unmeasured'
  const serves = (by: Percent) => holdsTurn(turnsOn(eased(piece, by), panel), turn)
  if (serves(-doubt)) return 'sure'
  return serves(0) ? 'barely' : 'just-under'
}

/** Rounding of a turn on its way through a search and back. */
const TURN_NOISE = 1e-6

function holdsTurn(ranges: ReturnType<typeof turnsOn>, turn: number): boolean {
  if (typeof ranges === 'string') return false
  return ranges.some((range) => {
    const off = Math.abs(turn - range.turn) % 360
    return Math.min(off, 360 - off) <= range.tilt + TURN_NOISE
  })
}
