import { type Clock, type Deadline, sooner } from '../base/deadline.ts'
import { type Random, seededRandom } from '../base/random.ts'
import type { Mm } from '../base/units.ts'
import { STRIP } from './config.ts'
import { createEngine, type Engine } from './engine/engine.ts'
import type { Item, PackingProblem, Placement } from './problem.ts'
import { separate } from './search/attempt.ts'
import { bySize, constructLayout, spotBox } from './search/construct.ts'
import { swapLarge } from './search/disrupt.ts'
import { type Layout, layoutPlacements, layoutServes, type Spot } from './search/layout.ts'
import { createModel, type Model } from './search/model.ts'
import { RULES } from './search/rules.ts'
import { type SavedSeparation, Separation } from './search/separation.ts'
import { ampleLength, leastLength } from './strip-bounds.ts'

/** This near to the shortest strip possible there is nothing left to gain. */
const SHORTEST: Mm = 0.01

/** A strip of given height along y, its length along x to be as short as can be. */
export interface StripProblem {
  readonly height: Mm
  readonly clearance: Mm
  /** Each with one list of ways. */
  readonly items: readonly Item[]
}

export interface StripAnswer {
  readonly length: Mm
  readonly placements: readonly Placement[]
}

export interface StripControl {
  readonly seed: number
  readonly deadline: Deadline
  readonly clock: Clock
  /** Called with every shorter lay. */
  readonly onProgress?: (answer: StripAnswer) => void
}

/**
 * Least length of a strip as a chain of feasibility questions (Gardeyn, Vanden Berghe and Wauters 2025): shrink a
 * feasible lay, repair it by overlap minimisation, and so on; later in ever smaller steps. A lay that cannot be made any
 * shorter is loosened, some of its large items swapped, and shrunk again (iterated local search, Lourenço, Martin and
 * Stützle 2003).
 */
export function packStrip(problem: StripProblem, control: StripControl): StripAnswer {
  return new StripSearch(problem, control).run()
}

interface StripLay {
  readonly length: Mm
  readonly layout: Layout
}

const NO_LAY: StripLay = { length: Number.POSITIVE_INFINITY, layout: [] }

class StripSearch {
  private readonly engine: Engine
  private readonly random: Random
  private answer: StripAnswer = { length: Number.POSITIVE_INFINITY, placements: [] }
  private best = NO_LAY
  /** The lay that is being shrunk: the best, or one loosened from it. */
  private here = NO_LAY

  constructor(
    private readonly problem: StripProblem,
    private readonly control: StripControl,
  ) {
    this.engine = createEngine(problem.clearance)
    this.random = seededRandom(control.seed)
  }

  run(): StripAnswer {
    this.construct()
    const { clock } = this.control
    const deadline = this.untilShortest()
    this.explore(sooner(deadline, deadline.left() * STRIP.explore, clock))
    this.compress(deadline)
    return this.answer
  }

  /** The control's deadline, which has passed too once no strip can be shorter. */
  private untilShortest(): Deadline {
    const { deadline } = this.control
    const least = leastLength(this.problem) + SHORTEST
    return { ...deadline, passed: () => this.best.length <= least || deadline.passed() }
  }

  private model(length: Mm): Model {
    const { height, clearance, items } = this.problem
    const outline = [
      [0, 0],
      [length, 0],
      [length, height],
      [0, height],
    ] as const
    const problem: PackingProblem = { clearance, items, regions: [{ id: 'strip', outline, forbidden: [] }] }
    return createModel(problem, this.engine)
  }

  private accept(model: Model, layout: Layout): void {
    // In a strip too short for some copy that copy has no place at all, and nothing overlaps it.
    if (!layoutServes(model, layout)) return
    const length = usedLength(layout)
    if (length < this.here.length) this.here = { length, layout }
    if (length >= this.best.length) return
    this.best = this.here
    this.answer = { length, placements: layoutPlacements(model, layout) }
    this.control.onProgress?.(this.answer)
  }

  private construct(): void {
    const model = this.model(ampleLength(this.problem))
    const order = bySize(model.copies.length, (c) => {
      const kind = model.copies[c]?.kind
      return kind ? kind.area * kind.diameter : 0
    })
    const rule = RULES[2]
    if (!rule) return
    const layout = constructLayout(model, { order, regions: [0], rule, firstFit: true })
    if (layoutServes(model, layout)) this.accept(model, layout)
  }

