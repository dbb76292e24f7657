import { type NoTurn, turnsOn } from '../cloth/index.ts'
import type { Reason } from './lay.ts'
import type { LayPanel, LayPiece, LayProblem } from './lay-problem.ts'
import { hasMotif } from './motifs.ts'

/**
 * Why some needed piece may lie on no panel at all, by the rules of cloth alone; null if each has a panel.
 * Lemma: a piece with no allowed turn on any panel has no place in any lay. Of several reasons the one that came
 * closest to serving is told: too little stretch, else a pile that points the wrong way, else another cloth.
 */
export function clothRefutation(problem: LayProblem): Omit<Reason, 'text'> | null {
  for (const piece of problem.pieces) {
    if (piece.optional) continue
    const { shows } = piece
    // The copy that shows a motif must lie where the motif is.
    const panels = shows ? problem.panels.filter((panel) => hasMotif(panel, shows.motif)) : problem.panels
    const whyNot = panels.map((panel) => turnsOn(piece, panel))
    if (whyNot.length === 0 || whyNot.some((turns) => typeof turns !== 'string')) continue
    const kind = CLOSEST_FIRST.find((reason) => whyNot.includes(reason)) as NoTurn
    const figures = kind === 'stretch' ? stretchFigures(piece, panels) : {}
    return { kind, pieces: [piece.id], figures }
  }
  return null
}

const CLOSEST_FIRST: readonly NoTurn[] = ['stretch', 'surface', 'cloth']

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
