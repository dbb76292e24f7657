import type { Box } from '../../geometry/types.ts'

/**
 * A placement rule: the lower the score, the better the spot. `spot` is the box of the item where it would lie,
 * `taken` the box round everything already in the region (the spot itself if nothing is).
 */
export type Rule = (spot: Box, region: Box, taken: Box) => number

/** A secondary aim counts this much beside the first one: enough to break ties and no more. */
const TIE = 1e-3

/** Bottom-left (Baker, Coffman and Rivest 1980) and its siblings towards the other corners, either axis first. */
const cornerRules: Rule[] = ([1, -1] as const).flatMap((sx) =>
  ([1, -1] as const).flatMap((sy): Rule[] => {
    const reachX = (spot: Box, region: Box) => (sx > 0 ? spot.maxX - region.minX : region.maxX - spot.minX)
    const reachY = (spot: Box, region: Box) => (sy > 0 ? spot.maxY - region.minY : region.maxY - spot.minY)
    return [
      (spot, region) => reachY(spot, region) + TIE * reachX(spot, region),
      (spot, region) => reachX(spot, region) + TIE * reachY(spot, region),
    ]
  }),
)

/** Least growth of the box round all items: keeps what is left in one piece. */
const leastGrowth: Rule = (spot, _region, taken) => {
  const width = Math.max(spot.maxX, taken.maxX) - Math.min(spot.minX, taken.minX)
  const height = Math.max(spot.maxY, taken.maxY) - Math.min(spot.minY, taken.minY)
  return width * height + TIE * (spot.maxX + spot.maxY)
}

/** Nearest to any corner of the region: big items go to the corners, the middle stays free. */
const corners: Rule = (spot, region) =>
  Math.min(spot.minX - region.minX, region.maxX - spot.maxX) +
  Math.min(spot.minY - region.minY, region.maxY - spot.maxY)

/** All rules, the ones that serve most often first. */
export const RULES: readonly Rule[] = [
  cornerRules[0] as Rule,
  leastGrowth,
  cornerRules[1] as Rule,
  corners,
  ...cornerRules.slice(2),
]