  /** The lay in a strip of another length: everything beyond a cut at a chance place moves by the difference. */
  private squeezed(model: Model, length: Mm, { layout, length: from }: StripLay): Separation {
    const cut = this.random() * from
    const start = layout.map((spot, c): Spot | null => {
      if (!spot) return null
      const option = model.copies[c]?.kind.options.find(({ shape }) => shape === spot.option.shape)
      if (!option) return null
      const box = spotBox(spot.option, spot.x, spot.y)
      const x = (box.minX + box.maxX) / 2 > cut ? spot.x - (from - length) : spot.x
      return { option, x, y: spot.y }
    })
    const lay = new Separation(model, start, this.random)
    for (let i = 0; i < lay.size; i++)
      lay.putInside(i, lay.options[i] as Spot['option'], lay.x[i] as number, lay.y[i] as number)
    return lay
  }

  /**
   * Shrinks by steps that grow with success and shrink with failure; the finest step is insisted on. Where that fails
   * too, the search goes on from the best lay loosened.
   */
  private explore(deadline: Deadline): void {
    let shrink = STRIP.shrinkFirst
    while (!deadline.passed()) {
      const fine = shrink <= STRIP.shrinkLast
      const needed = this.insist(this.here.length * (1 - shrink), fine ? this.tries() : 1, deadline)
      if (needed === 0) shrink = Math.min(STRIP.shrinkFirst, shrink * STRIP.shrinkGrow)
      else if (needed === null && !fine) shrink = Math.max(STRIP.shrinkLast, shrink * STRIP.shrinkCut)
      else if (needed === null) {
        this.loosen(deadline)
        shrink = STRIP.shrinkFirst
      }
    }
    this.here = this.best
  }

  private tries(): number {
    return this.here === this.best ? STRIP.triesAtBest : STRIP.triesElsewhere
  }

  /**
   * Tries one length up to so many times: by turns from the lay squeezed at another place, and from the least bad lays
   * found at that length, disrupted by a swap. Gives the number of failures before it succeeded, null if it did not.
   */
  private insist(length: Mm, tries: number, deadline: Deadline): number | null {
    const model = this.model(length)
    const patience = tries === 1 ? STRIP.coarse : STRIP.fine
    const pool: SavedSeparation[] = []
    let lay = this.squeezed(model, length, this.here)
    for (let k = 0; k < tries && !deadline.passed(); k++) {
      if (k % 2 === 1) lay = this.squeezed(model, length, this.here)
      else if (k > 0) this.disrupt(lay, pool)
      if (separate(lay, patience, deadline)) {
        this.accept(model, lay.layout())
        return k
      }
      pool.push(lay.save())
    }
    return null
  }

  /** Makes the lay one of the least bad in the pool, with two large items swapped. */
  private disrupt(lay: Separation, pool: SavedSeparation[]): void {
    pool.sort((a, b) => a.overlap - b.overlap)
    const rank = Math.min(1, Math.abs(normal(this.random)) * 0.25)
    lay.restore(pool[Math.floor(rank * (pool.length - 1) + 0.5)] as SavedSeparation)
    lay.resetWeights()
    swapLarge(lay, this.random)
  }

  /** Goes on from the best lay in a longer strip, some of its large items swapped, if they can be set apart there. */
  private loosen(deadline: Deadline): void {
    this.here = this.best
    const length = this.best.length * (1 + STRIP.loosen)
    const lay = this.squeezed(this.model(length), length, this.best)
    for (let k = 0; k < STRIP.looseSwaps; k++) swapLarge(lay, this.random)
    if (!separate(lay, STRIP.coarse, deadline)) return
    this.here = NO_LAY
    this.accept(lay.model, lay.layout())
  }

  /** From the best lay, by steps that double with success and halve with failure; from the finest to the first again. */
  private compress(deadline: Deadline): void {
    let shrink = STRIP.compressFirst
    while (!deadline.passed()) {
      const length = this.best.length * (1 - shrink)
      const lay = this.squeezed(this.model(length), length, this.best)
      if (separate(lay, STRIP.fine, deadline)) {
        this.accept(lay.model, lay.layout())
        shrink = Math.min(STRIP.shrinkFirst, shrink * STRIP.shrinkGrow)
      } else if (shrink > STRIP.compressLast) shrink *= STRIP.shrinkCut
      else shrink = STRIP.compressFirst
    }
  }
}

/** A number from the standard normal distribution (Box and Muller 1958). */
function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
}

function usedLength(layout: Layout): Mm {
  return layout.reduce(
    (most, spot) => (spot ? Math.max(most, spotBox(spot.option, spot.x, spot.y).maxX) : most),
    0,
  )
}
