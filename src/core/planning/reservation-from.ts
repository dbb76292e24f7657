import { polygonCounterClockwise, polygonMoved, polygonOriented } from '../geometry/index.ts'
import type { LaidPiece, Reservation } from '../stash/reservation.ts'
import type { CheckQuestion, Heads } from './check.ts'
import type { Lay, LayPlacement } from './lay.ts'
import type { LayProblem } from './lay-problem.ts'
import { copyGroups, patternCopy } from './wanted-copies.ts'

/** A lay, and as much of what it answers as a reservation needs. */
export interface AnsweredLay {
  readonly problem: Pick<LayProblem, 'pieces' | 'clearance'>
  readonly lay: Pick<Lay, 'placements' | 'spare'>
  readonly heads: Heads
}

/**
 * The reservation that accepts a lay: every copy placed, with its outline where it lies. A lay solved with heads down is
 * turned back, so that places are in the coordinates in which the stash draws panels. Of a part-lay only what has a place.
 * `question`: what the answer answers, if it asked for some copies only.
 */
export function reservationFrom(
  { problem, lay, heads }: AnsweredLay,
  ids: Pick<Reservation, 'id' | 'project' | 'garment'>,
  question?: Pick<CheckQuestion, 'pattern' | 'copies'>,
): Reservation {
  const groups = question?.pattern.pieces.flatMap((piece) => copyGroups({ piece }, question.copies))
  const outlines = new Map(problem.pieces.map(({ id, outline }) => [id, outline]))
  const pieces = lay.placements.flatMap((placement): readonly LaidPiece[] => {
    const outline = outlines.get(placement.piece)
    if (!outline) return []
    const { piece, copy, panel, turn, mirrored, x, y } = heads === 'up' ? placement : turnedBack(placement)
    const laid = polygonMoved(polygonOriented(outline, { turn, mirrored }), x, y)
    const named = groups ? patternCopy(groups, { piece, copy, mirrored }) : { piece, copy, mirrored }
    if (!named) return []
    return [{ ...named, panel, turn, x, y, outline: polygonCounterClockwise(laid) }]
  })
  const { id, project, garment } = ids
  return { id, project, garment, pieces, clearance: problem.clearance, spare: lay.spare }
}

/** The same place seen by somebody who stands at the other end of the panel. */
function turnedBack(placement: LayPlacement): LayPlacement {
  return {
    ...placement,
    turn: (placement.turn + 180) % 360,
    x: 0 - placement.x,
    y: 0 - placement.y,
  }
}
