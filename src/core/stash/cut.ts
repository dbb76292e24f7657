import type { Polygon } from '../geometry/types.ts'
import type { LaidPiece } from './reservation.ts'

/** Pieces of one project cut from one panel. The panel is no more; what was left of it are its offcuts. */
export interface Cut {
  readonly id: string
  readonly project: string
  readonly garment: string
  /** The panel or offcut that was cut. */
  readonly panel: string
  /** Its outline and flaws at that moment: the garment's measures may be changed later, this cannot. */
  readonly outline: Polygon
  readonly flaws: readonly Polygon[]
  /** What was cut out, of one reservation, which is restored when the cut is taken back. */
  readonly pieces: readonly LaidPiece[]
  readonly reservation: string
  /** Ids. */
  readonly offcuts: readonly string[]
  /** ms since 1970. */
  readonly at: number
}

/** What is left of a cut panel, in that panel's coordinates: its grain is still +y. */
export interface Offcut {
  readonly id: string
  readonly garment: string
  /** Id of the cut that made it. */
  readonly cut: string
  readonly outline: Polygon
  /** Holes, and the flaws of the panel that lie in it. */
  readonly flaws: readonly Polygon[]
  /** False: thrown away, no longer cloth one can use. */
  readonly kept: boolean
}
