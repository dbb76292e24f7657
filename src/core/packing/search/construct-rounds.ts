import type { Deadline } from '../../base/deadline.ts'
import type { Random } from '../../base/random.ts'
import type { Slices } from '../../base/slices.ts'
import { polygonArea, polygonBox } from '../../geometry/polygon.ts'
import { CONFINED, CONSTRUCT } from '../config.ts'
import { isConfined } from '../engine/confinement.ts'
import { byChance, bySize, constructLayout, type Recipe } from './construct.ts'
import type { ItemClass } from './item-class.ts'
import { type Layout, layoutServes, layoutWorth } from './layout.ts'
import type { Copy, Model } from './model.ts'
import { RULES, type Rule } from './rules.ts'

/** Size by which items are ordered, largest first. */
const SIZES: readonly ((kind: ItemClass) => number)[] = [
  ({ area }) => area,
  ({ diameter }) => diameter,
  ({ area, diameter }) => area * diameter,
  (kind) => leastSide(kind),
]

/** Narrower side of the box round an item as drawn. */
function leastSide({ item }: ItemClass): number {
  const box = polygonBox(item.outline)
  return Math.min(box.maxX - box.minX, box.maxY - box.minY)
}

/** Lays between two pauses: a lay is often found sooner than any proof. */
const PAUSE_ROUNDS = 4

/**
 * Constructive lays, each from another order of items and regions and another rule, until one serves. Items that
 * found no room come earlier in later rounds (after Joslin and Clements 1999). Pauses after some of them.
 */
export function* constructRounds(
  model: Model,
  random: Random,
  deadline: Deadline,
  rounds: number,
): Slices<Layout> {
  let best: Layout = model.copies.map(() => null)
  let bestWorth = -1
  const urgency = model.classes.map(() => 1)
  const affordable = CONSTRUCT.most / (model.copies.length * model.problem.regions.length)
  for (let round = 0; round < Math.min(rounds, Math.max(1, affordable)); round++) {
    if (round > 0 && deadline.passed()) break
    if (round > 0 && round % PAUSE_ROUNDS === 0) yield
    const layout = constructLayout(model, recipeFor(model, round, urgency, random), deadline)
    const worth = layoutWorth(model, layout)
    if (worth > bestWorth) {
      best = layout
      bestWorth = worth
    }
    if (layoutServes(model, layout)) break
    layout.forEach((spot, c) => {
      const { kind } = model.copies[c] as Copy
      if (!spot) urgency[kind.index] = (urgency[kind.index] as number) * (1 + CONSTRUCT.noise)
    })
  }
  return best
}

function recipeFor(model: Model, round: number, urgency: readonly number[], random: Random): Recipe {
  const size = SIZES[round % SIZES.length] as (kind: ItemClass) => number
  const noise = round < SIZES.length ? 0 : CONSTRUCT.noise
  const sizes = model.copies.map(({ kind }) => {
    const pull = isConfined(kind.item) ? CONFINED.urgency : 1
    const wanted = kind.item.optional ? 1e-9 : pull * (urgency[kind.index] as number)
    return size(kind) * wanted * (1 + noise * (2 * random() - 1))
  })
  const regions = model.problem.regions
  const byArea = bySize(regions.length, (r) => Math.abs(polygonArea(regions[r]?.outline ?? [])))
  const regionOrder =
    round % 3 === 0 ? byArea.reverse() : round % 3 === 1 ? byArea : byChance(regions.length, random)
  return {
    order: bySize(model.copies.length, (c) => sizes[c] as number),
    regions: regionOrder,
    rule: RULES[(round + Math.floor(round / RULES.length)) % RULES.length] as Rule,
    firstFit: round % 4 !== 3,
  }
}
