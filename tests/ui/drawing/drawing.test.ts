import { expect, it } from 'vitest'
import { pointInPolygon } from '../../../src/core/geometry/index.ts'
import type { Polygon } from '../../../src/core/geometry/types.ts'
import { labelPoint } from '../../../src/ui/drawing/label-point.ts'
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
