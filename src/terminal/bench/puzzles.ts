import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Polygon } from '../../core/geometry/types.ts'
import type { LayProblem } from '../../core/planning/lay-problem.ts'
import { panel, piece, problem, rectangle } from './problems.ts'
import { PENTOMINOES, scaled, TANGRAM } from './puzzle-shapes.ts'

const CELL = 50

/** All twelve, each turned and turned over as it comes. */
function pentominoesIn(width: number, height: number): LayProblem {
  const pieces = Object.entries(PENTOMINOES).map(([id, outline]) =>
    piece(id, scaled(outline, CELL), { grain: 'either', mirror: 'free' }),
  )
  const board = panel('board', rectangle(width * CELL, height * CELL))
  return problem(`12 pentominoes in ${width} by ${height}`, [board], pieces)
}

/** Seven tans in their square of side 4, in eighths of a turn. */
function tangram(): LayProblem {
  const turns = [0, 45, 90, 135, 180, 225, 270, 315]
  const pieces = TANGRAM.map((outline, i) =>
    piece(`tan ${i + 1}`, scaled(outline, CELL), { turns, mirror: 'free' }),
  )
  return problem('tangram in its square', [panel('square', rectangle(4 * CELL, 4 * CELL))], pieces)
}

interface JigsawFile {
  readonly strip_height: number
  readonly pieces: readonly { readonly id: string; readonly quantity: number; readonly polygon: Polygon }[]
}

/** A case file whose pieces fill a square whole: Dighe and Jakiela 1996. */
function jigsaw(folder: string, name: string): LayProblem {
  const file: JigsawFile = JSON.parse(readFileSync(join(folder, `${name}.json`), 'utf8'))
  const scale = 1000 / file.strip_height
  const pieces = file.pieces.map(({ id, quantity, polygon }) =>
    piece(id, scaled(polygon, scale), { count: quantity, turns: [0] }),
  )
  return problem(name, [panel('square', rectangle(1000, 1000))], pieces)
}

/** Problems that have a lay without anything to spare; the jigsaws from a folder of published cases, if there is one. */
export function puzzles(folder: string | undefined): readonly LayProblem[] {
  const jigsaws = folder === undefined ? [] : ['dighe1', 'dighe2'].map((name) => jigsaw(folder, name))
  return [pentominoesIn(6, 10), pentominoesIn(5, 12), tangram(), ...jigsaws]
}
