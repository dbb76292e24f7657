import type { Mm } from '../../base/units.ts'
import type { Point } from '../../geometry/types.ts'
import { TRACE_FLATNESS } from './trace.ts'

/** A circular edge about (0, centreY): from angle to angle, in radians, counted from straight down, positive to the right. */
export interface Arc {
  readonly centreY: Mm
  readonly radius: Mm
  readonly from: number
  readonly to: number
}

/** Points of the arc's chords, its start left out: for an edge that bulges out of the cloth. */
export function chordPoints(arc: Arc): readonly Point[] {
  const parts = partsOf(arc)
  return Array.from({ length: parts }, (_, k) => onArc(arc, (k + 1) / parts, arc.radius))
}

/** Points of the arc's tangents, its start left out and its end included: for an edge that bites into the cloth. */
export function tangentPoints(arc: Arc): readonly Point[] {
  const parts = partsOf(arc)
  const reach = arc.radius / Math.cos((arc.to - arc.from) / parts / 2)
  const corners = Array.from({ length: parts }, (_, k) => onArc(arc, (k + 0.5) / parts, reach))
  return [...corners, onArc(arc, 1, arc.radius)]
}

function partsOf({ radius, from, to }: Arc): number {
  // A chord over the angle 2h lies r (1 − cos h) inside the arc, its tangent corner r (1 / cos h − 1) outside.
  const half = Math.acos(radius / (radius + TRACE_FLATNESS))
  return Math.max(1, Math.ceil(Math.abs(to - from) / (2 * half)))
}

function onArc({ centreY, from, to }: Arc, share: number, radius: Mm): Point {
  const angle = from + (to - from) * share
  return [radius * Math.sin(angle), centreY - radius * Math.cos(angle)]
}
