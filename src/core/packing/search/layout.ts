import type { Placement } from '../problem.ts'
import type { Copy, Model } from './model.ts'
import type { Option } from './option.ts'

/** Where one copy lies, or null. */
export interface Spot {
  readonly option: Option
  readonly x: number
  readonly y: number
}

/** One spot a copy, in the order of the model's copies; null for a copy that is left out. */
export type Layout = readonly (Spot | null)[]

/** Area placed, needed copies weighing more than all the optional ones together. */
export function layoutWorth(model: Model, layout: Layout): number {
  let worth = 0
  let optional = 0
  layout.forEach((spot, c) => {
    const { kind } = model.copies[c] as Copy
    if (!spot) return
    if (kind.item.optional) optional += kind.area
    else worth += kind.area
  })
  const all = model.copies.reduce((sum, { kind }) => sum + kind.area, 0)
  return worth + (optional / all) * smallestArea(model) * 0.5
}

function smallestArea(model: Model): number {
  return model.copies.reduce((least, { kind }) => Math.min(least, kind.area), Number.POSITIVE_INFINITY)
}

/** True if every needed copy has a spot. */
export function layoutServes(model: Model, layout: Layout): boolean {
  for (let c = 0; c < model.needed; c++) if (!layout[c]) return false
  return true
}

export function layoutPlacements(model: Model, layout: Layout): Placement[] {
  return layout.flatMap((spot, c): Placement[] => {
    if (!spot) return []
    const { shape, region } = spot.option
    const { item, copy } = (model.copies[c] as Copy).ref
    return [{ item, copy, region, turn: shape.turn, mirrored: shape.mirrored, x: spot.x, y: spot.y }]
  })
}
