import { failed, ok, type Result } from '../base/result.ts'
import { flawOutlines } from '../garments/flaws.ts'
import type { PanelShape } from '../garments/kind.ts'
import type { HemmedPanel } from '../garments/opening/keep-hems.ts'
import { panelsKeepingHems, panelsOf } from '../garments/panels-of.ts'
import { polygonOriented } from '../geometry/index.ts'
import type { Polygon } from '../geometry/types.ts'
import { ownHem } from '../patterns/own-hem.ts'
import { type PieceInSize, piecesOf } from '../patterns/pieces-of.ts'
import type { CheckQuestion, Heads } from './check.ts'
import type { LayPanel, LayPiece, LayProblem } from './lay-problem.ts'
import { shownOn } from './motif-wish.ts'
import { hasMotif } from './motifs.ts'

/** Seconds that a shared problem file asks for; the screen sets its own. */
const FILE_SECONDS = 10

/**
 * The lay problem that a check asks: the panels of the garment with its flaws, and the pieces of the version in
 * the size that have one of the roles asked. Faults name what the pattern or garment lacks: a version or size
 * that does not exist, a role with no pieces, measures that leave no panel.
 */
export function layProblemFor(question: CheckQuestion, heads: Heads = 'up'): Result<LayProblem> {
  const pieces = piecesOf(question.pattern, question.version, question.size)
  if (!pieces.ok) return pieces
  const asked = pieces.value.filter(
    ({ piece }) => question.roles === null || question.roles.includes(piece.role),
  )
  if (asked.length === 0)
    return failed([{ field: 'roles', message: 'no piece of this version has the role asked' }])
  const panels = layPanels(question, heads)
  if (panels.length === 0)
    return failed([{ field: 'measures', message: 'nothing is left of the garment at these measures' }])
  return ok({
    name: `${question.pattern.name}, ${question.size}: ${question.garment.name}`,
    clearance: Math.max(question.pattern.clearance, question.clearance),
    seconds: FILE_SECONDS,
    panels,
    pieces: asked.map((piece) => layPiece(piece, question, panels)),
  })
}

/** The garment's panels as the solver takes them. Heads down: turned by 180°, so that the heads are up in the problem. */
function layPanels({ garment, ownHem = [], motif }: CheckQuestion, heads: Heads): readonly LayPanel[] {
  const held = (polygon: Polygon) =>
    heads === 'up' ? polygon : polygonOriented(polygon, { turn: 180, mirrored: false })
  const { stretch, surface, faces } = garment.cloth
  const panels: readonly (PanelShape & Partial<HemmedPanel>)[] =
    ownHem.length > 0 ? panelsKeepingHems(garment) : panelsOf(garment)
  return panels.map((panel) => ({
    id: panel.id,
    outline: held(panel.outline),
    flaws: flawOutlines(garment, panel.id).map(held),
    stretch,
    surface,
    faces,
    // The check asks by role already, so the cloth as such matches every piece asked.
    cloth: null,
    ...(panel.hems?.length ? { finished: panel.hems, finishedDepth: panel.hemDepth ?? 0 } : {}),
    ...(motif?.panel === panel.id ? { motifs: [{ id: MOTIF, outline: held(motif.outline) }] } : {}),
  }))
}

/** Id of the only motif there is. */
const MOTIF = 'print'

function layPiece(
  { piece, shape, outline }: PieceInSize,
  { ownHem: hemmed = [], motif }: CheckQuestion,
  panels: readonly LayPanel[],
): LayPiece {
  const own = hemmed.includes(piece.id) ? ownHem(shape) : null
  const cut = own?.outline ?? outline
  const shows = motif?.piece === piece.id && panels.some((panel) => hasMotif(panel, MOTIF))
  return {
    id: piece.id,
    count: piece.copies,
    outline: cut,
    mirror: piece.mirror,
    grain: piece.grain,
    turns: null,
    tilt: piece.tilt,
    needs: piece.needs,
    surface: piece.surface,
    cloth: null,
    optional: piece.optional,
    ...(own ? { sit: { edge: own.edge, must: true } } : {}),
    ...(shows ? { shows: shownOn(cut, motif, MOTIF) } : {}),
  }
}
