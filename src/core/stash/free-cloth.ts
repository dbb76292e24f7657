import type { Mm } from '../base/units.ts'
import { ringsArea, ringsDifference, ringsUnion } from '../geometry/clipper.ts'
import { polygonCounterClockwise } from '../geometry/index.ts'
import { minkowskiErosion, minkowskiSum } from '../geometry/minkowski.ts'
import type { Polygon, Rings } from '../geometry/types.ts'
import type { PanelBody } from './cloth-of.ts'

/** The panels of a garment. */
export interface ClothBodies {
  readonly panels: readonly PanelBody[]
}

/** What of a panel nobody has reserved and no flaw spoils. */
export function freeRings({
  outline,
  flaws,
  reserved,
}: Pick<PanelBody, 'outline' | 'flaws' | 'reserved'>): Rings {
  const panel = [polygonCounterClockwise(outline)]
  const spoilt = [...flaws, ...reserved.map((place) => place.outline)].map(polygonCounterClockwise)
  return spoilt.length > 0 ? ringsDifference(panel, ringsUnion(spoilt)) : panel
}

/** Free cloth of a garment, mm². */
export function freeArea({ panels }: ClothBodies): number {
  return panels.reduce((sum, panel) => sum + ringsArea(freeRings(panel)), 0)
}

/** So much less than asked is as good: no tape tells it, and cloth of just the width asked shall count. */
const AS_GOOD: Mm = 0.5

/** True if some panel has a free rectangle `width` across and `height` along the grain. Both must be more than 1 mm. */
export function hasClearRectangle({ panels }: ClothBodies, width: Mm, height: Mm): boolean {
  const rectangle: Polygon = [
    [0, 0],
    [width - AS_GOOD, 0],
    [width - AS_GOOD, height - AS_GOOD],
    [0, height - AS_GOOD],
  ]
  return panels.some((panel) => ringsArea(placesFor(panel, rectangle)) > 0)
}

/** Where the rectangle may lie: the panel eroded by it, less every spoilt place grown by it (Minkowski). */
function placesFor({ outline, flaws, reserved }: PanelBody, rectangle: Polygon): Rings {
  const inside = minkowskiErosion(polygonCounterClockwise(outline), rectangle)
  if (inside.length === 0) return inside
  const turned = rectangle.map(([x, y]) => [-x, -y] as const)
  const spoilt = [...flaws, ...reserved.map((place) => place.outline)].map(polygonCounterClockwise)
  return spoilt.length === 0
    ? inside
    : ringsDifference(inside, ringsUnion(spoilt.flatMap((area) => minkowskiSum(area, turned))))
}
