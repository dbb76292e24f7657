import type { Mm } from '../base/units.ts'
import type { Point } from '../geometry/types.ts'
import type { Region, Seat } from './problem.ts'

/** The seats of a region whose edges move in: what sits on them moves along. They keep their length; the region trims them. */
export function insetSeats({ seats = [] }: Region, inset: Mm): readonly Seat[] {
  return seats.map(({ from, to }) => {
    const length = Math.hypot(to[0] - from[0], to[1] - from[1])
    const [nx, ny] = [(from[1] - to[1]) / length, (to[0] - from[0]) / length]
    const moved = ([x, y]: Point): Point => [x + nx * inset, y + ny * inset]
    return { from: moved(from), to: moved(to) }
  })
}
