import type { Deg, Mm } from '../base/units.ts'
import type { Orientation, Point, Polygon, Way } from '../geometry/types.ts'

/**
 * The packing problem, free of cloth: put every copy of every item into some region, off its forbidden
 * areas, `clearance` apart, each in one of the orientations that its item allows in that region.
 * Items may touch a region's boundary and a forbidden area's boundary.
 */
export interface PackingProblem {
  readonly clearance: Mm
  readonly regions: readonly Region[]
  readonly items: readonly Item[]
}

export interface Region {
  readonly id: string
  readonly outline: Polygon
  /** Areas no item may overlap; they may cross each other and the outline. */
  readonly forbidden: readonly Polygon[]
  /** Straight stretches of the boundary on which an item may sit. Absent: none. */
  readonly seats?: readonly Seat[]
  /** Areas forbidden only to items that do not sit. Absent: none. */
  readonly keptClear?: readonly Polygon[]
  /** Head and foot of what lies here tell: items that turn alike point the same way. Absent: no. */
  readonly headed?: boolean
}

/** A stretch of a region's boundary, walked with the region on its left. */
export interface Seat {
  readonly from: Point
  readonly to: Point
}

export interface Item {
  readonly id: string
  readonly copies: number
  readonly outline: Polygon
  /** Left out if it does not fit, without changing the verdict. */
  readonly optional: boolean
  /** One list a region, in the order of `regions`: the orientations allowed there; empty means it may not go there. */
  readonly ways: readonly (readonly Way[])[]
  /** Index of an edge of the outline, from this point to the next, that must lie on one seat of its region, nowhere beyond it. */
  readonly sits?: number
  /** What every copy must have inside it. */
  readonly shows?: Showing
  /** With which other items its copies turn alike. Absent: each copy for itself. */
  readonly alike?: Alike
}

/**
 * All placed copies of all items of one group lie at one turn modulo 180°, each to within its own `within` of it; those in
 * headed regions at one turn modulo 360°. In other words: any two of them are off each other by no more than both `within`.
 */
export interface Alike {
  readonly group: string
  /** Degrees, 0 to 10. */
  readonly within: Deg
}

/** A polygon, in the plane of the regions that the item's ways allow, that must lie inside the item, its centroid near a given point of it. */
export interface Showing {
  readonly spot: Polygon
  /** In the coordinates of the item's outline: turned and mirrored with it. */
  readonly at: Point
  /** Most distance of the centroid from that point. */
  readonly within: Mm
}

/** Where one copy lies: its outline mirrored, turned, then moved by (x, y). `item` and `region` are indices. */
export interface Placement extends Orientation {
  readonly item: number
  readonly copy: number
  readonly region: number
  readonly x: Mm
  readonly y: Mm
}

/** A copy of an item: `copy` counts from 0. */
export interface CopyRef {
  readonly item: number
  readonly copy: number
}
