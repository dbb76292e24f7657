import type { Mm } from '../base/units.ts'
import { polygonArea } from '../geometry/polygon.ts'
import type { Point, Polygon } from '../geometry/types.ts'
import type { Region, Seat } from '../packing/problem.ts'
import type { LayPanel } from './lay-problem.ts'

/** Finished edges as seats, and the strips beside them that pieces which sit on none stay off. */
export function seatsOf({
  outline,
  finished = [],
  finishedDepth = 0,
}: LayPanel): Pick<Region, 'seats' | 'keptClear'> {
  if (finished.length === 0) return {}
  const clockwise = polygonArea(outline) < 0
  const seats = finished.map((k): Seat => {
    const ends = [outline[k] as Point, outline[(k + 1) % outline.length] as Point] as const
    return clockwise ? { from: ends[1], to: ends[0] } : { from: ends[0], to: ends[1] }
  })
  return finishedDepth > 0 ? { seats, keptClear: seats.map((seat) => strip(seat, finishedDepth)) } : { seats }
}

/** The rectangle inside the edge, square at its ends. */
function strip({ from, to }: Seat, depth: Mm): Polygon {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const [nx, ny] = [((from[1] - to[1]) / length) * depth, ((to[0] - from[0]) / length) * depth]
  return [from, to, [to[0] + nx, to[1] + ny], [from[0] + nx, from[1] + ny]]
}
