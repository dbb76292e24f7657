import { polygonBox } from '../../core/geometry/index.ts'
import type { Box, Point, Polygon } from '../../core/geometry/types.ts'

/**
 * Drawings are in millimetres with y up, as everything in core; a screen's y runs down, so each y is turned over
 * here and nowhere else.
 */

/** SVG path data of a closed outline. */
export function closedPath(polygon: Polygon): string {
  return `${openPath(polygon)}Z`
}

/** SVG path data of a line. */
export function openPath(points: readonly Point[]): string {
  return points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${short(x)} ${short(-y)}`).join('')
}

/** The box round several outlines; an empty list gives an empty box at the origin. */
export function boxOf(polygons: readonly Polygon[]): Box {
  const points = polygons.flat()
  return points.length === 0 ? { minX: 0, minY: 0, maxX: 0, maxY: 0 } : polygonBox(points)
}

/** A box grown by `by` on every side, mm. */
export function boxGrown({ minX, minY, maxX, maxY }: Box, by: number): Box {
  return { minX: minX - by, minY: minY - by, maxX: maxX + by, maxY: maxY + by }
}

/** The `viewBox` that shows this box. */
export function viewBox({ minX, minY, maxX, maxY }: Box): string {
  return [minX, -maxY, maxX - minX, maxY - minY].map(short).join(' ')
}

/** A hundredth of a millimetre is finer than any screen. */
function short(value: number): number {
  return Math.round(value * 100) / 100
}
