import type { Deg, Mm } from '../../base/units.ts'
import type { Box, Point, Polygon, Way } from '../../geometry/types.ts'
import type { Item, Region, Seat, Showing } from '../problem.ts'
import { type ClashSet, clashSet, shrunkPart } from './clash-set.ts'
import { counterClockwise, coverOf, coverOfOutside, type Outside, rightOfLine } from './convex-cover.ts'
import type { Work } from './paving.ts'

/** An item held in any turn of a range, to be moved about in one region. Its position is that of its pivot. */
export interface Pose {
  readonly region: number
  readonly way: Way
  /** Convex parts of the item about its pivot, each inside the item in every turn of the range. */
  readonly parts: readonly Polygon[]
  /** All positions there may be. */
  readonly box: Box
  /** Positions ruled out by the region, by what is forbidden there, and by where the item must sit and what it must show. */
  readonly ruledOut: readonly ClashSet[]
  /** The seat that is asked of this pose, if the item sits. */
  readonly seat?: Seat
}

/** What is known of one item, for all its poses. */
export class Poses {
  private readonly pivot: Point
  private readonly cover: readonly Polygon[]
  private readonly outsides = new Map<number, Outside>()

  constructor(
    private readonly item: Item,
    private readonly regions: readonly Region[],
    private readonly work: Work,
  ) {
    const { minX, minY, maxX, maxY } = boundsOf(item.outline)
    this.pivot = [(minX + maxX) / 2, (minY + maxY) / 2]
    this.cover = coverOf(item.outline).map((part) => this.aboutPivot(part))
    work.spend(item.outline.length ** 2)
  }

  private aboutPivot(points: Polygon): Polygon {
    return points.map(([x, y]): Point => [x - this.pivot[0], y - this.pivot[1]])
  }

  /** Poses that together hold every way of the item in a region: one a way, a whole circle in 24 ranges; one a seat if it sits. */
  all(region: number): readonly Pose[] {
    const { sits, ways } = this.item
    const asked = ways[region] ?? []
    const { seats = [] } = this.regions[region] as Region
    if (sits !== undefined)
      return seats.flatMap((seat) =>
        asked.flatMap((way) => this.seatedWay(way, sits, seat)).map((way) => this.pose(region, way, seat)),
      )
    return asked.flatMap(rangesOf).map((way) => this.pose(region, way))
  }

  /** The same range of turns in two halves. */
  halves({ region, way }: Pose): readonly Pose[] {
    return halvesOfWay(way).map((half) => this.pose(region, half))
  }

  /** The same poses in ranges no wider than `tilt` each way. */
  noWider(pose: Pose, tilt: Deg): readonly Pose[] {
    return pose.way.tilt <= tilt ? [pose] : this.halves(pose).flatMap((half) => this.noWider(half, tilt))
  }

  private pose(r: number, way: Way, seat?: Seat): Pose {
    const parts = this.cover.flatMap((part) => shrunkByTilt(held(part, way), way.tilt))
    const region = this.regions[r] as Region
    const taboo = [...region.forbidden, ...(this.item.sits === undefined ? (region.keptClear ?? []) : [])]
    const { beyond, pockets } = this.outsideOf(r)
    const obstacles = [...pockets, ...taboo.flatMap(coverOf)]
    this.work.spend(SET_WORK * (beyond.length + obstacles.length * parts.length))
    const ruledOut = [
      ...beyond.flatMap((side) => foremost(parts, side).map((part) => clashSet(side, part, 0))),
      ...obstacles.flatMap((obstacle) => parts.map((part) => clashSet(obstacle, part, 0))),
      ...(seat ? this.offSeat(way, this.item.sits as number, seat) : []),
      ...(this.item.shows ? this.notShowing(way, this.item.shows) : []),
    ]
    // The pivot is the middle of the item's bounds, so it lies within the bounds of any region that holds the item.
    return { region: r, way, parts, box: boundsOf(region.outline), ruledOut, ...(seat ? { seat } : {}) }
  }

  private outsideOf(r: number): Outside {
    let outside = this.outsides.get(r)
    if (!outside) {
      const { outline } = this.regions[r] as Region
      outside = coverOfOutside(outline, 3 * (diagonal(outline) + diagonal(this.item.outline)))
      this.outsides.set(r, outside)
    }
    return outside
  }

  /** The edge's ends about the pivot, held so, walked with the item on the left. */
  private edge(edge: number, way: Way): readonly [Point, Point] {
    const { outline } = this.item
    const ends = this.aboutPivot([outline[edge] as Point, outline[(edge + 1) % outline.length] as Point])
    const forward = counterClockwise(outline) === outline
    const [p, q] = turned(ends, way) as unknown as [Point, Point]
    return forward === way.mirrored ? [q, p] : [p, q]
  }

  /** The turns of a way in which both ends of the edge can be within the slack of the seat's line, if there are any. */
  private seatedWay(way: Way, sits: number, seat: Seat): readonly Way[] {
    const [p, q] = this.edge(sits, { ...way, tilt: 0 })
    const off = directionOf(seat.from, seat.to) - directionOf(p, q)
    const turnBy = (((off % 360) + 540) % 360) - 180
    const slant = Math.min(1, (2 * SLACK) / Math.hypot(q[0] - p[0], q[1] - p[1]))
    const most = Math.asin(slant) * (180 / Math.PI)
    const from = Math.max(-way.tilt, turnBy - most)
    const to = Math.min(way.tilt, turnBy + most)
    return from > to ? [] : [{ ...way, turn: way.turn + (from + to) / 2, tilt: (to - from) / 2 }]
  }

