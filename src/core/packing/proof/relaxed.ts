import type { Deg } from '../../base/units.ts'
import { ringsDifference, ringsIntersection, ringsOffset } from '../../geometry/clipper.ts'
import { minkowskiErosion, minkowskiSum, polygonNegated } from '../../geometry/minkowski.ts'
import { polygonArea, polygonBox } from '../../geometry/polygon.ts'
import { polygonMoved } from '../../geometry/transform.ts'
import type { Box, Polygon, Rings } from '../../geometry/types.ts'
import { forbiddenTo, isConfined } from '../engine/confinement.ts'
import type { Item, PackingProblem, Region } from '../problem.ts'
import { confinedPlaces, confinedWays } from './confined-places.ts'
import { centred, coreOutline, MARGIN, toCentre } from './core-outline.ts'
import { outlineKey, waysInParts, waysNoWider } from './turns.ts'

/** A polygon that stands for an item in some range of orientations: inside the item in all of them. */
export interface Core {
  /** Index in the order of asking. */
  readonly id: number
  readonly outline: Polygon
  readonly box: Box
  /** True if it stands for an item that sits on a seat, and may lie on what others keep clear of. */
  readonly sits: boolean
  /** Sets that its positions must all be in, where the item may not lie just anywhere. */
  readonly places: readonly Rings[]
}

/**
 * The problem with every item replaced by its cores: a relaxation. Any true packing gives one of cores, moved by
 * translation only: so what is proved impossible for cores is impossible.
 */
export class Relaxed {
  private readonly outlines: readonly Polygon[]
  private readonly byKey = new Map<string, Core>()
  private count = 0
  private readonly lists = new Map<string, readonly Core[] | null>()
  private readonly domains = new Map<string, Rings>()
  private readonly overlaps = new Map<string, Rings>()

  /** `tilt`: the widest range of turns, each way, that one core stands for. */
  constructor(
    readonly problem: PackingProblem,
    private readonly tilt: Deg,
  ) {
    this.outlines = problem.items.map(({ outline }) => centred(outline))
  }

  /** The cores of an item in a region, without doubles; null if some orientation has none, so that nothing can be said. */
  cores(item: number, region: number): readonly Core[] | null {
    const asked = this.problem.items[item] as Item
    const ways = asked.ways[region] ?? []
    const key = isConfined(asked) ? `${item} in ${region}` : `${item} ${JSON.stringify(ways)}`
    let list = this.lists.get(key)
    if (list === undefined) {
      list = isConfined(asked) ? this.confinedCores(item, region) : this.makeCores(item, ways)
      this.lists.set(key, list)
    }
    return list
  }

  private makeCores(
    item: number,
    ways: PackingProblem['items'][number]['ways'][number],
  ): readonly Core[] | null {
    const cores = new Set<Core>()
    for (const way of waysNoWider(waysInParts(ways), this.tilt)) {
      const outline = coreOutline(this.outlines[item] as Polygon, way)
      if (!outline) return null
      cores.add(this.coreOf(outline))
    }
    return [...cores]
  }

  /** One core a way: cores of equal outline may have other places. */
  private confinedCores(item: number, region: number): readonly Core[] | null {
    const asked = this.problem.items[item] as Item
    const ground = this.problem.regions[region] as Region
    const ways = confinedWays(asked, ground, asked.ways[region] ?? [])
    const cores: Core[] = []
    for (const way of waysNoWider(waysInParts(ways), this.tilt)) {
      const own = this.outlines[item] as Polygon
      const held = coreOutline(own, way)
      if (!held) return null
      const [x, y] = toCentre(held)
      const places = confinedPlaces(asked, ground, way, own, toCentre(asked.outline))
      cores.push({
        ...this.newCore(polygonMoved(held, x, y)),
        sits: asked.sits !== undefined,
        places: places.map((rings) => rings.map((ring) => polygonMoved(ring, -x, -y))),
      })
    }
    return cores
  }

  /** Its reference is the middle of its own bounds, which lies in the bounds of any region that holds the core. */
  private coreOf(held: Polygon): Core {
    const outline = centred(held)
    const key = outlineKey(outline)
    const known = this.byKey.get(key)
    if (known) return known
    const core = this.newCore(outline)
    this.byKey.set(key, core)
    return core
  }

  private newCore(outline: Polygon): Core {
    return { id: this.count++, outline, box: polygonBox(outline), sits: false, places: [] }
  }

  /** Every translation that keeps the core in the region and off its forbidden areas, and a little more. */
  domain(region: number, core: Core): Rings {
    const key = `${region} ${core.id}`
    let domain = this.domains.get(key)
    if (!domain) {
      const ground = this.problem.regions[region] as Region
      domain = coreDomain({ ...ground, forbidden: forbiddenTo(core.sits, ground) }, core.outline)
      for (const places of core.places)
        domain = domain.length === 0 || places.length === 0 ? [] : ringsIntersection(domain, places)
      this.domains.set(key, domain)
    }
    return domain
  }

  /** True if the item may have a place in the region for all that is known here. */
  mayLieIn(item: number, region: number): boolean {
    const cores = this.cores(item, region)
    return cores === null || cores.some((core) => this.domain(region, core).length > 0)
  }

  /** Translations of `moving` relative to `fixed` that bring the two nearer than the clearance, and a little fewer. */
  overlap(fixed: Core, moving: Core): Rings {
    const key = `${fixed.id} ${moving.id}`
    let overlap = this.overlaps.get(key)
    if (!overlap) {
      const sum = minkowskiSum(fixed.outline, polygonNegated(moving.outline))
      const { clearance } = this.problem
      // Arcs of the offset are sampled on the true arc, so their chords stay inside it: fewer translations.
      overlap = clearance > 0 ? ringsOffset(sum, clearance, 'round', ARC_SAGITTA) : sum
      this.overlaps.set(key, overlap)
    }
    return overlap
  }
}

const ARC_SAGITTA = 0.02

/** See `Relaxed.domain`. */
export function coreDomain({ outline, forbidden }: Region, core: Polygon): Rings {
  const inside = minkowskiErosion(outline, core)
  if (inside.length === 0 || forbidden.length === 0) return inside
  const { minX, minY, maxX, maxY } = polygonBox(core)
  if (maxX - minX < MARGIN || maxY - minY < MARGIN) return inside
  const taboo = forbidden.flatMap((area) => minkowskiSum(counterClockwise(area), polygonNegated(core)))
  return ringsDifference(inside, taboo)
}

function counterClockwise(polygon: Polygon): Polygon {
  return polygonArea(polygon) < 0 ? [...polygon].reverse() : polygon
}
