import { readFileSync } from 'node:fs'
import { polygonArea } from '../../core/geometry/polygon.ts'
import type { Point, Way } from '../../core/geometry/types.ts'
import type { StripProblem } from '../../core/packing/strip.ts'

/** A published strip-packing case, scaled to garment size. */
export interface StripCase {
  readonly name: string
  readonly problem: StripProblem
  /** Area of all copies, mm². */
  readonly area: number
  /** Best published density, per cent of the used strip; null if none is known. */
  readonly published: number | null
}

interface CaseFile {
  readonly name: string
  readonly strip_height: number | null
  readonly best_published_density?: number | null
  readonly pieces: readonly {
    readonly id: string
    readonly quantity: number
    readonly rotations: readonly number[]
    readonly polygon: readonly Point[]
  }[]
}

/**
 * Cases come in units of their own, some only 15 high; every strip is scaled to this height, so that the tolerance
 * of a lay (0.01 mm) stays a hundred-thousandth of it and no case gains by being small.
 */
const HEIGHT = 1000

/** Reads a case file; null if it is no strip (a case with regions of its own). */
export function readStripCase(path: string): StripCase | null {
  const file = JSON.parse(readFileSync(path, 'utf8')) as CaseFile
  if (file.strip_height === null) return null
  const scale = HEIGHT / file.strip_height
  const items = file.pieces.map(({ id, quantity, rotations, polygon }) => ({
    id,
    copies: quantity,
    outline: polygon.map(([x, y]): Point => [x * scale, y * scale]),
    optional: false,
    ways: [rotations.map((turn): Way => ({ turn, mirrored: false, tilt: 0 }))],
  }))
  const area = items.reduce((sum, item) => sum + item.copies * Math.abs(polygonArea(item.outline)), 0)
  return {
    name: file.name,
    problem: { height: HEIGHT, clearance: 0, items },
    area,
    published: file.best_published_density ?? null,
  }
}
