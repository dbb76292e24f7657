import type { Point, Polygon } from '../../core/geometry/types.ts'

/** Outlines of puzzles with known answers, in units of their own. */

/** The twelve free pentominoes, in squares. */
export const PENTOMINOES: Readonly<Record<string, Polygon>> = {
  F: [
    [1, 0],
    [2, 0],
    [2, 2],
    [3, 2],
    [3, 3],
    [1, 3],
    [1, 2],
    [0, 2],
    [0, 1],
    [1, 1],
  ],
  I: [
    [0, 0],
    [1, 0],
    [1, 5],
    [0, 5],
  ],
  L: [
    [0, 0],
    [2, 0],
    [2, 1],
    [1, 1],
    [1, 4],
    [0, 4],
  ],
  N: [
    [0, 0],
    [1, 0],
    [1, 1],
    [2, 1],
    [2, 4],
    [1, 4],
    [1, 2],
    [0, 2],
  ],
  P: [
    [0, 0],
    [1, 0],
    [1, 1],
    [2, 1],
    [2, 3],
    [0, 3],
  ],
  T: [
    [1, 0],
    [2, 0],
    [2, 2],
    [3, 2],
    [3, 3],
    [0, 3],
    [0, 2],
    [1, 2],
  ],
  U: [
    [0, 0],
    [3, 0],
    [3, 2],
    [2, 2],
    [2, 1],
    [1, 1],
    [1, 2],
    [0, 2],
  ],
  V: [
    [0, 0],
    [3, 0],
    [3, 1],
    [1, 1],
    [1, 3],
    [0, 3],
  ],
  W: [
    [0, 0],
    [2, 0],
    [2, 1],
    [3, 1],
    [3, 3],
    [2, 3],
    [2, 2],
    [1, 2],
    [1, 1],
    [0, 1],
  ],
  X: [
    [1, 0],
    [2, 0],
    [2, 1],
    [3, 1],
    [3, 2],
    [2, 2],
    [2, 3],
    [1, 3],
    [1, 2],
    [0, 2],
    [0, 1],
    [1, 1],
  ],
  Y: [
    [0, 0],
    [1, 0],
    [1, 1],
    [2, 1],
    [2, 2],
    [1, 2],
    [1, 4],
    [0, 4],
  ],
  Z: [
    [0, 0],
    [2, 0],
    [2, 2],
    [3, 2],
    [3, 3],
    [1, 3],
    [1, 1],
    [0, 1],
  ],
}

/** The seven tans where they lie in a square of side 4 (traditional; areas 4 4 1 2 2 2 1 add up to 16). */
export const TANGRAM: readonly Polygon[] = [
  [
    [0, 0],
    [4, 0],
    [2, 2],
  ],
  [
    [0, 0],
    [2, 2],
    [0, 4],
  ],
  [
    [4, 0],
    [4, 2],
    [3, 1],
  ],
  [
    [2, 2],
    [3, 1],
    [4, 2],
    [3, 3],
  ],
  [
    [4, 2],
    [4, 4],
    [2, 4],
  ],
  [
    [0, 4],
    [1, 3],
    [3, 3],
    [2, 4],
  ],
  [
    [2, 2],
    [3, 3],
    [1, 3],
  ],
]

export function scaled(outline: Polygon, unit: number): Polygon {
  return outline.map(([x, y]): Point => [x * unit, y * unit])
}
