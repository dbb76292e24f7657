import type { Polygon } from '../../src/core/geometry/types.ts'
import type { LayProblem } from '../../src/core/planning/lay-problem.ts'

/** One square piece, `piece` mm wide, on one square panel, `panel` mm wide. */
export function squares(piece: number, panel: number): LayProblem {
  return {
    name: 'squares',
    clearance: 0,
    seconds: 5,
    panels: [
      {
        id: 'cloth',
        outline: square(panel),
        flaws: [],
        stretch: null,
        surface: 'plain',
        faces: 1,
        cloth: null,
      },
    ],
    pieces: [
      {
        id: 'square',
        count: 1,
        outline: square(piece),
        mirror: 'none',
        grain: 'along',
        turns: null,
        tilt: 0,
        needs: { across: 0, along: 0 },
        surface: 'as-panel',
        cloth: null,
        optional: false,
      },
    ],
  }
}

function square(side: number): Polygon {
  return [
    [0, 0],
    [side, 0],
    [side, side],
    [0, side],
  ]
}
