import type { Deg, Mm } from '../base/units.ts'
import type { Polygon } from '../geometry/types.ts'

/**
 * One copy of a piece at its place. A point p of the piece's outline lands at p, mirrored to (−x, y) if `mirrored`,
 * turned by `turn` about the origin, moved by (x, y), in the coordinates of the panel as the stash draws it.
 */
export interface LaidPiece {
  /** Id of the pattern piece. */
  readonly piece: string
  /** Counts from 1. */
  readonly copy: number
  /** A panel that the garment opens into, or an offcut of one, by id. */
  readonly panel: string
  readonly turn: Deg
  readonly mirrored: boolean
  readonly x: Mm
  readonly y: Mm
  /** The cut outline where it lies: kept, so that the place stays hers whatever becomes of the pattern. Counter-clockwise. */
  readonly outline: Polygon
}

/** The accepted lay of one project on one garment: its places belong to the project until they are cut or released. */
export interface Reservation {
  readonly id: string
  readonly project: string
  readonly garment: string
  readonly pieces: readonly LaidPiece[]
  /** Gap that the lay keeps between its own pieces. */
  readonly clearance: Mm
  /** As measured when it was accepted; null: not measured. */
  readonly spare: Mm | null
}

/** One copy of one piece of a project, wherever it lies. */
export function isSameCopy(a: CopyOfPiece, b: CopyOfPiece): boolean {
  return a.piece === b.piece && a.copy === b.copy
}

export type CopyOfPiece = Pick<LaidPiece, 'piece' | 'copy'>
