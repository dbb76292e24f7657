import type { Deadline } from '../../base/deadline.ts'
import { convexHull } from '../../geometry/convex.ts'
import { polygonArea } from '../../geometry/polygon.ts'
import type { Polygon } from '../../geometry/types.ts'
import type { Item } from '../problem.ts'
import type { Option } from './option.ts'

/** Copies that are alike in every respect, of one item or of equal items. */
export class ItemClass {
  readonly area: number
  readonly diameter: number
  private open: readonly number[] | null = null
  private readonly allowedBy = new Map<number, readonly Option[]>()
  private readonly fittingBy = new Map<number, readonly Option[]>()

  constructor(
    readonly index: number,
    readonly item: Item,
    readonly outlineId: number,
    outline: Polygon,
    /** Makes the options of a region, for every shape allowed there. */
    private readonly optionsOf: (region: number) => readonly Option[],
  ) {
    this.area = polygonArea(outline)
    this.diameter = diameterOf(outline)
  }

  /** Whether the item fits anywhere by itself; null: time was up before that was seen. */
  hasRoom(deadline: Deadline): boolean | null {
    for (const region of this.regions)
      for (const option of this.allowedIn(region)) {
        if (!option.isEmpty) return true
        if (deadline.passed()) return null
      }
    return false
  }

  /** The regions in which it may lie at all, with room or without. */
  get regions(): readonly number[] {
    this.open ??= this.item.ways.flatMap((ways, region) => (ways.length > 0 ? [region] : []))
    return this.open
  }

  /** Every shape and region allowed, with room or without. */
  get allowed(): readonly Option[] {
    return this.regions.flatMap((region) => this.allowedIn(region))
  }

  /** Those of one region, made when first asked for: there may be many of both. */
  allowedIn(region: number): readonly Option[] {
    let options = this.allowedBy.get(region)
    if (!options) {
      options = this.optionsOf(region)
      this.allowedBy.set(region, options)
    }
    return options
  }

  /** The options of a region in which the item fits by itself. */
  optionsIn(region: number): readonly Option[] {
    let options = this.fittingBy.get(region)
    if (!options) {
      options = this.allowedIn(region).filter((option) => !option.isEmpty)
      this.fittingBy.set(region, options)
    }
    return options
  }
}

function diameterOf(outline: Polygon): number {
  const hull = convexHull(outline)
  let greatest = 0
  for (const [ax, ay] of hull)
    for (const [bx, by] of hull) greatest = Math.max(greatest, Math.hypot(ax - bx, ay - by))
  return greatest
}
