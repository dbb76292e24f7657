import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { NO_DEADLINE } from '../../../../src/core/base/deadline.ts'
import type { Point, Polygon, Way } from '../../../../src/core/geometry/index.ts'
import { type PackingProblem, solve } from '../../../../src/core/packing/index.ts'
import { exactWays, layFaults, makeItem, makeProblem, rectangle, square } from '../../../support/packing.ts'

/** Puzzles with known answers; lengths are scaled so that a unit is 100 mm (10 mm for the jigsaws). */

const UNIT = 100
const scaled = (points: readonly (readonly number[])[], unit = UNIT): Polygon =>
  points.map(([x, y]): Point => [x! * unit, y! * unit])

function expectFits(problem: PackingProblem): void {
  const answer = solve(problem, { seed: 1, deadline: NO_DEADLINE, clock: () => 0 })
  expect(answer.verdict).toBe('fits')
  if (answer.verdict === 'fits') expect(layFaults(problem, answer.placements)).toEqual([])
}

/** Any way up and any quarter turn: the free pentominoes. */
const FREE = exactWays([0, 90, 180, 270], [false, true])
const EIGHTHS = exactWays([0, 45, 90, 135, 180, 225, 270, 315], [false, true])
const ANY: Way[] = [{ turn: 0, mirrored: false, tilt: 180 }]

const PENTOMINOES: Record<string, readonly (readonly number[])[]> = {
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
const pentominoes = Object.entries(PENTOMINOES).map(([id, points]) => makeItem(id, scaled(points), 1, FREE))

const TANGRAM = [
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
const tangram = TANGRAM.map((points, i) => makeItem(`tan ${i}`, scaled(points), 1, EIGHTHS))

describe('puzzles with known answers', () => {
  // 2339 solutions: Haselgrove and Haselgrove 1960.
  it('finds the 12 pentominoes in 6 by 10', () => {
    expectFits(makeProblem(rectangle(6 * UNIT, 10 * UNIT), pentominoes))
  })

  // 65 solutions: Scott 1958 (from memory).
  it('finds the 12 pentominoes in 8 by 8 round the four middle squares', () => {
    const hole = scaled([
      [3, 3],
      [5, 3],
      [5, 5],
      [3, 5],
    ])
    expectFits(makeProblem(square(8 * UNIT), pentominoes, [hole]))
  })

  it('finds the tangram in its square, exactly and with 0.6 mm to spare', () => {
    expectFits(makeProblem(square(4 * UNIT), tangram))
    expectFits(makeProblem(square(4 * UNIT + 0.6), tangram))
  })

  // s(5) = 2 + 1/√2 = 2.7071 and s(10) = 3 + 1/√2 = 3.7071: Friedman, Packing Unit Squares in Squares (survey).
  it('finds 5 unit squares in side 2.71 and 10 in side 3.71, turned as they like', () => {
    expectFits(makeProblem(square(2.71 * UNIT), [makeItem('s', square(UNIT), 5, ANY)]))
    expectFits(makeProblem(square(3.71 * UNIT), [makeItem('s', square(UNIT), 10, ANY)]))
  })

  // Dighe and Jakiela 1996; the sources stand in the files.
  it.each(['dighe1', 'dighe2'])('puts the published jigsaw %s together in its square', (name) => {
    const file = JSON.parse(
      readFileSync(new URL(`../../../fixtures/jigsaws/${name}.json`, import.meta.url), 'utf8'),
    )
    const pieces: number[][][] = file.pieces
    const items = pieces.map((points, i) => makeItem(`piece ${i}`, scaled(points, 10), 1, exactWays([0])))
    expectFits(makeProblem(square(file.side * 10), items))
  })
})
