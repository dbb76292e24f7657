/**
 * The face of this folder without the polygon library: the page draws with these and stays small. Booleans,
 * offsets and Minkowski sums are imported from clipper.ts and minkowski.ts by the code that needs them.
 */
export {
  pointInPolygon,
  polygonArea,
  polygonBox,
  polygonCentroid,
  polygonCounterClockwise,
  polygonPerimeter,
} from './polygon.ts'
export { cosSin, polygonMoved, polygonOriented } from './transform.ts'
export type { Box, Orientation, Point, Polygon, Rings, Way } from './types.ts'
