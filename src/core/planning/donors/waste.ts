import { ringsArea, ringsDifference } from '../../geometry/clipper.ts'
import { polygonCounterClockwise, polygonMoved, polygonOriented } from '../../geometry/index.ts'
import type { Polygon, Rings } from '../../geometry/types.ts'
import type { Lay } from '../lay.ts'
import type { LayPanel, LayPiece, LayProblem } from '../lay-problem.ts'
import { areaOf } from './asked.ts'
import { largestClearRectangle } from './clear-rectangle.ts'

/** What a lay costs in cloth, mm². */
export interface ClothCost {
  /** Free area of the panels it uses that no piece covers. */
  readonly waste: number
  /** By how much the largest clear rectangle of all the cloth shrinks: what a large garment loses to a small piece. */
  readonly spoils: number
}

export function clothCost({ panels, pieces }: LayProblem, lay: Pick<Lay, 'placements'>): ClothCost {
  const outlines = new Map(pieces.map(({ id, outline }) => [id, outline]))
  let [waste, before, after] = [0, 0, 0]
  for (const panel of panels) {
    const free = freeGround(panel)
    const clear = largestClearRectangle(free)
    const laid = lay.placements
      .filter((placement) => placement.panel === panel.id)
      .map((placement) => {
        const outline = outlines.get(placement.piece) as Polygon
        return polygonMoved(polygonOriented(outline, placement), placement.x, placement.y)
      })
    const left = laid.length > 0 ? ringsDifference(free, laid.map(polygonCounterClockwise)) : free
    if (laid.length > 0) waste += ringsArea(left)
    before = Math.max(before, clear)
    after = Math.max(after, laid.length > 0 ? largestClearRectangle(left) : clear)
  }
  return { waste, spoils: before - after }
}

/** A panel without its flaws. */
function freeGround({ outline, flaws }: Pick<LayPanel, 'outline' | 'flaws'>): Rings {
  const whole = [polygonCounterClockwise(outline)]
  return flaws.length === 0 ? whole : ringsDifference(whole, flaws.map(polygonCounterClockwise))
}

/** Free area of all panels, mm². */
export function freeArea(panels: readonly LayPanel[]): number {
  return panels.reduce((sum, panel) => sum + ringsArea(freeGround(panel)), 0)
}

/** Area of the needed copies that have no place, mm². */
export function missingArea(pieces: readonly LayPiece[], { leftOut }: Lay): number {
  const needed = new Map(pieces.filter(({ optional }) => !optional).map((piece) => [piece.id, areaOf(piece)]))
  return leftOut.reduce((sum, copy) => sum + (needed.get(copy.slice(0, copy.lastIndexOf('#'))) ?? 0), 0)
}
