import { failed, ok, type Result } from '../base/result.ts'
import { ownHem } from '../patterns/own-hem.ts'
import { type PieceInSize, piecesOf } from '../patterns/pieces-of.ts'
import type { CheckQuestion, Heads } from './check.ts'
import { layPanels, MOTIF } from './lay-panels.ts'
import type { LayPanel, LayPiece, LayProblem } from './lay-problem.ts'
import { shownOn } from './motif-wish.ts'
import { hasMotif } from './motifs.ts'
import { cutOnBias } from './on-bias.ts'
import { type CopyGroup, copyGroups } from './wanted-copies.ts'
import { edgeTurnedOver, groupPiece } from './wanted-pieces.ts'

/** Seconds that a shared problem file asks for; the screen sets its own. */
const FILE_SECONDS = 10

/**
 * The lay problem that a check asks: the panels of the garment with its flaws, less what is taken of it, and the
 * pieces of the version in the size that have one of the roles asked. Faults name what the pattern or garment
 * lacks: a version or size that does not exist, a role with no pieces, measures that leave no panel.
 */
export function layProblemFor(question: CheckQuestion, heads: Heads = 'up'): Result<LayProblem> {
  const pieces = piecesOf(question.pattern, question.version, question.size)
  if (!pieces.ok) return pieces
  const asked = pieces.value.filter(
    ({ piece }) => question.roles === null || question.roles.includes(piece.role),
  )
  if (asked.length === 0)
    return failed([{ field: 'roles', message: 'no piece of this version has the role asked' }])
  const groups = asked.flatMap((piece) =>
    copyGroups(piece, question.copies).map((group) => [group, piece] as const),
  )
  if (groups.length === 0)
    return failed([{ field: 'copies', message: 'must name a copy of some piece that is asked' }])
  const clearance = Math.max(question.pattern.clearance, question.clearance)
  const panels = layPanels(question, heads, clearance)
  if (panels.length === 0)
    return failed([{ field: 'measures', message: 'nothing is left of the garment at these measures' }])
  return ok({
    name: `${question.pattern.name}, ${question.size}: ${question.garment.name}`,
    clearance,
    seconds: FILE_SECONDS,
    panels,
    pieces: groups.map(([group, piece]) => layPiece(group, piece, question, panels)),
  })
}

function layPiece(
  group: CopyGroup,
  inSize: PieceInSize,
  { ownHem: hemmed = [], onBias = [], motif }: CheckQuestion,
  panels: readonly LayPanel[],
): LayPiece {
  const { piece, shape, outline } = inSize
  const { id, turned } = group
  const own = hemmed.includes(piece.id) ? ownHem(shape) : null
  const laid = onBias.includes(piece.id) ? cutOnBias(piece) : piece
  const cut = groupPiece(group, { piece: laid, shape, outline: own?.outline ?? outline })
  const shows =
    !turned && id === piece.id && motif?.piece === id && panels.some((panel) => hasMotif(panel, MOTIF))
  return {
    ...cut,
    ...(own ? { sit: { edge: turned ? edgeTurnedOver(own.edge, cut.outline) : own.edge, must: true } } : {}),
    ...(shows ? { shows: shownOn(cut.outline, motif, MOTIF) } : {}),
  }
}
