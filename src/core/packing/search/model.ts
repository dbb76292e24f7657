import type { Deadline } from '../../base/deadline.ts'
import type { Orientation } from '../../geometry/types.ts'
import { SAME_SHAPE } from '../config.ts'
import { isConfined } from '../engine/confinement.ts'
import type { Engine } from '../engine/engine.ts'
import { type AskedShapes, type Shape, sameUpToTranslation } from '../engine/shapes.ts'
import type { CopyRef, Item, PackingProblem, Region } from '../problem.ts'
import { confinedClass } from './confined-class.ts'
import { ItemClass } from './item-class.ts'
import { Domains, Option } from './option.ts'
import { orientationsOf, type TurnChoice } from './turns.ts'

/** One thing to place. */
export interface Copy {
  readonly ref: CopyRef
  readonly kind: ItemClass
}

/** A packing problem made ready for the search. */
export interface Model extends Engine {
  readonly problem: PackingProblem
  readonly classes: readonly ItemClass[]
  /** Needed copies first, then optional ones. */
  readonly copies: readonly Copy[]
  readonly needed: number
  readonly domains: Domains
}

export function createModel(problem: PackingProblem, engine: Engine, choice: TurnChoice = 'exact'): Model {
  const domains = new Domains(problem.regions)
  const byKey = new Map<string, ItemClass>()
  const copies: Copy[] = []
  problem.items.forEach((item, index) => {
    const key = JSON.stringify([
      engine.table.outlineId(item.outline),
      item.optional,
      item.ways,
      item.sits,
      item.shows,
    ])
    let kind = byKey.get(key)
    if (!kind) {
      kind = createClass(byKey.size, item, problem.regions, engine.table, domains, choice)
      byKey.set(key, kind)
    }
    for (let copy = 0; copy < item.copies; copy++) copies.push({ ref: { item: index, copy }, kind })
  })
  copies.sort((a, b) => Number(a.kind.item.optional) - Number(b.kind.item.optional))
  const needed = copies.filter(({ kind }) => !kind.item.optional).length
  return { problem, ...engine, classes: [...byKey.values()], copies, needed, domains }
}

/** Indices of the items that are seen in time to fit in somewhere by themselves. */
export function itemsWithRoom({ classes, copies }: Model, deadline: Deadline): ReadonlySet<number> {
  const roomy = new Set(classes.filter((kind) => kind.hasRoom(deadline)))
  return new Set(copies.filter(({ kind }) => roomy.has(kind)).map(({ ref }) => ref.item))
}

/** True if some needed item fits in nowhere, as far as that is seen in time. */
export function lacksRoom({ classes }: Model, deadline: Deadline): boolean {
  return classes.some((kind) => !kind.item.optional && kind.hasRoom(deadline) === false)
}

function createClass(
  index: number,
  item: Item,
  regions: readonly Region[],
  table: AskedShapes,
  domains: Domains,
  choice: TurnChoice,
): ItemClass {
  if (isConfined(item)) return confinedClass(index, item, regions, table, choice)
  const outlineId = table.outlineId(item.outline)
  const optionsOf = (r: number): Option[] => {
    const { outline } = regions[r] as Region
    const orientations = orientationsOf(item.ways[r] ?? [], item.outline, outline, choice)
    return unlikeShapes(table, outlineId, orientations).map((shape) => new Option(r, shape, domains))
  }
  return new ItemClass(index, item, outlineId, table.outline(outlineId), optionsOf)
}

/** The shapes of an outline that differ by more than a translation. */
function unlikeShapes(table: AskedShapes, outlineId: number, orientations: readonly Orientation[]): Shape[] {
  const kept: Shape[] = []
  for (const orientation of orientations) {
    const shape = table.shape(outlineId, orientation)
    if (!kept.some((other) => other === shape || sameUpToTranslation(other, shape, SAME_SHAPE)))
      kept.push(shape)
  }
  return kept
}
