import type { Mm } from '../../base/units.ts'
import type { Point } from '../../geometry/types.ts'
import type { Figure } from '../kind.ts'
import type { DraftEdge } from './draft.ts'
import { outlineOf, traced } from './trace.ts'

export type Line = readonly Point[]
export type Tape = Figure['tapes'][number]

/** The points along some edges, from `start`. */
export function polyline(start: Point, edges: readonly DraftEdge[]): Line {
  const run = traced({ start, edges })
  return [...outlineOf(run), (run.at(-1) as { to: Point }).to]
}

/** The same points on the other side of the body, walked back. */
export function mirrored(line: Line): Line {
  return line.map(([x, y]): Point => [-x, y]).reverse()
}

/** A tape from side to side at one height. */
export function acrossTape(measure: string, width: Mm, y: Mm): Tape {
  return { measure, from: [-width / 2, y], to: [width / 2, y] }
}

/** A tape straight down from a point. */
export function downTape(measure: string, from: Point, depth: Mm): Tape {
  return { measure, from, to: [from[0], from[1] - depth] }
}
