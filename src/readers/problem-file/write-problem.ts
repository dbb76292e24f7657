import type { Polygon } from '../../core/geometry/index.ts'
import type { LayPanel, LayPiece, LayProblem } from '../../core/planning/lay-problem.ts'
import { PROBLEM_FORMAT, type ProblemFileInput } from './problem-schema.ts'

/** A lay problem as a problem file, to share a check. Reading it back gives the same problem. */
export function writeProblem({ name, clearance, seconds, panels, pieces }: LayProblem): ProblemFileInput {
  return {
    format: PROBLEM_FORMAT,
    name,
    clearance,
    seconds,
    panels: panels.map(writePanel),
    pieces: pieces.map(writePiece),
  }
}

type PanelInput = ProblemFileInput['panels'][number]
type PieceInput = ProblemFileInput['pieces'][number]

/** Absent and null mean the same in the model, but a file leaves out what it does not say. */
function writePanel({ stretch, cloth, outline, flaws, finished, motifs, ...rest }: LayPanel): PanelInput {
  return {
    ...rest,
    outline: writeOutline(outline),
    flaws: flaws.map(writeOutline),
    ...(finished ? { finished: [...finished] } : {}),
    ...(motifs
      ? { motifs: motifs.map((motif) => ({ ...motif, outline: writeOutline(motif.outline) })) }
      : {}),
    ...(stretch === null ? {} : { stretch }),
    ...(cloth === null ? {} : { cloth }),
  }
}

function writePiece({ turns, surface, cloth, outline, shows, ...rest }: LayPiece): PieceInput {
  return {
    ...rest,
    outline: writeOutline(outline),
    ...(shows ? { shows: { ...shows, at: [shows.at[0], shows.at[1]] } } : {}),
    ...(turns === null ? {} : { turns: [...turns] }),
    ...(surface === 'any' ? { surface } : {}),
    ...(cloth === null ? {} : { cloth }),
  }
}

function writeOutline(polygon: Polygon): [number, number][] {
  return polygon.map(([x, y]) => [x, y])
}
