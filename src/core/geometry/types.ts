import type { Deg, Mm } from '../base/units.ts'

/** x across, y along (up), mm. */
export type Point = readonly [Mm, Mm]

/** A simple polygon: at least 3 points, either winding unless a function says otherwise, first point not repeated. */
export type Polygon = readonly Point[]

/**
 * A set of the plane by its boundary: outer rings counter-clockwise, holes clockwise, non-zero winding.
 * Rings do not cross. An empty array is the empty set.
 */
export type Rings = readonly Polygon[]

/** Axis-parallel bounds. */
export interface Box {
  readonly minX: Mm
  readonly minY: Mm
  readonly maxX: Mm
  readonly maxY: Mm
}

/** How an outline is held: turned over first (x → −x) if `mirrored`, then turned counter-clockwise about the origin. */
export interface Orientation {
  readonly turn: Deg
  readonly mirrored: boolean
}

/** Orientations allowed: every turn within `tilt` of `turn`. `tilt` 0 is that turn alone; `tilt` 180 is every turn. */
export interface Way extends Orientation {
  readonly tilt: Deg
}
