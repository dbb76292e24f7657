import type { Point } from '../../core/geometry/types.ts'

/** Where a pointer is in the drawing's own millimetres, y up. */
export function pointIn(svg: SVGSVGElement | null, event: MouseEvent): Point {
  const toScreen = svg?.getScreenCTM()
  if (!toScreen) return [0, 0]
  const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(toScreen.inverse())
  return [x, -y]
}
