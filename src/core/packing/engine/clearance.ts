import type { Mm } from '../../base/units.ts'
import { windingRings } from '../../geometry/clipper.ts'
import { polygonArea, polygonCounterClockwise } from '../../geometry/polygon.ts'
import type { Point, Polygon } from '../../geometry/types.ts'

/**
 * The outline with a margin of at least `clearance` round it, counter-clockwise, holes filled in. Edges move out
 * by exactly `clearance`; each outward corner becomes an arc replaced by tangents that reach at most `excess`
 * beyond it, so the margin is never less than asked.
 */
export function withClearance(polygon: Polygon, clearance: Mm, excess: Mm): Polygon {
  const outline = polygonCounterClockwise(polygon)
  if (clearance <= 0) return outline
  const widest = 2 * Math.acos(clearance / (clearance + excess))
  const path = outline.flatMap((corner, i) =>
    cornerTangents(
      outline.at(i - 1) as Point,
      corner,
      outline[(i + 1) % outline.length] as Point,
      clearance,
      widest,
    ),
  )
  const rings = windingRings([path], 1)
  return rings.reduce((largest, ring) => (polygonArea(ring) > polygonArea(largest) ? ring : largest))
}

/** The path of the margin at one corner: tangents of the arc if it turns left, else a detour by the corner itself. */
function cornerTangents(before: Point, corner: Point, after: Point, clearance: Mm, widest: number): Point[] {
  const inward = Math.atan2(corner[1] - before[1], corner[0] - before[0]) - Math.PI / 2
  const outward = Math.atan2(after[1] - corner[1], after[0] - corner[0]) - Math.PI / 2
  let turn = outward - inward
  if (turn <= -Math.PI) turn += 2 * Math.PI
  if (turn > Math.PI) turn -= 2 * Math.PI
  const at = (angle: number, radius: number): Point => [
    corner[0] + radius * Math.cos(angle),
    corner[1] + radius * Math.sin(angle),
  ]
  if (turn < 0) return [at(inward, clearance), corner, at(outward, clearance)]
  const steps = Math.max(1, Math.ceil(turn / widest))
  const step = turn / steps
  const radius = clearance / Math.cos(step / 2)
  return Array.from({ length: steps }, (_, k) => at(inward + (k + 0.5) * step, radius))
}
