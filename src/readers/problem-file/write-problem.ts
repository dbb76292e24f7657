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
function writePanel({ stretch, cloth, outline, flaws, ...rest }: LayPanel): PanelInput {
  return {
    ...rest,
    outline: outline.map(([x, y]) => [x, y]),
    flaws: flaws.map((flaw) => flaw.map(([x, y]) => [x, y])),
    ...(stretch === null ? {} : { stretch }),
    ...(cloth === null ? {} : { cloth }),
  }
}

function writePiece({ turns, surface, cloth, outline, ...rest }: LayPiece): PieceInput {
  return {
    ...rest,
    outline: outline.map(([x, y]) => [x, y]),
    ...(turns === null ? {} : { turns: [...turns] }),
    ...(surface === 'any' ? { surface } : {}),
    ...(cloth === null ? {} : { cloth }),
  }
}
