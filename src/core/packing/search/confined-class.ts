import { ringsIntersection } from '../../geometry/clipper.ts'
import { polygonNegated } from '../../geometry/minkowski.ts'
import { polygonCentroid } from '../../geometry/polygon.ts'
import { polygonOriented } from '../../geometry/transform.ts'
import type { Point, Rings, Way } from '../../geometry/types.ts'
import { CONFINED, INSET } from '../config.ts'
import { discInside, forbiddenTo, sittingSet, sittingWays } from '../engine/confinement.ts'
import { feasibleDomain, innerFit } from '../engine/inner-fit.ts'
import type { AskedShapes, Shape } from '../engine/shapes.ts'
import { shrunk } from '../engine/shrunk.ts'
import type { Item, Region, Showing } from '../problem.ts'
import { ItemClass } from './item-class.ts'
import { type DomainSource, Option } from './option.ts'
import { orientationsOf, type TurnChoice } from './turns.ts'

/**
 * The class of an item that must sit or show something: its options have only the positions that do. No two of its
 * shapes stand for each other, since a turn that changes nothing of the outline changes which edge lies where.
 */
export function confinedClass(
  index: number,
  item: Item,
  regions: readonly Region[],
  table: AskedShapes,
  choice: TurnChoice,
): ItemClass {
  const outlineId = table.outlineId(item.outline)
  const domains = new ConfinedDomains(item, regions)
  const ways = regions.map((region, r) => singleWays(item, region, item.ways[r] ?? [], choice))
  const optionsOf = (r: number): Option[] => {
    const shapes = new Set((ways[r] ?? []).map((way) => table.shape(outlineId, way)))
    return [...shapes].map((shape) => new Option(r, shape, domains))
  }
  return new ItemClass(index, { ...item, ways }, outlineId, table.outline(outlineId), optionsOf)
}

function singleWays(item: Item, region: Region, ways: readonly Way[], choice: TurnChoice): readonly Way[] {
  if (item.sits !== undefined) return sittingWays(item.outline, item.sits, region.seats ?? [], ways)
  return orientationsOf(ways, item.outline, region.outline, choice).map((held) => ({ ...held, tilt: 0 }))
}

class ConfinedDomains implements DomainSource {
  private readonly known = new Map<string, Rings>()

  constructor(
    private readonly item: Item,
    private readonly regions: readonly Region[],
  ) {}

  of(region: number, shape: Shape): Rings {
    const key = `${region} ${shape.id}`
    let rings = this.known.get(key)
    if (!rings) {
      rings = this.compute(this.regions[region] as Region, shape)
      this.known.set(key, rings)
    }
    return rings
  }

  private compute(region: Region, shape: Shape): Rings {
    const { outline, sits, shows } = this.item
    let rings = feasibleDomain(region.outline, forbiddenTo(sits !== undefined, region), shape.outline)
    const narrow = (to: Rings) => {
      rings = rings.length === 0 || to.length === 0 ? [] : ringsIntersection(rings, to)
    }
    if (sits !== undefined) narrow(sittingSet(outline, sits, region.seats ?? [], shape, CONFINED.seat))
    if (shows) for (const set of showingSets(this.item, shows, shape)) narrow(set)
    return rings
  }
}

/** Two sets whose meet are the translations that show the spot: it lies inside the item, and near enough to its place. */
function showingSets({ outline }: Item, { spot, at, within }: Showing, shape: Shape): readonly Rings[] {
  const [mx, my] = polygonCentroid(spot)
  const [px, py] = polygonOriented([at], shape)[0] as Point
  const near = discInside([mx - px, my - py], within + CONFINED.within)
  const holding = innerFit(polygonOriented(outline, shape), shrunk(spot, INSET))
  return [holding.map(polygonNegated), [near]]
}
