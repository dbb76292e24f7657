import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { NO_DEADLINE } from '../../../../src/core/base/deadline.ts'
import type { Polygon, Way } from '../../../../src/core/geometry/index.ts'
import { type PackingProblem, solve } from '../../../../src/core/packing/index.ts'
import { PENTOMINOES, scaled, TANGRAM } from '../../../../src/terminal/bench/puzzle-shapes.ts'
import { exactWays, layFaults, makeItem, makeProblem, rectangle, square } from '../../../support/packing.ts'

/** Puzzles with known answers; lengths are scaled so that a unit is 100 mm (10 mm for the jigsaws). */

const UNIT = 100

function expectFits(problem: PackingProblem): void {
  const answer = solve(problem, { seed: 1, deadline: NO_DEADLINE, clock: () => 0 })
  expect(answer.verdict).toBe('fits')
  if (answer.verdict === 'fits') expect(layFaults(problem, answer.placements)).toEqual([])
}

/** Any way up and any quarter turn: the free pentominoes. */
const FREE = exactWays([0, 90, 180, 270], [false, true])
const EIGHTHS = exactWays([0, 45, 90, 135, 180, 225, 270, 315], [false, true])
const ANY: Way[] = [{ turn: 0, mirrored: false, tilt: 180 }]

const pentominoes = Object.entries(PENTOMINOES).map(([id, points]) =>
  makeItem(id, scaled(points, UNIT), 1, FREE),
)

const tangram = TANGRAM.map((points, i) => makeItem(`tan ${i}`, scaled(points, UNIT), 1, EIGHTHS))

describe('puzzles with known answers', () => {
  // 2339 solutions: Haselgrove and Haselgrove 1960.
  it('finds the 12 pentominoes in 6 by 10', () => {
    expectFits(makeProblem(rectangle(6 * UNIT, 10 * UNIT), pentominoes))
  })

  // 65 solutions: Scott 1958 (from memory).
  it('finds the 12 pentominoes in 8 by 8 round the four middle squares', () => {
    const hole: Polygon = scaled(
      [
        [3, 3],
        [5, 3],
        [5, 5],
        [3, 5],
      ],
      UNIT,
    )
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
    const pieces: Polygon[] = file.pieces
    const items = pieces.map((points, i) => makeItem(`piece ${i}`, scaled(points, 10), 1, exactWays([0])))
    expectFits(makeProblem(square(file.side * 10), items))
  })
})
