import type { Clock, Deadline } from '../base/deadline.ts'
import { seededRandom } from '../base/random.ts'
import type { Deg, Mm } from '../base/units.ts'
import { polygonArea } from '../geometry/polygon.ts'
import type { Way } from '../geometry/types.ts'
import { checkPacking } from './check/check-packing.ts'
import { SPARE } from './config.ts'
import { type Engine, engineOf } from './engine/engine.ts'
import {
  freeArea,
  type InsetProblem,
  insetProblem,
  placementsBack,
  placementsInset,
} from './inset-problem.ts'
import type { Item, PackingProblem, Placement } from './problem.ts'
import { separate } from './search/attempt.ts'
import { overlappingLay } from './search/improve.ts'
import { type Layout, layoutPlacements, layoutServes } from './search/layout.ts'
import { createModel } from './search/model.ts'
import { searchLayout } from './search/portfolio.ts'
import { layoutFromPlacements } from './search/transfer.ts'

/** How long the figure may take, and from which seed it is found. */
export interface SpareControl {
  readonly seed: number
  readonly deadline: Deadline
  readonly clock: Clock
}

interface Found {
  readonly inset: Mm
  readonly moved: InsetProblem
  /** In the inset problem. */
  readonly placements: readonly Placement[]
}

/** Packings of one problem's needed copies with its edges moved in ever farther, each found from the one before. */
export class InsetSearch {
  readonly #needed: PackingProblem
  readonly #engine: Engine
  readonly #area: number
  readonly #control: SpareControl
  /** From the least inset to the greatest. */
  readonly #found: Found[] = []
  #known: readonly Placement[]

  constructor(problem: PackingProblem, placements: readonly Placement[], control: SpareControl) {
    const kept = problem.items.flatMap(({ optional }, i) => (optional ? [] : [i]))
    this.#needed = { ...problem, items: kept.map((i) => problem.items[i] as Item) }
    this.#known = placements
      .map((placement) => ({ ...placement, item: kept.indexOf(placement.item) }))
      .filter(({ item }) => item >= 0)
    this.#engine = engineOf(problem)
    this.#area = this.#needed.items.reduce(
      (sum, item) => sum + item.copies * Math.abs(polygonArea(item.outline)),
      0,
    )
    this.#control = control
  }

  /** The greatest inset found so far; 0 before any. */
  get inset(): Mm {
    return this.#found.at(-1)?.inset ?? 0
  }

  /** The greatest inset found whose packing keeps every rule by code that shares nothing with the search. */
  checkedInset(): Mm {
    const sound = this.#found.findLast(
      ({ moved, placements }) => checkPacking(moved.problem, placements, []).length === 0,
    )
    return sound?.inset ?? 0
  }

  /**
   * Pushes the last packing into the room that is left, farther in than any found before; true if nothing overlaps.
   * `as-held`: every item turned only as some copy of it is, which is quick; `as-allowed`: in any way the problem allows,
   * and laid anew if pushing does not do.
   */
  packs(inset: Mm, how: 'as-held' | 'as-allowed'): boolean {
    const { seed, deadline } = this.#control
    if (deadline.passed()) return false
    const moved = insetProblem(how === 'as-held' ? heldAsIn(this.#needed, this.#known) : this.#needed, inset)
    if (freeArea(moved.problem) < this.#area) return false
    const model = createModel(moved.problem, this.#engine)
    if (model.classes.some((kind) => kind.fitsNowhere)) return false
    const random = seededRandom(seed)
    const lay = overlappingLay(
      model,
      layoutFromPlacements(model, placementsInset(moved, this.#known)),
      random,
    )
    let layout: Layout | null = separate(lay, SPARE.patience, deadline) ? lay.layout() : null
    if (how === 'as-allowed')
      layout ??= searchLayout(model, SPARE.anew, { random, deadline, warmStart: lay.layout() })
    if (layout === null || !layoutServes(model, layout)) return false
    const placements = layoutPlacements(model, layout)
    this.#found.push({ inset, moved, placements })
    this.#known = placementsBack(moved, placements)
    return true
  }
}

/** Degrees by which the turn of a placement may miss its range. */
const TURN_ROUNDING = 1e-6

/** The problem with every item held only as the lay holds some copy of it, in whichever region allows it. */
function heldAsIn(problem: PackingProblem, lay: readonly Placement[]): PackingProblem {
  const items = problem.items.map((item, i) => {
    const held = lay.filter((placement) => placement.item === i)
    return { ...item, ways: item.ways.map((allowed) => waysHeld(held, allowed)) }
  })
  return { ...problem, items }
}

function waysHeld(held: readonly Placement[], allowed: readonly Way[]): readonly Way[] {
  const ways = new Map<string, Way>()
  for (const { turn, mirrored } of held)
    if (allowed.some((way) => allows(way, turn, mirrored)))
      ways.set(`${turn} ${mirrored}`, { turn, mirrored, tilt: 0 })
  return [...ways.values()]
}

function allows({ turn, mirrored, tilt }: Way, heldAt: Deg, turnedOver: boolean): boolean {
  const off = Math.abs(heldAt - turn) % 360
  return mirrored === turnedOver && Math.min(off, 360 - off) <= tilt + TURN_ROUNDING
}
