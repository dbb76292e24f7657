import type { Random } from '../../base/random.ts'
import { ringsArea, ringsDifference } from '../../geometry/clipper.ts'
import { polygonCounterClockwise } from '../../geometry/polygon.ts'
import { SEPARATE } from '../config.ts'
import type { Region } from '../problem.ts'
import type { ItemClass } from './item-class.ts'
import type { Option } from './option.ts'

const netAreas = new WeakMap<Region, number>()

/** Area of a region without its forbidden areas, mm². */
export function netArea(region: Region): number {
  let area = netAreas.get(region)
  if (area === undefined) {
    area = ringsArea(ringsDifference([polygonCounterClockwise(region.outline)], region.forbidden))
    netAreas.set(region, area)
  }
  return area
}

/**
 * An option by chance, in a region where there is room by area before others; null if the item fits in nowhere.
 *
 * @param leftIn Area that would be left in a region if the item lay there; below 0, it is too full by so much.
 */
export function drawOption(
  kind: ItemClass,
  leftIn: (region: number) => number,
  random: Random,
): Option | null {
  let open = kind.regions
  while (open.length > 0) {
    const region = open.length === 1 ? (open[0] as number) : drawRegion(open, kind.area, leftIn, random)
    const options = kind.optionsIn(region)
    if (options.length > 0) return options[Math.floor(random() * options.length)] as Option
    open = open.filter((other) => other !== region)
  }
  return null
}

/** Regions with room have equal chances, those without it ever less. */
function drawRegion(
  regions: readonly number[],
  area: number,
  leftIn: (region: number) => number,
  random: Random,
): number {
  const { leastChance, fullness } = SEPARATE
  const chances = regions.map((region) =>
    Math.max(leastChance, Math.min(1, Math.exp(leftIn(region) / (fullness * area)))),
  )
  let at = random() * chances.reduce((sum, chance) => sum + chance, 0)
  for (const [k, chance] of chances.entries()) {
    at -= chance
    if (at < 0) return regions[k] as number
  }
  return regions[regions.length - 1] as number
}
