import type { Deadline } from '../../base/deadline.ts'
import { type Random, shuffle } from '../../base/random.ts'
import { ringsArea, ringsDifference, ringsOffset } from '../../geometry/clipper.ts'
import { polygonArea } from '../../geometry/polygon.ts'
import { polygonMoved } from '../../geometry/transform.ts'
import type { Point, Polygon, Rings } from '../../geometry/types.ts'
import { JIGSAW } from '../config.ts'
import { flatProject, type Nearest } from '../engine/flat-rings.ts'
import { extremeCorner, GENERIC_DIRECTIONS } from './extreme.ts'
import type { ItemClass } from './item-class.ts'
import type { Layout, Spot } from './layout.ts'
import type { Model } from './model.ts'
import type { Option } from './option.ts'
import { netArea } from './room.ts'
import { reachableSums, sumsReach } from './subset-sums.ts'

/** A part of the free space in one piece. */
interface Gap {
  readonly region: number
  /** Its outline, then its holes. */
  readonly rings: Rings
  readonly area: number
}

/** An item that may cover a corner. */
interface Cover {
  readonly kind: ItemClass
  readonly option: Option
  readonly x: number
  readonly y: number
}

/** Net area of the regions less the area of all needed copies, mm². */
export function slackArea(model: Model): number {
  const net = model.problem.regions.reduce((sum, region) => sum + netArea(region), 0)
  return model.copies.slice(0, model.needed).reduce((left, { kind }) => left - kind.area, net)
}

/** True if the items all but fill the regions, so that every corner of the free space has to be covered. */
export function isJigsaw(model: Model): boolean {
  const needed = model.copies.slice(0, model.needed)
  if (needed.length < 2 || needed.length > JIGSAW.mostCopies || model.problem.clearance > 0) return false
  const smallest = Math.min(...needed.map(({ kind }) => kind.area))
  const slack = slackArea(model)
  return slack > -smallest * JIGSAW.tightness && slack < smallest * JIGSAW.tightness
}

/**
 * Depth-first search for a lay without gaps. In such a lay the extreme corner of the free space in any direction is
 * covered by the extreme corner, in that direction, of some item: so few items come into question for a corner, and
 * the search goes on at the corner with the fewest (as exact cover does: Knuth 2000). A gap whose area is no sum of
 * the areas left ends a branch. Positions are good to JIGSAW.tolerance only; overlap minimisation makes them exact.
 */
export function solveJigsaw(model: Model, random: Random, nodes: number, deadline: Deadline): Layout | null {
  return new JigsawSearch(model, random, nodes, deadline).run()
}

class JigsawSearch {
  private readonly left: number[]
  private readonly placed: Cover[] = []
  private readonly slack: number
  private readonly nearest: Nearest = { x: 0, y: 0, dx: 0, dy: 0 }

  constructor(
    private readonly model: Model,
    private readonly random: Random,
    private nodes: number,
    private readonly deadline: Deadline,
  ) {
    this.left = model.classes.map(() => 0)
    for (const { kind } of model.copies.slice(0, model.needed)) this.left[kind.index] = this.leftOf(kind) + 1
    this.slack = Math.abs(slackArea(model)) + JIGSAW.areaDoubt
  }

  run(): Layout | null {
    const gaps = this.model.problem.regions.flatMap(({ outline, forbidden }, region) =>
      gapsOf(region, ringsDifference([outline], forbidden)),
    )
    return this.cover(gaps) ? this.layout() : null
  }

  private leftOf(kind: ItemClass): number {
    return this.left[kind.index] as number
  }

  private cover(gaps: readonly Gap[]): boolean {
    if (this.left.every((count) => count === 0)) return true
    if (this.nodes-- <= 0 || this.deadline.passed() || !this.areasWork(gaps)) return false
    const covers = this.fewestCovers(gaps)
    for (const cover of shuffle(covers.list, this.random)) {
      this.left[cover.kind.index] = this.leftOf(cover.kind) - 1
      this.placed.push(cover)
      if (this.cover(afterCover(gaps, covers.gap, cover))) return true
      this.placed.pop()
      this.left[cover.kind.index] = this.leftOf(cover.kind) + 1
    }
    return false
  }

