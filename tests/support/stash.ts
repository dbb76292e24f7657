import type { Garment } from '../../src/core/garments/garment.ts'
import type { Polygon } from '../../src/core/geometry/types.ts'
import type { LaidPiece, Reservation } from '../../src/core/stash/reservation.ts'
import type { ClothRecords } from '../../src/core/stash/taken.ts'
import { rectangle } from './lay-problems.ts'
import { testGarment } from './records.ts'

/** A drawn cloth of 600 × 400, whose only panel is `outline`. */
export function aCloth(change: Partial<Garment> = {}): Garment {
  return testGarment({
    id: 'cloth',
    kind: 'free-outline',
    measures: {},
    outline: rectangle(600, 400),
    ...change,
  })
}

/** A piece at its place on that cloth. */
export function laidAt(piece: string, outline: Polygon, change: Partial<LaidPiece> = {}): LaidPiece {
  return { piece, copy: 1, panel: 'outline', turn: 0, mirrored: false, x: 0, y: 0, outline, ...change }
}

/** A reservation of these pieces on that cloth. */
export function aReservation(
  id: string,
  pieces: readonly LaidPiece[],
  project = `project-${id}`,
): Reservation {
  return { id, project, garment: 'cloth', pieces, clearance: 0, spare: null }
}

export function records(change: Partial<ClothRecords> = {}): ClothRecords {
  return { cuts: [], offcuts: [], reservations: [], ...change }
}
