import type { Deg, Mm } from '../../base/units.ts'
import { polygonCounterClockwise } from '../../geometry/polygon.ts'
import { polygonOriented } from '../../geometry/transform.ts'
import type { Orientation, Point, Polygon, Way } from '../../geometry/types.ts'
import { ANY_TURN, BEST_FIT, RANGE_TURNS } from '../config.ts'
import { turnNormalised } from '../engine/shapes.ts'

interface Edge {
  readonly length: Mm
  readonly direction: Deg
}

/** Edges of a counter-clockwise polygon, longest first. */
function edgesOf(polygon: Polygon): Edge[] {
  const edges = polygon.map(([x, y], i): Edge => {
    const [nx, ny] = polygon[(i + 1) % polygon.length] as Point
    return { length: Math.hypot(nx - x, ny - y), direction: (Math.atan2(ny - y, nx - x) * 180) / Math.PI }
  })
  return edges.sort((a, b) => b.length - a.length)
}

function edgeDirections(polygon: Polygon): Deg[] {
  return edgesOf(polygon).map(({ direction }) => direction)
}

/**
 * Turns of a range of them that lay an edge of the item along one of the other polygon (`against` 180) or of the
 * region (0), those of the longest contacts first, no two nearly the same. Both polygons counter-clockwise.
 */
function turnsWithin({ turn, tilt }: Way, item: Polygon, other: Polygon, against: 0 | 180): Deg[] {
  const others = edgesOf(other)
  const contacts = edgesOf(item).flatMap((mine) =>
    others.flatMap(({ length, direction }) => {
      const off = ((((direction + against - mine.direction - turn + 180) % 360) + 360) % 360) - 180
      return Math.abs(off) <= tilt ? [{ off, length: Math.min(length, mine.length) }] : []
    }),
  )
  contacts.sort((a, b) => b.length - a.length)
  const offs: Deg[] = []
  for (const { off } of contacts) {
    if (offs.length === RANGE_TURNS.most) break
    if (offs.every((known) => Math.abs(known - off) >= RANGE_TURNS.apart)) offs.push(off)
  }
  return offs.map((off) => turn + off)
}

/**
 * Turns worth trying for an item that may turn anyhow: those that lay one of its longer edges along one of the
 * region's longer edges (best packings nearly always have such contacts), then an even fan. Both polygons
 * counter-clockwise, the item turned over already if it is to be.
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
  const ground = polygonCounterClockwise(region)
  const turnsOf = (way: Way): readonly Deg[] => {
    const { turn, tilt, mirrored } = way
    if (tilt === 0) return [turn]
    if (tilt >= 180) {
      const alignments = choice === 'exact' ? ANY_TURN.alignments : ANY_TURN.fineAlignments
      return anyTurns(upright(item, mirrored), ground, alignments)
    }
    if (choice === 'exact') return [turn]
    const spread = [turn, turn - tilt, turn + tilt, turn - tilt / 2, turn + tilt / 2]
    return [...spread, ...turnsWithin(way, upright(item, mirrored), ground, 0)]
  }
  return ways.flatMap((way) => turnsOf(way).map((turn) => ({ turn, mirrored: way.mirrored })))
}

/** The outline as it is turned from: turned over if mirrored, counter-clockwise. */
function upright(item: Polygon, mirrored: boolean): Polygon {
  return polygonCounterClockwise(polygonOriented(item, { turn: 0, mirrored }))
}

/** Turns of a way that lay one of an item's edges against one of another item's, as that lies: longer edges first. */
export function turnsAgainst(way: Way, item: Polygon, other: Polygon): Deg[] {
  const held = upright(item, way.mirrored)
  if (way.tilt < 180) return way.tilt > 0 ? turnsWithin(way, held, other, 180) : []
  const own = edgeDirections(held).slice(0, BEST_FIT.edges)
  return edgeDirections(other)
    .slice(0, BEST_FIT.edges)
    .flatMap((direction) => own.map((mine) => turnNormalised(direction + 180 - mine)))
}
