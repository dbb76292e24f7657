import type { LayProblem } from '../../core/planning/lay-problem.ts'
import { writeProblem } from '../../readers/problem-file/write-problem.ts'

/** The text of a problem file for a check. Ids of pieces become their names, for a file has no other words for them. */
export function problemText(problem: LayProblem, nameOf: (pieceId: string) => string, title: string): string {
  const named = { ...problem, name: title, pieces: withNames(problem.pieces, nameOf) }
  return `${JSON.stringify(writeProblem(named))}\n`
}

/** Two pieces of one name keep apart by a number. */
function withNames(pieces: LayProblem['pieces'], nameOf: (pieceId: string) => string): LayProblem['pieces'] {
  const taken = new Set<string>()
  return pieces.map((piece) => {
    const name = nameOf(piece.id).trim() || piece.id
    let id = name
    for (let k = 2; taken.has(id); k++) id = `${name} ${k}`
    taken.add(id)
    return { ...piece, id }
  })
}
