import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fromEdge, tapeEdges } from '../../../src/core/cut-sheet/tape-edges.ts'
import { tapePoints } from '../../../src/core/cut-sheet/tape-points.ts'
import { polygonMoved, polygonOriented } from '../../../src/core/geometry/index.ts'
import type { Point, Polygon } from '../../../src/core/geometry/types.ts'

const box = (width: number, height: number): Polygon => [
  [0, 0],
  [width, 0],
  [width, height],
  [0, height],
]

type Edges = NonNullable<ReturnType<typeof tapeEdges>>

function edgesOf(outline: Polygon): Edges {
  const edges = tapeEdges(outline)
  if (!edges) throw new Error('this outline has edges to measure from')
  return edges
}

describe('the edges to measure from', () => {
  it('of a rectangle are its bottom and a side', () => {
    const [level, upright] = edgesOf(box(600, 700))
    expect(fromEdge(level, [50, 80])).toBeCloseTo(80)
    expect([50, 550]).toContain(Math.round(fromEdge(upright, [50, 80])))
  })

  it('run through the corners of a nearly straight edge', () => {
    const hem: Polygon = [
      [0, 0],
      [200, -1],
      [400, 0],
      [400, 500],
      [0, 500],
    ]
    const [level] = edgesOf(hem)
    expect(Math.abs(level.to[0] - level.from[0])).toBe(400)
  })

  it('have all the cloth before them where the panel has such edges', () => {
    // An L: its inner edges are as long as its outer ones, but cloth lies behind them.
    const corner: Polygon = [
      [0, 0],
      [600, 0],
      [600, 200],
      [200, 200],
      [200, 600],
      [0, 600],
    ]
    for (const edge of edgesOf(corner))
      expect(Math.min(...corner.map((point) => fromEdge(edge, point)))).toBeGreaterThan(-1)
  })

  it('are not to be had on a round panel', () => {
    const round = Array.from({ length: 90 }, (_, k): Point => {
      const angle = (k * 4 * Math.PI) / 180
      return [300 * Math.cos(angle), 300 * Math.sin(angle)]
    })
    expect(tapeEdges(round)).toBeNull()
  })
})

describe('the two points of a piece', () => {
  const edges = edgesOf(box(600, 700))

  it('are its corners farthest apart', () => {
    const [first, second] = tapePoints(polygonMoved(box(100, 300), 40, 60), edges)
    const distance = Math.hypot(second.at[0] - first.at[0], second.at[1] - first.at[1])
    expect(distance).toBeCloseTo(Math.hypot(100, 300))
  })

  it('can be found again from their two distances alone, wherever and however the piece lies', () => {
    const place = fc.record({
      turn: fc.integer({ min: 0, max: 359 }),
      mirrored: fc.boolean(),
      x: fc.integer({ min: 150, max: 400 }),
      y: fc.integer({ min: 150, max: 500 }),
    })
    fc.assert(
      fc.property(place, ({ turn, mirrored, x, y }) => {
        const laid = polygonMoved(polygonOriented(box(80, 120), { turn, mirrored }), x, y)
        for (const { at, from } of tapePoints(laid, edges)) {
          const found = meeting(edges, from)
          expect(Math.hypot(found[0] - at[0], found[1] - at[1])).toBeLessThan(1e-6)
        }
      }),
    )
  })
})

/** Where the two lines meet that run beside the edges at these distances. */
function meeting(edges: Edges, distances: readonly number[]): Point {
  // n · p = n · from + distance, for the inward unit normal n of each edge.
  const rows = edges.map(({ from, to }, k) => {
    const length = Math.hypot(to[0] - from[0], to[1] - from[1])
    const normal = [-(to[1] - from[1]) / length, (to[0] - from[0]) / length] as const
    return { normal, right: normal[0] * from[0] + normal[1] * from[1] + (distances[k] ?? 0) }
  })
  const [a, b] = rows as [(typeof rows)[number], (typeof rows)[number]]
  const determinant = a.normal[0] * b.normal[1] - a.normal[1] * b.normal[0]
  return [
    (a.right * b.normal[1] - a.normal[1] * b.right) / determinant,
    (a.normal[0] * b.right - a.right * b.normal[0]) / determinant,
  ]
}
