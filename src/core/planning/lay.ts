import type { Deg, Mm } from '../base/units.ts'

/** The answer to a `LayProblem`; the file format `cutworth-lay/1` is this model written down. */
export interface Lay {
  readonly verdict: 'fits' | 'cannot' | 'not-found'
  readonly placements: readonly LayPlacement[]
  /** A proof for exactly the problem given; only with `cannot`. */
  readonly reason: Reason | null
  /** Copies without a place, as `sleeve#2`. */
  readonly leftOut: readonly string[]
  /**
   * How far every panel edge and flaw edge could still move in with a lay found, which is the one that `placements` are. Never a
   * promise of more. null: nothing was found in time, or the lay does not fit.
   */
  readonly spare: Mm | null
  /**
   * `found`: the search for more came to its end; `at-least`: to the end of its time, or there was as much as was asked.
   * null: the lay does not fit.
   */
  readonly spareIs: 'found' | 'at-least' | null
  readonly elapsedMs: number
}

/** A point p of the outline lands at p, mirrored to (−x, y) if `mirrored`, turned by `turn` about the origin, moved by (x, y). */
export interface LayPlacement {
  readonly piece: string
  /** Counts from 1. */
  readonly copy: number
  readonly panel: string
  readonly turn: Deg
  readonly mirrored: boolean
  readonly x: Mm
  readonly y: Mm
}

export interface Reason {
  /** `stretch`, `surface`, `cloth`, `upright`, `area`, `piece`, `group`, or another kind that packing/proof proves. */
  readonly kind: string
  /** One sentence a sewist understands. */
  readonly text: string
  readonly pieces: readonly string[]
  /** Named figures of the proof: areas in mm², lengths in mm, stretch in per cent, counts. */
  readonly figures: Readonly<Record<string, number>>
}
