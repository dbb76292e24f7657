import type { Polygon } from '../../core/geometry/types.ts'
import type { LayPanel, LayPiece, LayProblem } from '../../core/planning/lay-problem.ts'

/** Builders of small lay problems with plain cloth. */

export function rectangle(width: number, height: number, x = 0, y = 0): Polygon {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]
}

export function panel(id: string, outline: Polygon, flaws: readonly Polygon[] = []): LayPanel {
  return { id, outline, flaws, stretch: null, surface: 'plain', faces: 1, cloth: null }
}

export function piece(id: string, outline: Polygon, more: Partial<LayPiece> = {}): LayPiece {
  return {
    id,
    count: 1,
    outline,
    mirror: 'none',
    grain: 'along',
    turns: null,
    tilt: 0,
    needs: { across: 0, along: 0 },
    surface: 'as-panel',
    cloth: null,
    optional: false,
    ...more,
  }
}

export function problem(name: string, panels: readonly LayPanel[], pieces: readonly LayPiece[]): LayProblem {
  return { name, clearance: 0, seconds: 10, panels, pieces }
}
