import { ringsArea } from '../../geometry/clipper.ts'
import { polygonArea } from '../../geometry/polygon.ts'
import type { Orientation, Rings } from '../../geometry/types.ts'
import { CLEARANCE_EXCESS, INSET, SAME_SHAPE } from '../config.ts'
import { type FlatRings, flatRings } from '../engine/flat-rings.ts'
import { feasibleDomain } from '../engine/inner-fit.ts'
import { NoFitTable } from '../engine/no-fit-table.ts'
import { type Shape, ShapeTable, sameUpToTranslation } from '../engine/shapes.ts'
import type { CopyRef, Item, PackingProblem, Region } from '../problem.ts'
import { orientationsOf } from './turns.ts'

/** One way to place an item: a shape in a region, and where its reference point may be. */
export interface Option {
  readonly region: number
  readonly shape: Shape
  readonly domain: FlatRings
  readonly domainRings: Rings
}

/** Copies that are alike in every respect, of one item or of equal items. */
export interface ItemClass {
  readonly index: number
  readonly item: Item
  readonly outlineId: number
  readonly area: number
  readonly diameter: number
  readonly options: readonly Option[]
}

/** One thing to place. */
export interface Copy {
  readonly ref: CopyRef
  readonly kind: ItemClass
}

/** A packing problem made ready for the search. */
export interface Model {
  readonly problem: PackingProblem
  readonly table: ShapeTable
  readonly noFits: NoFitTable
  readonly classes: readonly ItemClass[]
  /** Needed copies first, then optional ones. */
  readonly copies: readonly Copy[]
  readonly needed: number
}

/** Shapes and no-fit polygons, which do not depend on the regions and may serve several problems. */
export interface Engine {
  readonly table: ShapeTable
  readonly noFits: NoFitTable
}

export function createEngine(clearance: number): Engine {
  const table = new ShapeTable(INSET)
  return { table, noFits: new NoFitTable(table, clearance, CLEARANCE_EXCESS) }
}

export function createModel(problem: PackingProblem, engine = createEngine(problem.clearance)): Model {
  const domains = new Map<string, Rings>()
  const byKey = new Map<string, ItemClass>()
  const copies: Copy[] = []
  problem.items.forEach((item, index) => {
    const key = JSON.stringify([item.outline, item.optional, item.ways])
    let kind = byKey.get(key)
    if (!kind) {
      kind = createClass(byKey.size, item, problem.regions, engine.table, domains)
      byKey.set(key, kind)
    }
    for (let copy = 0; copy < item.copies; copy++) copies.push({ ref: { item: index, copy }, kind })
  })
  copies.sort((a, b) => Number(a.kind.item.optional) - Number(b.kind.item.optional))
  const needed = copies.filter(({ kind }) => !kind.item.optional).length
  return { problem, ...engine, classes: [...byKey.values()], copies, needed }
}

function createClass(
  index: number,
  item: Item,
  regions: readonly Region[],
  table: ShapeTable,
  domains: Map<string, Rings>,
): ItemClass {
  const outlineId = table.outlineId(item.outline)
  const options = item.ways.flatMap((ways, r) => {
    const region = regions[r] as Region
    const orientations = orientationsOf(ways, item.outline, region.outline)
    return optionsIn(r, region, unlikeShapes(table, outlineId, orientations), domains)
  })
  const outline = table.outlines[outlineId] as Item['outline']
  return { index, item, outlineId, area: polygonArea(outline), diameter: diameterOf(outline), options }
}

/** The shapes of an outline that differ by more than a translation. */
function unlikeShapes(table: ShapeTable, outlineId: number, orientations: readonly Orientation[]): Shape[] {
  const kept: Shape[] = []
  for (const orientation of orientations) {
    const shape = table.shape(outlineId, orientation)
    if (!kept.some((other) => other === shape || sameUpToTranslation(other, shape, SAME_SHAPE)))
      kept.push(shape)
  }
  return kept
}

function optionsIn(
  r: number,
  region: Region,
  shapes: readonly Shape[],
  domains: Map<string, Rings>,
): Option[] {
  const options: Option[] = []
  for (const shape of shapes) {
    const rings = domainOf(region, shape, domains)
    if (ringsArea(rings) > 0) options.push({ region: r, shape, domain: flatRings(rings), domainRings: rings })
  }
  return options
}

/** Equal regions share their domains. */
function domainOf(region: Region, shape: Shape, domains: Map<string, Rings>): Rings {
  const key = `${shape.id} ${region.outline.join(' ')} ${region.forbidden.join(';')}`
  let rings = domains.get(key)
  if (!rings) {
    rings = feasibleDomain(region.outline, region.forbidden, shape.outline)
    domains.set(key, rings)
  }
  return rings
}

function diameterOf(outline: Item['outline']): number {
  let greatest = 0
  for (const [ax, ay] of outline)
    for (const [bx, by] of outline) greatest = Math.max(greatest, Math.hypot(ax - bx, ay - by))
  return greatest
}

/** An option of the same item elsewhere than in its list: a tilted or refined turn. */
export function extraOption(
  model: Model,
  kind: ItemClass,
  region: number,
  orientation: Orientation,
): Option | null {
  const shape = model.table.shape(kind.outlineId, orientation)
  return optionsIn(region, model.problem.regions[region] as Region, [shape], new Map())[0] ?? null
}