  /** False if the gaps that hold no sum of the areas left are together larger than the slack. */
  private areasWork(gaps: readonly Gap[]): boolean {
    const areas = this.model.classes.flatMap((kind) =>
      Array.from({ length: this.leftOf(kind) }, () => kind.area),
    )
    const sums = reachableSums(areas, JIGSAW.areaDoubt)
    if (!sums) return true
    return gaps.every(({ area }) => sumsReach(sums, area, this.slack))
  }

  private fewestCovers(gaps: readonly Gap[]): { gap: Gap; list: Cover[] } {
    let best: { gap: Gap; list: Cover[] } = { gap: gaps[0] as Gap, list: [] }
    let fewest = Number.POSITIVE_INFINITY
    for (const gap of gaps) {
      for (let d = 0; d < GENERIC_DIRECTIONS.length; d++) {
        const list = this.coversOf(gap, d, fewest)
        if (list.length < fewest) {
          fewest = list.length
          best = { gap, list }
          if (fewest === 0) return best
        }
      }
    }
    return best
  }

  /** Items that may cover the gap's extreme corner, looked for only until there are `enough`. */
  private coversOf(gap: Gap, direction: number, enough: number): Cover[] {
    const corner = extremeCorner(gap.rings[0] as Polygon, direction)
    const list: Cover[] = []
    for (const kind of this.model.classes) {
      if (this.leftOf(kind) === 0) continue
      if (this.deadline.passed()) return []
      for (const option of kind.optionsIn(gap.region)) {
        const own = extremeCorner(option.shape.outline, direction)
        const cover = this.fitted(kind, option, corner[0] - own[0], corner[1] - own[1])
        if (cover) list.push(cover)
        if (list.length >= enough) return list
      }
    }
    return list
  }

  /** The cover at (x, y), moved into the domain if it sticks out a little; null if it overlaps or sticks out more. */
  private fitted(kind: ItemClass, option: Option, x: number, y: number): Cover | null {
    flatProject(option.domain, x, y, this.nearest)
    const { x: nearX, y: nearY } = this.nearest
    if (Math.hypot(nearX - x, nearY - y) > JIGSAW.tolerance) return null
    const { noFits } = this.model
    for (const other of this.placed) {
      if (other.option.region !== option.region) continue
      const handle = noFits.handle(other.option.shape, option.shape)
      if (noFits.memory.depth(handle, nearX - other.x, nearY - other.y) > JIGSAW.tolerance) return null
    }
    return { kind, option, x: nearX, y: nearY }
  }

  private layout(): Layout {
    const covers = [...this.placed]
    return this.model.copies.map(({ kind }): Spot | null => {
      const at = covers.findIndex((cover) => cover.kind === kind)
      if (at < 0) return null
      const [{ option, x, y }] = covers.splice(at, 1) as [Cover]
      return { option, x, y }
    })
  }
}

/** The gaps left when a cover takes its part of one of them, a hair more than itself so that no slivers stay. */
function afterCover(gaps: readonly Gap[], gap: Gap, { option, x, y }: Cover): Gap[] {
  const item = ringsOffset([polygonMoved(option.shape.outline, x, y)], JIGSAW.margin, 'mitre')
  return gaps.flatMap((other) =>
    other === gap ? gapsOf(gap.region, ringsDifference(gap.rings, item)) : [other],
  )
}

/** Connected parts; slivers are dropped. */
function gapsOf(region: number, rings: Rings): Gap[] {
  const holes = rings.filter((ring) => polygonArea(ring) < 0)
  return rings.flatMap((ring): Gap[] => {
    const outer = polygonArea(ring)
    if (outer < JIGSAW.areaDoubt) return []
    const own = [ring, ...holes.filter((hole) => contains(ring, hole[0] as Point))]
    return [{ region, rings: own, area: ringsArea(own) }]
  })
}

/** True if the point is inside the ring or on it, for holes that touch nothing but at points. */
function contains(ring: Polygon, [x, y]: Point): boolean {
  let inside = false
  let [ax, ay] = ring[ring.length - 1] as Point
  for (const [bx, by] of ring) {
    if (ay > y !== by > y && x - ax < ((y - ay) * (bx - ax)) / (by - ay)) inside = !inside
    ax = bx
    ay = by
  }
  return inside
}
