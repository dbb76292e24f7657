import type { Mm } from '../../core/base/units.ts'
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

/** Widths of a row that are tried, as shares of what the bare area asks for: rows always waste some room. */
const TRIED = [1, 1.15, 1.3, 1.5, 1.75, 2, 2.5]

/**
 * Sets outlines out in rows, the tallest first, so that all together are drawn as large as may be where the room is
 * `aspect` times as wide as high. `gap`: between two of them, as a share of the widest.
 */
export function flow(outlines: readonly Polygon[], aspect: number, gap = 0.06): Flow {
  const boxes = outlines.map((outline) => boxOf([outline]))
  const widest = Math.max(0, ...boxes.map(widthOf))
  const space = widest * gap
  const area = boxes.reduce((sum, box) => sum + (widthOf(box) + space) * (heightOf(box) + space), 0)
  const flows = TRIED.map((share) =>
    inRows(outlines, boxes, Math.max(widest, Math.sqrt(area * aspect) * share), space),
  )
  /** Height of the room that this flow would fill. */
  const room = ({ box }: Flow) => Math.max(heightOf(box), widthOf(box) / aspect)
  return flows.reduce((best, next) => (room(next) < room(best) ? next : best))
}

function inRows(outlines: readonly Polygon[], boxes: readonly Box[], across: Mm, space: Mm): Flow {
  const order = [...boxes.keys()].sort((a, b) => heightOf(boxes[b] as Box) - heightOf(boxes[a] as Box))
  const placed: Polygon[] = [...outlines]
  let [x, top, rowHeight] = [0, 0, 0]
  for (const k of order) {
    const box = boxes[k] as Box
    if (x > 0 && x + widthOf(box) > across) {
      top -= rowHeight + space
      x = 0
      rowHeight = 0
    }
    placed[k] = polygonMoved(outlines[k] as Polygon, x - box.minX, top - box.maxY)
    x += widthOf(box) + space
    rowHeight = Math.max(rowHeight, heightOf(box))
  }
  return { outlines: placed, box: boxOf(placed) }
}

function widthOf({ minX, maxX }: Box): Mm {
  return maxX - minX
}

function heightOf({ minY, maxY }: Box): Mm {
  return maxY - minY
}
