import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chordPoints, tangentPoints } from '../../../src/core/garments/drafting/arc.ts'
import {
  otherSide,
  type PanelDraft,
  seam,
  turnedOver,
  whole,
} from '../../../src/core/garments/drafting/draft.ts'
import { outlineOf, TRACE_FLATNESS, traced } from '../../../src/core/garments/drafting/trace.ts'
import { polygonArea } from '../../../src/core/geometry/polygon.ts'
import type { Point } from '../../../src/core/geometry/types.ts'
import { distanceToSegment } from '../../support/garments.ts'

const coordinate = fc.integer({ min: -500, max: 500 })
const point = fc.tuple(coordinate, coordinate)

/** A point of the quadratic Bézier curve, by de Casteljau's construction. */
function onCurve([a, b, c]: readonly [Point, Point, Point], t: number): Point {
  const mix = (p: Point, q: Point): Point => [p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t]
  return mix(mix(a, b), mix(b, c))
}

/** How far p lies to the left of its nearest edge; negative: to the right. */
function leftOfNearest(p: Point, line: readonly Point[]): number {
  let best = Number.POSITIVE_INFINITY
  let side = 0
  for (let k = 1; k < line.length; k++) {
    const [a, b] = [line[k - 1]!, line[k]!]
    const distance = distanceToSegment(p, a, b)
    if (distance < best) {
      best = distance
      side = Math.sign((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]))
    }
  }
  return side * best
}

describe('tracing a bent edge', () => {
  it('never leaves the cloth, on either side, and keeps near the true curve', () => {
    fc.assert(
      fc.property(point, point, point, (from, bend, to) => {
        const [cx, cy] = [to[0] - from[0], to[1] - from[1]]
        const [bx, by] = [bend[0] - from[0], bend[1] - from[1]]
        // Bends that run ahead, as all of ours do: where a curve doubles back, "left of the nearest edge" means nothing.
        const ahead = (cx * bx + cy * by) / (cx * cx + cy * cy)
        fc.pre(Math.abs(cx * by - cy * bx) > 500 && Math.hypot(cx, cy) > 20 && ahead > 0 && ahead < 1)
        const edges = traced({ start: from, edges: [seam(to, bend)] })
        const line = [...outlineOf(edges), to]
        for (let k = 1; k < 60; k++) {
          const off = leftOfNearest(onCurve([from, bend, to], k / 60), line)
          // The cloth lies on the left: the true edge may lie right of the traced one, never left of it.
          expect(off).toBeLessThan(1e-6)
          expect(off).toBeGreaterThan(-TRACE_FLATNESS - 1e-6)
        }
      }),
    )
  })

  it('joins the ends only when asked for straight edges', () => {
    const path = { start: [0, 0] as Point, edges: [seam([100, 0], [50, -80]), seam([50, 90]), seam([0, 0])] }
    expect(outlineOf(traced(path, 'straight'))).toEqual([
      [0, 0],
      [100, 0],
      [50, 90],
    ])
    expect(traced(path).length).toBeGreaterThan(3)
  })

  it('leaves out points that do not turn, also where the path starts', () => {
    const path = {
      start: [50, 0] as Point,
      edges: [seam([100, 0]), seam([100, 100]), seam([50, 100]), seam([0, 100]), seam([0, 0]), seam([50, 0])],
    }
    expect(outlineOf(traced(path))).toEqual([
      [0, 0],
      [100, 0],
      [100, 100],
      [0, 100],
    ])
  })

  it('leaves out edges without length', () => {
    const path = {
      start: [0, 0] as Point,
      edges: [seam([100, 0]), seam([100, 0]), seam([50, 80]), seam([0, 0])],
    }
    expect(outlineOf(traced(path))).toHaveLength(3)
  })
})

describe('arcs', () => {
  const arc = fc.record({
    centreY: fc.constant(0),
    radius: fc.integer({ min: 20, max: 3000 }),
    from: fc.constant(0),
    to: fc.double({ min: 0.05, max: Math.PI / 2, noNaN: true }),
  })

  it('have chords inside the circle and tangents outside it, both near', () => {
    fc.assert(
      fc.property(arc, (given) => {
        const start: Point = [0, -given.radius]
        const middles = (line: readonly Point[]) =>
          line.map((p, k): number => {
            const q = line[k - 1] ?? start
            return Math.hypot((p[0] + q[0]) / 2, (p[1] + q[1]) / 2)
          })
        for (const distance of middles(chordPoints(given))) {
          expect(distance).toBeLessThan(given.radius + 1e-6)
          expect(distance).toBeGreaterThan(given.radius - TRACE_FLATNESS - 1e-6)
        }
        for (const p of tangentPoints(given)) {
          expect(Math.hypot(...p)).toBeGreaterThan(given.radius - 1e-6)
          expect(Math.hypot(...p)).toBeLessThan(given.radius + TRACE_FLATNESS + 1e-6)
        }
        for (const distance of middles(tangentPoints(given)))
          expect(distance).toBeGreaterThan(given.radius - 1e-6)
      }),
    )
  })
})

describe('the other side', () => {
  const draft: PanelDraft = {
    id: 'left',
    start: [0, 0],
    edges: [seam([100, 0]), seam([80, 200], [120, 90]), seam([0, 180]), seam([0, 0])],
    flaws: [
      {
        kind: 'dart',
        outline: [
          [20, 20],
          [40, 20],
          [30, 60],
        ],
      },
    ],
  }

  it('has the same area, winds the same way, and turns back into itself', () => {
    const other = otherSide('right', draft)
    expect(polygonArea(outlineOf(traced(other)))).toBeCloseTo(polygonArea(outlineOf(traced(draft))), 6)
    expect(turnedOver(turnedOver(draft))).toEqual({ start: draft.start, edges: draft.edges })
    expect(polygonArea(other.flaws[0]!.outline)).toBe(polygonArea(draft.flaws[0]!.outline))
  })

  it('joins a half into a symmetric whole', () => {
    const panel = whole('front', {
      start: [0, 0],
      edges: [seam([100, 0]), seam([80, 200], [120, 90]), seam([0, 180])],
    })
    const outline = outlineOf(traced(panel))
    for (const [x, y] of outline) {
      expect(outline.some(([ox, oy]) => Math.abs(ox + x) < 1e-9 && Math.abs(oy - y) < 1e-9)).toBe(true)
    }
  })
})
