import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { draftsOf } from '../../../src/core/garments/drafts-of.ts'
import { lossWhenCut } from '../../../src/core/garments/losses.ts'
import { inset } from '../../../src/core/garments/opening/inset.ts'
import { mitred } from '../../../src/core/garments/opening/mitred.ts'
import { sewn } from '../../../src/core/garments/opening/sewn.ts'
import { remainder } from '../../../src/core/garments/opening/strips.ts'
import { polygonArea, polygonBox } from '../../../src/core/geometry/polygon.ts'
import { polygonIsSimple } from '../../../src/core/geometry/simple.ts'
import type { Polygon } from '../../../src/core/geometry/types.ts'
import { MEASURED_KINDS, oddGarment, plausibleGarment } from '../../support/garments.ts'
import { overlapArea, toJsts, uncoveredArea } from '../../support/planar.ts'

const losing = (outline: Polygon, losses: readonly number[]) =>
  outline.map((from, k) => ({ from, to: outline[(k + 1) % outline.length]!, loss: losses[k] ?? 0 }))

const SQUARE: Polygon = [
  [0, 0],
  [400, 0],
  [400, 300],
  [0, 300],
]

describe('cutting strips off a panel', () => {
  it('takes from each side its own strip', () => {
    const left = inset(losing(SQUARE, [25, 10, 0, 10]))!
    expect(polygonBox(left.outline)).toEqual({ minX: 10, minY: 25, maxX: 390, maxY: 300 })
    expect(polygonArea(left.outline)).toBeCloseTo(380 * 275, 3)
  })

  it('remembers which edge each new edge runs along', () => {
    const { outline, sources } = inset(losing(SQUARE, [25, 10, 0, 10]))!
    outline.forEach((from, k) => {
      const to = outline[(k + 1) % outline.length]!
      if (from[1] === 25 && to[1] === 25) expect(sources[k]).toBe(0)
      if (from[0] === 390 && to[0] === 390) expect(sources[k]).toBe(1)
      if (from[1] === 300 && to[1] === 300) expect(sources[k]).toBe(2)
      if (from[0] === 10 && to[0] === 10) expect(sources[k]).toBe(3)
    })
    expect([...sources].sort()).toEqual([0, 1, 2, 3])
  })

  it('changes nothing when nothing is lost', () => {
    expect(inset(losing(SQUARE, []))?.outline).toEqual(SQUARE)
  })

  it('meets in a sharp corner where the panel turns inward', () => {
    const angle: Polygon = [
      [0, 0],
      [400, 0],
      [400, 200],
      [200, 200],
      [200, 400],
      [0, 400],
    ]
    const left = inset(losing(angle, [10, 10, 10, 10, 10, 10]))!
    expect(left.outline).toHaveLength(6)
    expect(left.outline).toContainEqual([190, 190])
    expect(polygonArea(left.outline)).toBeCloseTo(380 * 180 + 180 * 200, 3)
  })

  it('cuts a wide strip straight through beside a narrow one that leans away', () => {
    const flared: Polygon = [
      [0, 0],
      [200, 0],
      [600, 500],
      [-400, 500],
    ]
    const left = inset(losing(flared, [25, 10, 0, 10]))!
    expect(polygonBox(left.outline).minY).toBeCloseTo(25, 9)
    expect(left.outline).toHaveLength(4)
  })

  it('keeps the larger part of a panel that falls apart', () => {
    const dumbbell: Polygon = [
      [0, 0],
      [100, 0],
      [100, 45],
      [200, 45],
      [200, 0],
      [400, 0],
      [400, 100],
      [200, 100],
      [200, 55],
      [100, 55],
      [100, 100],
      [0, 100],
    ]
    const edges = losing(dumbbell, Array(12).fill(6))
    expect(remainder(edges)).toHaveLength(2)
    const left = inset(edges)!
    expect(polygonBox(left.outline).minX).toBeCloseTo(206, 3)
    expect(polygonArea(left.outline)).toBeCloseTo(188 * 88, 0)
  })

  it('leaves no panel when nothing worth having is left', () => {
    expect(inset(losing(SQUARE, [160, 0, 160, 0]))).toBeNull()
    expect(inset(losing(SQUARE, [149, 0, 149.5, 0]))).toBeNull()
  })

  it('bug: of two equal points at the seam of the ring one stays', () => {
    // A wide, short sleeve whose hem corner the polygon library returned twice, as first and as last point.
    const sleeve: Polygon = [
      [38.18, 0],
      [470.82, 0],
      [509, 64.8],
      [254.5, 162],
      [0, 64.8],
    ]
    const left = inset(losing(sleeve, [25, 10, 10, 10, 10]))!
    expect(left.outline.filter(([, y]) => Math.abs(y - 25) < 0.01)).toHaveLength(2)
    expect(polygonIsSimple(left.outline)).toBe(true)
  })
})

describe('the quick way and the slow way', () => {
  it.each(MEASURED_KINDS)('agree wherever the quick one dares: %s', { timeout: 30_000 }, (id) => {
    let dared = 0
    fc.assert(
      fc.property(fc.oneof(plausibleGarment(id), oddGarment(id)), (garment) => {
        for (const { edges } of draftsOf(garment).map(sewn)) {
          const outline = edges.map((edge) => edge.from)
          if (!polygonIsSimple(outline) || polygonArea(outline) <= 0) continue
          const losing = edges.map((edge) => ({ ...edge, loss: lossWhenCut(edge.was, edge.depth) }))
          const quick = mitred(losing)
          if (!quick) continue
          dared++
          const parts = remainder(losing).map(toJsts)
          const area = parts.reduce((sum, part) => sum + part.getArea(), 0)
          const covered = parts.reduce((sum, part) => sum + overlapArea(part, toJsts(quick)), 0)
          expect(polygonArea(quick)).toBeCloseTo(area, 0)
          expect(covered).toBeCloseTo(area, 0)
          expect(uncoveredArea(toJsts(quick), toJsts(outline))).toBeLessThan(1e-6)
        }
      }),
      { numRuns: 40 },
    )
    expect(dared).toBeGreaterThan(5)
  })
})
