import type { Mm } from '../../base/units.ts'
import type { Point, Polygon } from '../../geometry/types.ts'
import { counterClockwise } from './convex-cover.ts'

/** Doubles times 2^60 are whole from 2^-8 up; what is cut off below that is less than an attometre. */
const SCALE = 2 ** 60

/** Twice the polygon's area in whole units of 2^-120 mm²: the shoelace formula without rounding. */
export function exactTwiceArea(polygon: Polygon): bigint {
  const whole = polygon.map(
    ([x, y]) => [BigInt(Math.trunc(x * SCALE)), BigInt(Math.trunc(y * SCALE))] as const,
  )
  const twice = whole.reduce((sum, [ax, ay], i) => {
    const [bx, by] = whole[(i + 1) % whole.length] as readonly [bigint, bigint]
    return sum + ax * by - ay * bx
  }, 0n)
  return twice < 0n ? -twice : twice
}

interface Edge {
  readonly low: Point
  readonly high: Point
  readonly layer: number
  readonly winding: 1 | -1
}

/**
 * Area of the points for which `keeps` holds of what layers they are in (non-zero winding in each): by trapezoids
 * between neighbouring heights at which edges begin, end or cross. Off by the rounding of doubles only.
 */
export function areaWhere(
  layers: readonly (readonly Polygon[])[],
  keeps: (inside: readonly boolean[]) => boolean,
): number {
  const edges = layers.flatMap((polygons, layer) =>
    polygons.flatMap((polygon) => edgesOf(counterClockwise(polygon), layer)),
  )
  const heights = [
    ...new Set([...edges.flatMap(({ low, high }) => [low[1], high[1]]), ...crossings(edges)]),
  ].sort((a, b) => a - b)
  const open = [...edges].sort((a, b) => a.low[1] - b.low[1])
  let active: Edge[] = []
  let total = 0
  heights.slice(1).forEach((top, i) => {
    const bottom = heights[i] as number
    const middle = (bottom + top) / 2
    active = active.filter(({ high }) => high[1] > middle)
    while (open.length > 0 && (open[0] as Edge).low[1] < middle) {
      const edge = open.shift() as Edge
      if (edge.high[1] > middle) active.push(edge)
    }
    total += (top - bottom) * lengthKept(active, middle, layers.length, keeps)
  })
  return total
}

/** Length of what is kept of the level line at a height. */
function lengthKept(
  active: readonly Edge[],
  y: Mm,
  layers: number,
  keeps: (inside: readonly boolean[]) => boolean,
): Mm {
  const cuts = active.map((edge) => ({ edge, x: xAt(edge, y) })).sort((a, b) => a.x - b.x)
  const winding = new Array<number>(layers).fill(0)
  let length = 0
  cuts.forEach(({ edge, x }, k) => {
    const before = cuts[k - 1]?.x
    if (before !== undefined && keeps(winding.map((n) => n !== 0))) length += x - before
    winding[edge.layer] = (winding[edge.layer] as number) + edge.winding
  })
  return length
}

function edgesOf(polygon: Polygon, layer: number): Edge[] {
  return polygon.flatMap((a, i): Edge[] => {
    const b = polygon[(i + 1) % polygon.length] as Point
    if (a[1] === b[1]) return []
    return a[1] < b[1] ? [{ low: a, high: b, layer, winding: 1 }] : [{ low: b, high: a, layer, winding: -1 }]
  })
}

function xAt({ low, high }: Edge, y: Mm): Mm {
  return low[0] + ((high[0] - low[0]) * (y - low[1])) / (high[1] - low[1])
}

/** Heights at which two edges cross. */
function crossings(edges: readonly Edge[]): number[] {
  const heights: number[] = []
  const sorted = [...edges].sort((a, b) => a.low[1] - b.low[1])
  sorted.forEach((e, i) => {
    for (let k = i + 1; k < sorted.length && (sorted[k] as Edge).low[1] < e.high[1]; k++) {
      const f = sorted[k] as Edge
      const from = Math.max(e.low[1], f.low[1])
      const to = Math.min(e.high[1], f.high[1])
      const [before, after] = [xAt(e, from) - xAt(f, from), xAt(e, to) - xAt(f, to)]
      if (before * after < 0) heights.push(from + ((to - from) * before) / (before - after))
    }
  })
  return heights
}
