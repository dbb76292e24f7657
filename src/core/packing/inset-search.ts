import type { Deadline } from '../base/deadline.ts'
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
import type { PackingProblem, Placement } from './problem.ts'
import { separate } from './search/attempt.ts'
import { overlappingLay } from './search/improve.ts'
import { type Layout, layoutPlacements, layoutServes } from './search/layout.ts'
import { createModel } from './search/model.ts'
import { searchLayout } from './search/portfolio.ts'
import { layoutFromPlacements } from './search/transfer.ts'

/** A packing and how far every edge can move in with it. */
export interface InsetPacking {
  readonly inset: Mm
  /** In the problem as it is. */
  readonly placements: readonly Placement[]
}

/** Packings of one problem with its edges moved in ever farther, each found from the one before. */
export class InsetSearch {
  readonly #problem: PackingProblem
  readonly #engine: Engine
  readonly #area: number
  readonly #sits: boolean
  readonly #seed: number
  readonly #deadline: Deadline
  #known: readonly Placement[]
  #best: InsetPacking | null = null
  #cut = false

  /**
   * @param problem None of its items optional.
   * @param placements Where the search begins: a packing of all copies.
   */
  constructor(
    problem: PackingProblem,
    placements: readonly Placement[],
    { seed, deadline }: { readonly seed: number; readonly deadline: Deadline },
  ) {
    this.#problem = problem
    this.#known = placements
    this.#engine = engineOf(problem)
    this.#area = problem.items.reduce((sum, { copies, outline }) => {
      return sum + copies * Math.abs(polygonArea(outline))
    }, 0)
    this.#sits = problem.items.some(({ sits }) => sits !== undefined)
    this.#seed = seed
    this.#deadline = deadline
  }

  /** The packing with the greatest inset found so far, which keeps every rule by code that shares nothing with the search; null before any. */
  get best(): InsetPacking | null {
    return this.#best
  }

  get inset(): Mm {
    return this.#best?.inset ?? 0
  }

  /** True if time was up before some try had come to its end. */
  get wasCut(): boolean {
    return this.#cut
  }

  /** Tries a packing of a like problem at the inset that it had there: as it lies, else pushed into the room there is. */
  begin({ inset, placements }: InsetPacking): void {
    if (inset <= this.inset || this.#isOver()) return
    const moved = insetProblem(this.#problem, inset)
    if (this.#keep(moved, inset, placementsInset(moved, placements))) return
    const before = this.#known
    this.#known = placements
    if (!this.packs(inset, 'as-allowed')) this.#known = before
  }

  /**
   * Pushes the last packing into the room that is left, farther in than any found before; true if all rules are kept.
   * `as-held`: every item turned only as some copy of it is, which is quick; `as-allowed`: in any way the problem allows,
   * and laid anew if pushing does not do. Ends by steps counted, or when time is up.
   */
  packs(inset: Mm, how: 'as-held' | 'as-allowed'): boolean {
    if (this.#isOver()) return false
    const moved = insetProblem(
      how === 'as-held' ? heldAsIn(this.#problem, this.#known) : this.#problem,
      inset,
    )
    if (freeArea(moved.problem) < this.#area) return false
    const placements = this.#search(moved, how)
    if (placements && this.#keep(moved, inset, placements)) return true
    this.#isOver()
    return false
  }

  #search(moved: InsetProblem, how: 'as-held' | 'as-allowed'): readonly Placement[] | null {
    const deadline = this.#deadline
    const model = createModel(moved.problem, this.#engine)
    if (!model.classes.every((kind) => kind.hasRoom(deadline))) return null
    const random = seededRandom(this.#seed)
    const start = layoutFromPlacements(model, placementsInset(moved, this.#known))
    const lay = overlappingLay(model, start, random)
    let layout: Layout | null = separate(lay, SPARE.patience, deadline) ? lay.layout() : null
    if (how === 'as-allowed')
      layout ??= searchLayout(model, SPARE.anew, { random, deadline, warmStart: lay.layout() })
    return layout && layoutServes(model, layout) ? layoutPlacements(model, layout) : null
  }

  /** True if the placements, in the inset problem, keep every rule; then the next try begins from them. */
  #keep(moved: InsetProblem, inset: Mm, placements: readonly Placement[]): boolean {
    if (checkPacking(moved.problem, placements, []).length > 0) return false
    const back = placementsBack(moved, placements)
    // What sits goes back with its edge, which may take it onto what does not.
    if (this.#sits && checkPacking(this.#problem, back, []).length > 0) return false
    this.#known = back
    this.#best = { inset, placements: back }
    return true
  }

  /** Notes it where time has ended the search, not its steps. */
  #isOver(): boolean {
    if (this.#deadline.passed()) this.#cut = true
    return this.#cut
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
