import type { Deadline } from '../../base/deadline.ts'
import type { Random } from '../../base/random.ts'
import { polygonCounterClockwise, polygonPerimeter } from '../../geometry/polygon.ts'
import { BEST_FIT } from '../config.ts'
import type { Shape } from '../engine/shapes.ts'
import { Sides } from './contact.ts'
import { FreeSpace } from './free-space.ts'
import type { ItemClass } from './item-class.ts'
import type { Layout, Spot } from './layout.ts'
import type { Model } from './model.ts'
import { Option } from './option.ts'
import { turnsAgainst } from './turns.ts'

/** The spot that suits an item best, and how well. */
interface Fit {
  readonly c: number
  readonly spot: Spot
  readonly score: number
}

/**
 * A constructive lay by best fit, as one does a jigsaw: of all items left, all options and all corners of their
 * free spaces, take the spot in which most of an outline lies against what is there. Chance makes every lay
 * another one. Strong where parts were cut from one sheet; slow where there are many turns.
 */
export function bestFitLayout(model: Model, random: Random, deadline: Deadline): Layout {
  const layout: (Spot | null)[] = model.copies.map(() => null)
  const free = new FreeSpace(model.noFits, deadline)
  const sides = model.problem.regions.map(({ outline, forbidden }) => {
    const made = new Sides()
    made.add(polygonCounterClockwise(outline), 0, 0, false)
    for (const area of forbidden) made.add(polygonCounterClockwise(area), 0, 0, true)
    return made
  })
  const favour = model.classes.map(() => 1 + BEST_FIT.noise * (2 * random() - 1))
  const options = new Map(model.classes.map((kind) => [kind, [...kind.allowed]]))
  for (;;) {
    const fit = bestFit(model, layout, free, sides, favour, options)
    if (!fit || deadline.passed()) return layout
    layout[fit.c] = fit.spot
    free.take(fit.spot)
    const { option, x, y } = fit.spot
    sides[option.region]?.add(option.shape.outline, x, y, true)
    for (const [kind, list] of options) list.push(...optionsAgainst(model, kind, list, option))
  }
}

/** Options of items that may turn, to lie edge to edge with one just placed; none that is among `present`. */
function optionsAgainst(model: Model, kind: ItemClass, present: readonly Option[], placed: Option): Option[] {
  const { table, domains } = model
  const region = placed.region
  const isThere = (shape: Shape) =>
    present.some((option) => option.region === region && option.shape === shape)
  return (kind.item.ways[region] ?? []).flatMap((way) =>
    turnsAgainst(way, kind.item.outline, placed.shape.outline).flatMap((turn) => {
      const held = { turn, mirrored: way.mirrored }
      const isFull = table.size >= BEST_FIT.mostShapes
      const shape = isFull ? table.known(kind.outlineId, held) : table.shape(kind.outlineId, held)
      if (!shape || isThere(shape)) return []
      return [new Option(region, shape, domains)]
    }),
  )
}

function bestFit(
  model: Model,
  layout: Layout,
  free: FreeSpace,
  sides: readonly Sides[],
  favour: readonly number[],
  options: ReadonlyMap<ItemClass, readonly Option[]>,
): Fit | null {
  let best: Fit | null = null
  const seen = new Set<ItemClass>()
  for (let c = 0; c < model.needed; c++) {
    const { kind } = model.copies[c] as Model['copies'][number]
    if (layout[c] || seen.has(kind)) continue
    seen.add(kind)
    const size = (favour[kind.index] as number) * kind.area ** BEST_FIT.areaPower
    for (const option of options.get(kind) ?? []) {
      const { outline } = option.shape
      const worth = size / polygonPerimeter(outline)
      for (const ring of free.of(option)) {
        for (const [x, y] of ring) {
          const score = worth * (1 + (sides[option.region] as Sides).contact(outline, x, y))
          if (!best || score > best.score) best = { c, spot: { option, x, y }, score }
        }
      }
    }
  }
  return best
}
