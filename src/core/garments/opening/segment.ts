import type { Mm } from '../../base/units.ts'
import type { Point } from '../../geometry/types.ts'

/** Least distance from a point to the segment a–b. */
export function distanceToSegment(p: Point, a: Point, b: Point): Mm {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const square = dx * dx + dy * dy
  const share = square === 0 ? 0 : ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square
  const t = Math.min(1, Math.max(0, share))
  return Math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy)
}