  /** Positions at which the edge is off the seat, or beyond its ends, by more than the slack. */
  private offSeat(way: Way, sits: number, { from, to }: Seat): readonly ClashSet[] {
    const [p, q] = this.edge(sits, way)
    const length = Math.hypot(to[0] - from[0], to[1] - from[1])
    const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
    const slack = SLACK + movedBy(Math.max(Math.hypot(...p), Math.hypot(...q)), way.tilt)
    const limits: readonly [number, number, Point, Point][] = [
      [-ux, -uy, from, p],
      [ux, uy, to, q],
      [uy, -ux, from, p],
      [-uy, ux, from, p],
      [uy, -ux, from, q],
      [-uy, ux, from, q],
    ]
    return limits.map(([nx, ny, at, end]) => beyond(nx, ny, [at[0] - end[0], at[1] - end[1]], slack))
  }

  /** Positions at which the spot's centre is too far from its point of the item, or some of the spot sticks out of it. */
  private notShowing(way: Way, { spot, at, within }: Showing): readonly ClashSet[] {
    const own = turned(this.aboutPivot([at]), way)[0] as Point
    const [cx, cy] = centreOfArea(spot)
    const radius = within + movedBy(Math.hypot(...own), way.tilt)
    const far = Array.from({ length: 48 }, (_, k) => {
      const angle = (2 * Math.PI * k) / 48
      return beyond(Math.cos(angle), Math.sin(angle), [cx - own[0], cy - own[1]], radius + SLACK)
    })
    const outside = coverOfOutside(
      this.aboutPivot(this.item.outline),
      2 * (diagonal(spot) + diagonal(this.item.outline)),
    )
    const outer = [...outside.beyond, ...outside.pockets].flatMap((part) =>
      shrunkByTilt(held(part, way), way.tilt),
    )
    return [...far, ...coverOf(spot).flatMap((part) => outer.map((out) => clashSet(part, out, 0)))]
  }
}

/** What making a clash set costs, in sets compared. */
const SET_WORK = 30

/** The part that reaches farthest towards a rectangle that stands for a half-plane: the others clash with it later. */
function foremost(parts: readonly Polygon[], side: Polygon): readonly Polygon[] {
  const [, near, far] = side as readonly [Point, Point, Point]
  const reach = (part: Polygon) =>
    Math.max(...part.map(([x, y]) => x * (far[0] - near[0]) + y * (far[1] - near[1])))
  const reaches = parts.map(reach)
  return parts.length === 0 ? [] : [parts[reaches.indexOf(Math.max(...reaches))] as Polygon]
}

/** By so much a lay may be off its seat and its spot. */
const SLACK: Mm = 0.01

/** The set of points p with n · (p − from) > distance, as far as it matters. */
function beyond(nx: number, ny: number, [x, y]: Point, distance: Mm): ClashSet {
  const a: Point = [x + nx * distance, y + ny * distance]
  return clashSet(rightOfLine(a, [a[0] - ny, a[1] + nx], 1e5), [[0, 0]], 0)
}

const PARTS_OF_CIRCLE = 24

function rangesOf(way: Way): readonly Way[] {
  if (way.tilt < 180) return [way]
  return Array.from({ length: PARTS_OF_CIRCLE }, (_, k) => ({
    ...way,
    turn: (360 * k) / PARTS_OF_CIRCLE,
    tilt: 180 / PARTS_OF_CIRCLE,
  }))
}

function halvesOfWay(way: Way): readonly Way[] {
  const tilt = way.tilt / 2
  return [-tilt, tilt].map((by) => ({ ...way, turn: way.turn + by, tilt }))
}

/** How far a turn by up to `tilt` moves a point that is `radius` from the pivot: a chord. */
function movedBy(radius: Mm, tilt: Deg): Mm {
  return tilt === 0 ? 0 : 2 * radius * Math.sin((Math.min(180, tilt) * Math.PI) / 360)
}

/** A point of the part moves by at most that chord, so what lies deeper than it in the part stays in it while it turns. */
function shrunkByTilt(part: Polygon, tilt: Deg): readonly Polygon[] {
  const left = shrunkPart(part, movedBy(Math.max(...part.map(([x, y]) => Math.hypot(x, y))), tilt))
  return left ? [left] : []
}

/** A convex part held, counter-clockwise again after turning over. */
function held(part: Polygon, way: Way): Polygon {
  const points = turned(part, way)
  return way.mirrored ? [...points].reverse() : points
}

function turned(points: Polygon, { turn, mirrored }: Way): Polygon {
  const quarter = turn / 90
  const [cos, sin] = Number.isInteger(quarter)
    ? ([
        [1, 0],
        [0, 1],
        [-1, 0],
        [0, -1],
      ][((quarter % 4) + 4) % 4] as [number, number])
    : [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)]
  return points.map(([px, y]): Point => {
    const x = mirrored ? -px : px
    return [x * cos - y * sin, x * sin + y * cos]
  })
}

export function boundsOf(points: Polygon): Box {
  const xs = points.map(([x]) => x)
  const ys = points.map(([, y]) => y)
  return { minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) }
}

function diagonal(points: Polygon): Mm {
  const { minX, minY, maxX, maxY } = boundsOf(points)
  return Math.hypot(maxX - minX, maxY - minY)
}

function directionOf(from: Point, to: Point): Deg {
  return (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI
}

function centreOfArea(polygon: Polygon): Point {
  const [ox, oy] = polygon[0] as Point
  let [area, mx, my] = [0, 0, 0]
  polygon.forEach(([x1, y1], i) => {
    const [x2, y2] = polygon[(i + 1) % polygon.length] as Point
    const part = (x1 - ox) * (y2 - oy) - (x2 - ox) * (y1 - oy)
    area += part
    mx += (part * (x1 + x2 - 2 * ox)) / 3
    my += (part * (y1 + y2 - 2 * oy)) / 3
  })
  return [ox + mx / area, oy + my / area]
}
