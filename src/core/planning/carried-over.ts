import { NO_DEADLINE } from '../base/deadline.ts'
import type { Mm } from '../base/units.ts'
import { cosSin, polygonBox, polygonCounterClockwise } from '../geometry/index.ts'
import type { Orientation, Point, Polygon } from '../geometry/types.ts'
import { checkPacking } from '../packing/check/check-packing.ts'
import type { PackingProblem } from '../packing/problem.ts'
import { solve } from '../packing/solve.ts'
import type { Lay, LayPlacement } from './lay.ts'
import type { LayProblem } from './lay-problem.ts'

/** A question and its lay. */
export interface KnownLay {
  readonly problem: LayProblem
  readonly lay: Lay
}

/**
 * The lay of another question as a beginning for this one: each piece where it lies in the one of the same name that it
 * is cut out of, each panel round the one of the same name that it holds. So a lay of a larger size is one of a smaller
 * size whose pieces all lie in the larger ones, and one of a smaller garment is one of a larger garment. Where they do
 * not, middles are laid on middles. Nothing is promised: whether it holds is for a checker to say.
 */
export function carriedOver(problem: LayProblem, { problem: other, lay }: KnownLay): readonly LayPlacement[] {
  const shiftOf = (
    these: readonly Outlined[],
    those: readonly Outlined[],
    at: typeof inside,
  ): ReadonlyMap<string, Point> => {
    const byId = new Map(those.map((each) => [each.id, each.outline]))
    return new Map(
      these.flatMap(({ id, outline }): readonly [string, Point][] => {
        const like = byId.get(id)
        return like ? [[id, at(outline, like)]] : []
      }),
    )
  }
  const inPiece = shiftOf(problem.pieces, other.pieces, inside)
  const inPanel = shiftOf(problem.panels, other.panels, (outline, held) => inside(held, outline))
  return lay.placements.flatMap((placement) => {
    const piece = inPiece.get(placement.piece)
    const panel = inPanel.get(placement.panel)
    return piece && panel ? [moved(placement, oriented(piece, placement), panel)] : []
  })
}

interface Outlined {
  readonly id: string
  readonly outline: Polygon
}

function moved(placement: LayPlacement, [dx, dy]: Point, [ex, ey]: Point): LayPlacement {
  return { ...placement, x: placement.x + dx + ex, y: placement.y + dy + ey }
}

function oriented([x, y]: Point, { turn, mirrored }: Orientation): Point {
  const [cos, sin] = cosSin(turn)
  const px = mirrored ? -x : x
  return [px * cos - y * sin, px * sin + y * cos]
}

/** By how much to move the inner outline so that it lies in the outer one; middle on middle where no such place is found. */
function inside(inner: Polygon, outer: Polygon): Point {
  const likely = likelyShifts(inner, outer)
  const task = oneInOne(inner, outer)
  const holds = ([x, y]: Point) => checkPacking(task, [{ ...AS_DRAWN, x, y }], []).length === 0
  const found = likely.find(holds)
  if (found) return found
  const answer = solve(task, { seed: 1, deadline: NO_DEADLINE, clock: () => 0, glance: true })
  const [placed] = answer.verdict === 'fits' ? answer.placements : []
  return placed ? [placed.x, placed.y] : (likely.at(-1) as Point)
}

const AS_DRAWN = { item: 0, copy: 0, region: 0, turn: 0, mirrored: false } as const

/** As drawn; lower edges in line, by their left, middle and right; middle on middle. */
function likelyShifts(inner: Polygon, outer: Polygon): readonly Point[] {
  const [a, b] = [polygonBox(inner), polygonBox(outer)]
  const [left, low] = [b.minX - a.minX, b.minY - a.minY]
  const [right, high] = [b.maxX - a.maxX, b.maxY - a.maxY]
  const middle: Mm = (left + right) / 2
  return [
    [0, 0],
    [left, low],
    [middle, low],
    [right, low],
    [middle, high],
    [middle, (low + high) / 2],
  ]
}

function oneInOne(inner: Polygon, outer: Polygon): PackingProblem {
  const ways = [[{ turn: 0, mirrored: false, tilt: 0 }]]
  return {
    clearance: 0,
    regions: [{ id: 'outer', outline: polygonCounterClockwise(outer), forbidden: [] }],
    items: [{ id: 'inner', copies: 1, outline: inner, optional: false, ways }],
  }
}
