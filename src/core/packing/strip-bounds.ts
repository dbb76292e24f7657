import type { Mm } from '../base/units.ts'
import { polygonArea, polygonBox } from '../geometry/polygon.ts'
import { polygonOriented } from '../geometry/transform.ts'
import type { Item } from './problem.ts'
import type { StripProblem } from './strip.ts'

/** No strip is shorter than its items' area asks, nor than any one of them. */
export function leastLength({ items, height }: StripProblem): Mm {
  const area = items.reduce((sum, { copies, outline }) => sum + copies * Math.abs(polygonArea(outline)), 0)
  return Math.max(area / height, ...items.map(leastExtent))
}

/** How far an item reaches along the strip in the turn in which it reaches least; 0 where it may be turned by degrees. */
function leastExtent({ outline, ways }: Item): Mm {
  const extents = (ways[0] ?? []).map((way) => {
    if (way.tilt > 0) return 0
    const { minX, maxX } = polygonBox(polygonOriented(outline, way))
    return maxX - minX
  })
  return extents.length > 0 ? Math.min(...extents) : 0
}

/** A length at which one item after the other finds room in any order. */
export function ampleLength({ items, height }: StripProblem): Mm {
  const area = items.reduce((sum, item) => sum + item.copies * boxArea(item), 0)
  const reach = items.reduce((most, item) => Math.max(most, diameter(item)), 0)
  return (2 * area) / height + 2 * reach
}

function diameter({ outline }: Item): Mm {
  return Math.max(...outline.flatMap(([ax, ay]) => outline.map(([bx, by]) => Math.hypot(ax - bx, ay - by))))
}

function boxArea({ outline }: Item): number {
  const xs = outline.map(([x]) => x)
  const ys = outline.map(([, y]) => y)
  return (Math.max(...xs) - Math.min(...xs)) * (Math.max(...ys) - Math.min(...ys))
}
