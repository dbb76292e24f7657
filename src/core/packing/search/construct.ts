import type { Deadline } from '../../base/deadline.ts'
import { type Random, shuffle } from '../../base/random.ts'
import { polygonBox } from '../../geometry/polygon.ts'
import type { Box } from '../../geometry/types.ts'
import { FreeSpace } from './free-space.ts'
import type { Layout, Spot } from './layout.ts'
import type { Model } from './model.ts'
import type { Option } from './option.ts'
import { netArea } from './room.ts'
import type { Rule } from './rules.ts'

/** How one constructive lay is made. */
export interface Recipe {
  /** Copies in the order of placing, as indices into the model's copies. */
  readonly order: readonly number[]
  /** Regions in the order of filling. */
  readonly regions: readonly number[]
  readonly rule: Rule
  /** True: an item goes into the first region with room; false: the rule chooses among all regions. */
  readonly firstFit: boolean
}

/** Places one copy after the other, each at the corner of its free space that the rule likes best, until time is up. */
export function constructLayout(
  model: Model,
  recipe: Recipe,
  deadline: Deadline,
  fixed: Layout = [],
): Layout {
  const layout: (Spot | null)[] = model.copies.map((_, c) => fixed[c] ?? null)
  const free = new FreeSpace(model.noFits, deadline)
  const taken = new Map<number, Box>()
  const left = model.problem.regions.map(netArea)
  const put = (c: number, spot: Spot): void => {
    layout[c] = spot
    free.take(spot)
    const box = spotBox(spot.option, spot.x, spot.y)
    const { region } = spot.option
    taken.set(region, boxUnion(taken.get(region) ?? box, box))
    left[region] = (left[region] as number) - spot.option.shape.area
  }
  layout.forEach((spot, c) => {
    if (spot) put(c, spot)
  })
  for (const c of recipe.order) {
    if (layout[c]) continue
    if (deadline.passed()) break
    const regions = recipe.regions.filter((r) => mayHold(left[r] as number, model, c))
    const spot = bestSpot(model, { ...recipe, regions }, free, taken, c)
    if (spot) put(c, spot)
  }
  return layout
}

/** Area that rounding may cost a region, mm². */
const AREA_ROUNDING = 1

/** False if a region has less area left than the copy needs. */
function mayHold(left: number, { copies }: Model, c: number): boolean {
  return left >= (copies[c]?.kind.area ?? 0) - AREA_ROUNDING
}

function bestSpot(
  model: Model,
  recipe: Recipe,
  free: FreeSpace,
  taken: ReadonlyMap<number, Box>,
  c: number,
): Spot | null {
  let best: Spot | null = null
  let least = Number.POSITIVE_INFINITY
  for (const region of recipe.regions) {
    const regionBox = polygonBox(model.problem.regions[region]?.outline ?? [])
    for (const option of model.copies[c]?.kind.allowedIn(region) ?? []) {
      for (const ring of free.of(option)) {
        for (const [x, y] of ring) {
          const box = spotBox(option, x, y)
          const score = recipe.rule(box, regionBox, taken.get(region) ?? box)
          if (score < least) {
            least = score
            best = { option, x, y }
          }
        }
      }
    }
    if (best && recipe.firstFit) break
  }
  return best
}

export function spotBox({ shape: { box } }: Option, x: number, y: number): Box {
  return { minX: box.minX + x, minY: box.minY + y, maxX: box.maxX + x, maxY: box.maxY + y }
}

function boxUnion(a: Box, b: Box): Box {
  return {
    minX: Math.min(a.minX, b.minX),
    minY: Math.min(a.minY, b.minY),
    maxX: Math.max(a.maxX, b.maxX),
    maxY: Math.max(a.maxY, b.maxY),
  }
}

/** Indices 0 … count − 1, greatest `size` first. */
export function bySize(count: number, size: (index: number) => number): number[] {
  return Array.from({ length: count }, (_, i) => i).sort((a, b) => size(b) - size(a))
}

/** Indices 0 … count − 1 in chance order. */
export function byChance(count: number, random: Random): number[] {
  return shuffle(
    Array.from({ length: count }, (_, i) => i),
    random,
  )
}
