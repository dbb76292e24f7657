import type { Deg } from '../../base/units.ts'
import { turnNormalised } from '../engine/shapes.ts'
import type { Placement } from '../problem.ts'
import type { ItemClass } from './item-class.ts'
import type { Layout, Spot } from './layout.ts'
import type { Copy, Model } from './model.ts'
import type { Option } from './option.ts'

/**
 * Of the options in which the item fits, the one nearest to being held as asked, in the region if it has any there, else
 * anywhere. Domains of others are not computed.
 */
function nearestOption({ allowed }: ItemClass, region: number, turn: Deg, mirrored: boolean): Option | null {
  const costs = allowed.map((option) => {
    const away = Math.abs(((option.shape.turn - turn + 540) % 360) - 180)
    const cost = away + (option.shape.mirrored === mirrored ? 0 : 400) + (option.region === region ? 0 : 1000)
    return { option, cost }
  })
  costs.sort((a, b) => a.cost - b.cost)
  return costs.find(({ option }) => !option.isEmpty)?.option ?? null
}

/** The option held exactly so, or the nearest to it; domains of others are not computed if it is there. */
function optionHeld(kind: ItemClass, region: number, turn: Deg, mirrored: boolean): Option | null {
  const held = turnNormalised(turn)
  const exact = kind.allowedIn(region).find(({ shape }) => shape.turn === held && shape.mirrored === mirrored)
  return exact && !exact.isEmpty ? exact : nearestOption(kind, region, turn, mirrored)
}

/** Placements of a like problem as a lay of this one: overlaps and positions outside the domain are possible. */
export function layoutFromPlacements(model: Model, placements: readonly Placement[]): Layout {
  const at = new Map(placements.map((placement) => [`${placement.item} ${placement.copy}`, placement]))
  return model.copies.map(({ ref, kind }): Spot | null => {
    const placement = at.get(`${ref.item} ${ref.copy}`)
    if (!placement) return null
    const option = optionHeld(kind, placement.region, placement.turn, placement.mirrored)
    return option ? { option, x: placement.x, y: placement.y } : null
  })
}

/** A lay of one model as a lay of another of the same copies. */
export function transferred(model: Model, layout: Layout): Layout {
  return layout.map((spot, c): Spot | null => {
    if (!spot) return null
    const { region, shape } = spot.option
    const option = optionHeld((model.copies[c] as Copy).kind, region, shape.turn, shape.mirrored)
    return option ? { option, x: spot.x, y: spot.y } : null
  })
}
