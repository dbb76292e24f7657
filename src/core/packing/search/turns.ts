import type { Deg } from '../../base/units.ts'
import type { Orientation, Point, Polygon, Way } from '../../geometry/types.ts'
import { ANY_TURN } from '../config.ts'
import { turnNormalised } from '../engine/shapes.ts'

/** Directions of the longest edges, degrees, longest first. */
function edgeDirections(polygon: Polygon): Deg[] {
  const edges = polygon.map(([x, y], i) => {
    const [nx, ny] = polygon[(i + 1) % polygon.length] as Point
    return { length: Math.hypot(nx - x, ny - y), turn: (Math.atan2(ny - y, nx - x) * 180) / Math.PI }
  })
  return edges.sort((a, b) => b.length - a.length).map(({ turn }) => turn)
}

/**
 * Turns worth trying for an item that may turn anyhow: those that lay one of its longer edges along one of the
 * region's longer edges (best packings nearly always have such contacts), then an even fan.
 */
export function anyTurns(item: Polygon, region: Polygon, alignments: number): Deg[] {
  const itemEdges = edgeDirections(item)
  const regionEdges = edgeDirections(region)
  const turns = new Set<Deg>([0])
  for (let rank = 0; rank < itemEdges.length + regionEdges.length && turns.size < alignments; rank++) {
    for (let i = 0; i <= rank && turns.size < alignments; i++) {
      const a = itemEdges[i]
      const b = regionEdges[rank - i]
      if (a !== undefined && b !== undefined) turns.add(turnNormalised(b - a))
    }
  }
  for (let k = 0; k < ANY_TURN.fan; k++) turns.add(turnNormalised((360 * k) / ANY_TURN.fan + 45))
  return [...turns]
}

/**
 * Which turns stand for a range of them: the middle alone, or also its ends and half-way to them; few or many
 * alignments for any turn. Many turns multiply the no-fit polygons, so they wait until few have failed.
 */
export type TurnChoice = 'exact' | 'tilted'

/** The single orientations that stand for a list of ways. */
export function orientationsOf(
  ways: readonly Way[],
  item: Polygon,
  region: Polygon,
  choice: TurnChoice,
): Orientation[] {
  const turnsOf = ({ turn, tilt }: Way): Deg[] => {
    if (tilt >= 180)
      return anyTurns(item, region, choice === 'exact' ? ANY_TURN.alignments : ANY_TURN.fineAlignments)
    if (tilt === 0 || choice === 'exact') return [turn]
    return [turn, turn - tilt, turn + tilt, turn - tilt / 2, turn + tilt / 2]
  }
  return ways.flatMap((way) => turnsOf(way).map((turn) => ({ turn, mirrored: way.mirrored })))
}

/** Turns that lay one of an item's longer edges against one of another's, as that lies. */
export function turnsAgainst(item: Polygon, other: Polygon, edges: number): Deg[] {
  const own = edgeDirections(item).slice(0, edges)
  return edgeDirections(other)
    .slice(0, edges)
    .flatMap((direction) => own.map((mine) => turnNormalised(direction + 180 - mine)))
}
