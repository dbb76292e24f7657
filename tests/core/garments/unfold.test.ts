import { describe, expect, it } from 'vitest'
import { hem, type Path, raw, seam } from '../../../src/core/garments/drafting/draft.ts'
import { outlineOf, traced } from '../../../src/core/garments/drafting/trace.ts'
import { unfolded } from '../../../src/core/garments/opening/unfold.ts'
import { polygonArea, polygonBox } from '../../../src/core/geometry/polygon.ts'
import { polygonIsSimple } from '../../../src/core/geometry/simple.ts'

const opened = (path: Path) => outlineOf(unfolded(traced(path)))

describe('letting hems down', () => {
  it('adds the hem below a straight panel', () => {
    const outline = opened({
      start: [0, 0],
      edges: [hem([400, 0], 30), seam([400, 300]), seam([0, 300]), seam([0, 0])],
    })
    expect(polygonArea(outline)).toBe(400 * 330)
    expect(polygonBox(outline).minY).toBe(-30)
  })

  it('mirrors sides that narrow toward the top', () => {
    // 100 mm in on 300 mm up: a hem 30 mm deep is 10 mm narrower at each end.
    const outline = opened({
      start: [0, 0],
      edges: [hem([400, 0], 30), seam([300, 300]), seam([100, 300]), seam([0, 0])],
    })
    expect(outline).toContainEqual([10, -30])
    expect(outline).toContainEqual([390, -30])
  })

  it('never makes the hem wider than its fold', () => {
    const outline = opened({
      start: [100, 0],
      edges: [hem([300, 0], 30), seam([400, 300]), seam([0, 300]), seam([100, 0])],
    })
    expect(outline).toContainEqual([100, -30])
    expect(outline).toContainEqual([300, -30])
  })

  it('counts nothing at the corner between two hems', () => {
    const outline = opened({
      start: [0, 0],
      edges: [hem([400, 0], 20), hem([400, 300], 20), hem([0, 300], 20), hem([0, 0], 20)],
    })
    expect(polygonArea(outline)).toBe(400 * 300 + 2 * 20 * 700)
    expect(polygonIsSimple(outline)).toBe(true)
  })

  it('finds a hem that runs over the start of the path', () => {
    const path: Path = {
      start: [200, 0],
      edges: [hem([400, 10], 30), seam([400, 300]), seam([0, 300]), seam([0, 10]), hem([200, 0], 30)],
    }
    const outline = opened(path)
    expect(polygonIsSimple(outline)).toBe(true)
    expect(polygonArea(outline)).toBeCloseTo(polygonArea(outlineOf(traced(path))) + 400.5 * 30, -2)
  })

  it('leaves a panel without hems alone', () => {
    const path: Path = { start: [0, 0], edges: [raw([400, 0]), raw([200, 300]), raw([0, 0])] }
    expect(opened(path)).toEqual(outlineOf(traced(path)))
  })

  it('leaves the panel as it is when its hems would run into one another', () => {
    const path: Path = {
      start: [0, 0],
      edges: [
        seam([40, 0]),
        seam([40, 200]),
        hem([40.1, 200.1], 60),
        seam([60, 200]),
        hem([60, 0], 60),
        seam([100, 0]),
        seam([100, 300]),
        seam([0, 300]),
        seam([0, 0]),
      ],
    }
    expect(opened(path)).toEqual(outlineOf(traced(path)))
  })
})
