import fc from 'fast-check'
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js'
import type Geometry from 'jsts/org/locationtech/jts/geom/Geometry.js'
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js'
import DistanceOp from 'jsts/org/locationtech/jts/operation/distance/DistanceOp.js'
import OverlayOp from 'jsts/org/locationtech/jts/operation/overlay/OverlayOp.js'
import { type Point, type Polygon, pointInPolygon, type Rings } from '../../src/core/geometry/index.ts'

/** Reference planar geometry for tests: the JTS library through jsts, which shares no code with ours. */

const factory = new GeometryFactory()

export function toJsts(polygon: Polygon): Geometry {
  const ring = [...polygon, polygon[0] as Point].map(([x, y]) => new Coordinate(x, y))
  return factory.createPolygon(factory.createLinearRing(ring))
}

export function distanceToLine([x, y]: Point, [from, to]: readonly [Point, Point]): number {
  const line = factory.createLineString([from, to].map(([lx, ly]) => new Coordinate(lx, ly)))
  return DistanceOp.distance(factory.createPoint(new Coordinate(x, y)), line)
}

/** What both cover. */
export function overlap(a: Geometry, b: Geometry): Geometry {
  return OverlayOp.intersection(a, b)
}

export function overlapArea(a: Geometry, b: Geometry): number {
  return overlap(a, b).getArea()
}

/** Area of `a` outside `b`. */
export function uncoveredArea(a: Geometry, b: Geometry): number {
  return OverlayOp.difference(a, b).getArea()
}

/** Least distance, 0 if they touch or overlap. */
export function distanceBetween(a: Geometry, b: Geometry): number {
  return DistanceOp.distance(a, b)
}

/** Strictly inside by the even–odd rule over all rings, which holds for rings that do not cross. */
export function ringsContain(rings: Rings, point: Point): boolean {
  let inside = false
  for (const ring of rings) {
    const where = pointInPolygon(point, ring)
    if (where === 0) return false
    if (where > 0) inside = !inside
  }
  return inside
}

/** Simple polygons, star-shaped about the origin, of `corners` corners at most `radius` away; mostly non-convex. */
export function starPolygon(corners: number, radius: number): fc.Arbitrary<Polygon> {
  return fc
    .array(fc.integer({ min: 300, max: 1000 }), { minLength: corners, maxLength: corners })
    .map((shares) =>
      shares.map((share, i): Point => {
        const angle = (2 * Math.PI * i) / corners
        return [(radius * share * Math.cos(angle)) / 1000, (radius * share * Math.sin(angle)) / 1000]
      }),
    )
}
