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
  private readonly byRegion = new Map<number, readonly Option[]>()

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

  /** The regions in which it may lie at all, with room or without. */
  get regions(): readonly number[] {
    this.open ??= [...new Set(this.allowed.map(({ region }) => region))]
    return this.open
  }

  /** The options of a region in which the item fits by itself. */
  optionsIn(region: number): readonly Option[] {
    let options = this.byRegion.get(region)
    if (!options) {
      options = this.allowed.filter((option) => option.region === region && !option.isEmpty)
      this.byRegion.set(region, options)
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
