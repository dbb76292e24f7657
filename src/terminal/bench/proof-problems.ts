import type { LayPiece, LayProblem } from '../../core/planning/lay-problem.ts'
import { panel, piece, problem, rectangle } from './problems.ts'

/** 100 mm. */
const UNIT = 100
const square = (side: number) => rectangle(side * UNIT, side * UNIT)
const units = (count: number, more: Partial<LayPiece> = {}) => piece('square', square(1), { count, ...more })
const inSquare = (side: number, count: number, how: string, more: Partial<LayPiece> = {}) =>
  problem(
    `${count} unit squares in a square of ${side}${how}`,
    [panel('square', square(side))],
    [units(count, more)],
  )

/** A board without two opposite corners, which have one colour, and dominoes enough to cover it. `side` is even. */
export function boardWithoutCorners(side: number): LayProblem {
  const corner = (at: number) => rectangle(UNIT, UNIT, at * UNIT, at * UNIT)
  const board = panel('board', square(side), [corner(0), corner(side - 1)])
  const domino = piece('domino', rectangle(UNIT, 2 * UNIT), { count: side ** 2 / 2 - 1, grain: 'either' })
  return problem(`dominoes on a board of ${side} without two corners`, [board], [domino])
}

/**
 * Small problems without a lay. Squares in squares: s(2) = 2, s(5) = 2 + 1/√2, s(10) = 3 + 1/√2 (Friedman, Packing Unit Squares
 * in Squares, dynamic survey). Boards without two corners: every domino covers both colours (Black 1946, from memory).
 */
export const PROOF_PROBLEMS: readonly LayProblem[] = [
  inSquare(2.9, 5, ', straight'),
  inSquare(2.9, 5, ', straight or crosswise', { grain: 'either' }),
  inSquare(3.99, 10, ', straight'),
  inSquare(1.99, 2, ', any turn', { grain: 'any' }),
  inSquare(1.9, 2, ', any turn', { grain: 'any' }),
  inSquare(2.6, 5, ', any turn', { grain: 'any' }),
  inSquare(2.7, 5, ', any turn', { grain: 'any' }),
  inSquare(3.5, 10, ', any turn', { grain: 'any' }),
  problem(
    '3 unit squares in two squares of 1.9',
    [panel('a', square(1.9)), panel('b', square(1.9))],
    [units(3)],
  ),
  problem(
    '9 unit squares round a hole in a square of 3',
    [panel('square', square(3), [rectangle(UNIT, UNIT, UNIT, UNIT)])],
    [units(9)],
  ),
  boardWithoutCorners(4),
  boardWithoutCorners(6),
  boardWithoutCorners(8),
]
