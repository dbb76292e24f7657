import { polygonMoved } from '../../core/geometry/index.ts'
import type { Box, Polygon } from '../../core/geometry/types.ts'
import { boxOf } from '../drawing/paths.ts'

/** Outlines set out beside one another, to one scale. */
export interface Flow {
  /** In the order given. */
  readonly outlines: readonly Polygon[]
  /** Round all of them, mm. */
  readonly box: Box
}

/**
 * Sets outlines out in rows, the tallest first, so that all together are about `aspect` times as wide as high.
 * `gap`: between two of them, as a share of the widest.
 */
export function flow(outlines: readonly Polygon[], aspect: number, gap = 0.06): Flow {
  const boxes = outlines.map((outline) => boxOf([outline]))
  const sizes = boxes.map(({ minX, minY, maxX, maxY }) => ({ width: maxX - minX, height: maxY - minY }))
  const widest = Math.max(0, ...sizes.map(({ width }) => width))
  const space = widest * gap
  const order = [...sizes.keys()].sort((a, b) => (sizes[b]?.height ?? 0) - (sizes[a]?.height ?? 0))
  const area = sizes.reduce((sum, { width, height }) => sum + (width + space) * (height + space), 0)
  // Rows waste some room, so a row as wide as the bare area asks for would come out too high.
  const across = Math.max(widest, Math.sqrt(area * aspect) * 1.05)
  const placed: Polygon[] = [...outlines]
  let [x, top, rowHeight] = [0, 0, 0]
  for (const k of order) {
    const { width, height } = sizes[k] as { width: number; height: number }
    if (x > 0 && x + width > across) {
      top -= rowHeight + space
      x = 0
      rowHeight = 0
    }
    const { minX, maxY } = boxes[k] as Box
    placed[k] = polygonMoved(outlines[k] as Polygon, x - minX, top - maxY)
    x += width + space
    rowHeight = Math.max(rowHeight, height)
  }
  return { outlines: placed, box: boxOf(placed) }
}
