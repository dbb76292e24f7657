import { expect, it } from 'vitest'
import { pointInPolygon } from '../../../src/core/geometry/index.ts'
import type { Polygon } from '../../../src/core/geometry/types.ts'
import { labelPoint } from '../../../src/ui/drawing/label-point.ts'
import { panelsInRows } from '../../../src/ui/drawing/panels-in-rows.ts'
import { boxOf, closedPath, viewBox } from '../../../src/ui/drawing/paths.ts'

const L: Polygon = [
  [0, 0],
  [100, 0],
  [100, 20],
  [20, 20],
  [20, 200],
  [0, 200],
]

it('drawings turn y over, so that up in the model is up on the screen', () => {
  expect(closedPath(L)).toBe('M0 0L100 0L100 -20L20 -20L20 -200L0 -200Z')
  expect(viewBox(boxOf([L]))).toBe('0 -200 100 200')
})

it('a label stands inside its piece, even where the middle is not', () => {
  const { at, room } = labelPoint(L)
  expect(pointInPolygon(at, L)).toBe(1)
  expect(room).toBeGreaterThan(5)
})

it('panels stand in as many rows as make their picture the nearest to a square, and none on another', () => {
  const panel = (width: number, height: number): { outline: Polygon } => ({
    outline: [
      [5, 7],
      [5 + width, 7],
      [5 + width, 7 + height],
      [5, 7 + height],
    ],
  })
  const sides = ({ width, height }: { width: number; height: number }) => [width, height]
  // 60 mm apart: six of 100 × 200 in one row are 900 × 200, in two 420 × 460, in three 260 × 720.
  const six = panelsInRows(Array.from({ length: 6 }, () => panel(100, 200)))
  expect(sides(six)).toEqual([420, 460])
  expect(new Set(six.placed.map(({ dx, dy }) => `${dx + 5} ${dy + 7}`))).toEqual(
    new Set(['0 -200', '160 -200', '320 -200', '0 -460', '160 -460', '320 -460']),
  )
  expect(sides(panelsInRows([panel(100, 900), panel(100, 800)]))).toEqual([260, 900])
  expect(sides(panelsInRows([panel(900, 100), panel(800, 100)]))).toEqual([900, 260])
  expect(sides(panelsInRows([]))).toEqual([0, 0])
})
