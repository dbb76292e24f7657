import type { Deg, Mm } from '../../base/units.ts'
import { ringsOffset } from '../../geometry/clipper.ts'
import { polygonArea, polygonBox } from '../../geometry/polygon.ts'
import { polygonMoved, polygonOriented } from '../../geometry/transform.ts'
import type { Point, Polygon, Way } from '../../geometry/types.ts'

/**
 * How far inside the true outline a core stays: 3 µm. The polygon library rounds to 0.1 µm, a few times over, so
 * whatever is computed with cores errs on the side of "fits" by at least 2 µm.
 */
export const MARGIN: Mm = 0.003

/** The outline with the middle of its bounds at the origin, so that turning it moves its points as little as may be. */
export function centred(outline: Polygon): Polygon {
  return polygonMoved(outline, ...toCentre(outline))
}

/** How far an outline is moved to be centred. */
export function toCentre(outline: Polygon): Point {
  const { minX, minY, maxX, maxY } = polygonBox(outline)
  return [-(minX + maxX) / 2, -(minY + maxY) / 2]
}

/** How far turning by up to `tilt` about the origin moves a point that is `radius` from it, at most. */
export function movedByTilt(radius: Mm, tilt: Deg): Mm {
  return tilt >= 180 ? 2 * radius : 2 * radius * Math.sin((tilt * Math.PI) / 360)
}

/**
 * A core: a counter-clockwise polygon that lies inside the outline, deeper than `MARGIN`, in each of the
 * orientations of `way`; null if the outline is too thin to have one. `outline` is centred.
 *
 * Lemma: turning by up to `tilt` moves no point farther from the origin than R by more than 2 R sin(tilt / 2); so
 * what lies deeper than that in the outline held at `turn` is inside all its turned copies. Only the largest part
 * of what is deep enough is kept: a subset of a core is a core. Inward corners are mitred, never rounded, since the
 * chord of an arc would lie too near.
 */
export function coreOutline(outline: Polygon, way: Way): Polygon | null {
  const radius = Math.max(...outline.map(([x, y]) => Math.hypot(x, y)))
  const moved = movedByTilt(radius, way.tilt)
  const held = polygonOriented(outline, way)
  const wound = polygonArea(held) < 0 ? [...held].reverse() : held
  const parts = ringsOffset([wound], -(MARGIN + moved), 'mitre').filter((ring) => polygonArea(ring) > 0)
  if (parts.length === 0) return null
  return parts.reduce((a, b) => (polygonArea(b) > polygonArea(a) ? b : a))
}
