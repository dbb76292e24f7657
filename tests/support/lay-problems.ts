import { deadlineAfter, NO_DEADLINE } from '../../src/core/base/deadline.ts'
import type { Polygon } from '../../src/core/geometry/index.ts'
import type { SolveControl } from '../../src/core/planning/check.ts'
import type { LayPanel, LayPiece, LayProblem } from '../../src/core/planning/lay-problem.ts'

/** Builders of lay problems for tests: every field has the default of the file format. */

export function rectangle(width: number, height: number, x = 0, y = 0): Polygon {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]
}

export function panel(outline: Polygon, more: Partial<LayPanel> = {}): LayPanel {
  return { id: 'panel', outline, flaws: [], stretch: null, surface: 'plain', faces: 1, cloth: null, ...more }
}

export function piece(outline: Polygon, more: Partial<LayPiece> = {}): LayPiece {
  return {
    id: 'piece',
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

export function layProblem(
  panels: readonly LayPanel[],
  pieces: readonly LayPiece[],
  clearance = 0,
): LayProblem {
  return { name: '', clearance, seconds: 10, panels, pieces }
}

/** A search that may take so many seconds. */
export function within(seconds: number, seed = 1): SolveControl {
  const clock = () => performance.now()
  return { seed, clock, deadline: deadlineAfter(1000 * seconds, clock) }
}

/** A search that has all the time it wants. */
export function freely(seed = 1): SolveControl {
  return { seed, clock: () => 0, deadline: NO_DEADLINE }
}

/**
 * A search that may look at its deadline so many times: an amount of work that is the same on every machine, slow or
 * busy. No spare is looked for.
 */
export function withinSteps(steps: number, seed = 1): SolveControl {
  let taken = 0
  const passed = () => ++taken > steps
  const left = () => (taken > steps ? 0 : Number.POSITIVE_INFINITY)
  return { seed, clock: () => 0, deadline: { passed, left }, spareAsked: 0 }
}
