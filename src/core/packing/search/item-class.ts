import { convexHull } from '../../geometry/convex.ts'
import { polygonArea } from '../../geometry/polygon.ts'
import type { Polygon } from '../../geometry/types.ts'
import type { Item } from '../problem.ts'
import type { Option } from './option.ts'

/** Copies that are alike in every respect, of one item or of equal items. */
export class ItemClass {
  readonly area: number
  readonly diameter: number
  private live: readonly Option[] | null = null

  constructor(
    readonly index: number,
    readonly item: Item,
    readonly outlineId: number,
    outline: Polygon,
    /** Every shape and region allowed, with room or without. */
    readonly allowed: readonly Option[],
  ) {
    this.area = polygonArea(outline)
    this.diameter = diameterOf(outline)
  }

  /** True if the item fits nowhere, not even by itself. */
  get fitsNowhere(): boolean {
    return this.allowed.every((option) => option.isEmpty)
  }

  /** Those in which the item fits by itself. */
  get options(): readonly Option[] {
    this.live ??= this.allowed.filter((option) => !option.isEmpty)
    return this.live
  }
}

function diameterOf(outline: Polygon): number {
  const hull = convexHull(outline)
  let greatest = 0
  for (const [ax, ay] of hull)
    for (const [bx, by] of hull) greatest = Math.max(greatest, Math.hypot(ax - bx, ay - by))
  return greatest
}
