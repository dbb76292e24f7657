import { type NoTurn, turnsOn, turnsUpright } from '../cloth/index.ts'
import type { Reason } from './lay.ts'
import type { LayPanel, LayPiece, LayProblem } from './lay-problem.ts'
import { hasMotif, motifOf } from './motifs.ts'

/**
 * Why some needed piece may lie on no panel at all, by the rules of cloth alone; null if each has a panel.
 * Lemma: a piece with no allowed turn on any panel has no place in any lay. Of several reasons the one that came
 * closest to serving is told: a print that would not be the right way up, else too little stretch, else a pile that points
 * the wrong way, else another cloth.
 */
export function clothRefutation(problem: LayProblem): Omit<Reason, 'text'> | null {
  for (const piece of problem.pieces) {
    if (piece.optional) continue
    const { shows } = piece
    // The copy that shows a motif must lie where the motif is.
    const panels = shows ? problem.panels.filter((panel) => hasMotif(panel, shows.motif)) : problem.panels
    const whyNot = panels.map((panel) => noTurnOn(panel, piece))
    if (whyNot.length === 0 || whyNot.includes(null)) continue
    const kind = CLOSEST_FIRST.find((reason) => whyNot.includes(reason)) as ClothReason
    const figures = kind === 'stretch' ? stretchFigures(piece, panels) : {}
    return { kind, pieces: [piece.id], figures }
  }
  return null
}

type ClothReason = NoTurn | 'upright'

const CLOSEST_FIRST: readonly ClothReason[] = ['upright', 'stretch', 'surface', 'cloth']

/** Why the copy of a piece that shows what it must, or else any copy, has no turn on the panel; null: it has one. */
function noTurnOn(panel: LayPanel, piece: LayPiece): ClothReason | null {
  const turns = turnsOn(piece, panel)
  if (typeof turns === 'string') return turns
  const up = piece.shows && motifOf(piece.shows.motif, [panel])?.up
  return up !== undefined && turnsUpright(turns, piece, up).length === 0 ? 'upright' : null
}

/** What the piece needs, and the most that any measured panel it may lie on gives each way. */
function stretchFigures(piece: LayPiece, panels: readonly LayPanel[]): Record<string, number> {
  const measured = panels
    .filter((panel) => turnsOn(piece, panel) === 'stretch')
    .map(({ stretch }) => stretch)
    .filter((stretch) => stretch !== null)
  const needs = { needsAcross: piece.needs.across, needsAlong: piece.needs.along }
  if (measured.length === 0) return needs
  return {
    ...needs,
    mostAcross: Math.max(...measured.map(({ across }) => across)),
    mostAlong: Math.max(...measured.map(({ along }) => along)),
  }
}
