import { type Clock, type Deadline, sooner } from '../base/deadline.ts'
import { type Random, seededRandom } from '../base/random.ts'
import type { Mm } from '../base/units.ts'
import { polygonArea, polygonBox } from '../geometry/polygon.ts'
import { polygonOriented } from '../geometry/transform.ts'
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
 * feasible lay, repair it by overlap minimisation, and so on; later in ever smaller steps.
 */
export function packStrip(problem: StripProblem, control: StripControl): StripAnswer {
  return new StripSearch(problem, control).run()
}

class StripSearch {
  private readonly engine: Engine
  private readonly random: Random
  private best: StripAnswer = { length: Number.POSITIVE_INFINITY, placements: [] }
  private bestLayout: Layout = []

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
    return this.best
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

  /** Takes a lay that is shorter than the best; true if it is one. */
  private accept(model: Model, layout: Layout): boolean {
    // In a strip too short for some copy that copy has no place at all, and nothing overlaps it.
    if (!layoutServes(model, layout)) return false
    const length = usedLength(layout)
    if (length >= this.best.length) return false
    this.best = { length, placements: layoutPlacements(model, layout) }
    this.bestLayout = layout
    this.control.onProgress?.(this.best)
    return true
  }

  private construct(): void {
    const { items, height } = this.problem
    const area = items.reduce((sum, item) => sum + item.copies * boxArea(item), 0)
    const reach = items.reduce((most, item) => Math.max(most, diameter(item)), 0)
    const model = this.model((2 * area) / height + 2 * reach)
    const order = bySize(model.copies.length, (c) => {
      const kind = model.copies[c]?.kind
      return kind ? kind.area * kind.diameter : 0
    })
    const rule = RULES[2]
    if (!rule) return
    const recipe = { order, regions: [0], rule, firstFit: true }
    const layout = constructLayout(model, recipe, this.control.deadline)
    this.accept(model, this.inARow(model, layout))
  }

  /** The lay with what had no time to be placed one after another behind it: a lay there is always. */
  private inARow(model: Model, layout: Layout): Layout {
    const { clearance, height } = this.problem
    let end = usedLength(layout)
    return layout.map((spot, c) => {
      const option = model.copies[c]?.kind.allowed.find(({ shape: { box } }) => box.maxY - box.minY <= height)
      if (spot || !option) return spot
      const { box } = option.shape
      const x = end + clearance - box.minX
      end = x + box.maxX
      return { option, x, y: -box.minY }
    })
  }

  /** The lay in a shorter strip: everything beyond a cut at a chance place moves back by the difference. */
  private squeezed(length: Mm, layout: Layout, from: Mm): Separation {
    const model = this.model(length)
    const cut = this.random() * from
    const start = layout.map((spot, c): Spot | null => {
      if (!spot) return null
      const option = model.copies[c]?.kind.optionsIn(0).find(({ shape }) => shape === spot.option.shape)
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

  /** Shrinks by steps that grow with success and shrink with failure; the finest step is insisted on. */
  private explore(deadline: Deadline): void {
    let shrink = STRIP.shrinkFirst
    while (!deadline.passed()) {
      const lay = this.squeezed(this.best.length * (1 - shrink), this.bestLayout, this.best.length)
      const needed = this.insist(lay, shrink > STRIP.shrinkLast, deadline)
      if (needed === null) shrink = Math.max(STRIP.shrinkLast, shrink * STRIP.shrinkCut)
      else if (needed === 0) shrink = Math.min(STRIP.shrinkFirst, shrink * STRIP.shrinkGrow)
    }
  }

  /**
   * Tries one length again and again, from the least bad lays found at it, each disrupted by a swap. Gives the number
   * of disruptions it took, null if there were too many.
   */
  private insist(lay: Separation, coarse: boolean, deadline: Deadline): number | null {
    const patience = coarse ? STRIP.coarse : STRIP.fine
    const pool: SavedSeparation[] = []
    for (let k = 0; !deadline.passed(); k++) {
      if (separate(lay, patience, deadline) && this.accept(lay.model, lay.layout())) return k
      if (coarse) return null
      pool.push(lay.save())
      pool.sort((a, b) => a.overlap - b.overlap)
      const rank = Math.min(1, Math.abs(normal(this.random)) * 0.25)
      lay.restore(pool[Math.floor(rank * (pool.length - 1) + 0.5)] as SavedSeparation)
      lay.resetWeights()
      swapLarge(lay, this.random)
    }
    return null
  }

  /** From the best lay, by steps that double with success and halve with failure; from the finest to the first again. */
  private compress(deadline: Deadline): void {
    let shrink = STRIP.compressFirst
    while (!deadline.passed()) {
      const lay = this.squeezed(this.best.length * (1 - shrink), this.bestLayout, this.best.length)
      if (separate(lay, STRIP.fine, deadline) && this.accept(lay.model, lay.layout()))
        shrink = Math.min(STRIP.shrinkFirst, shrink * STRIP.shrinkGrow)
      else if (shrink > STRIP.compressLast) shrink *= STRIP.shrinkCut
      else shrink = STRIP.compressFirst
    }
  }
}

/** No strip is shorter than its items' area asks, nor than any one of them. */
function leastLength({ items, height }: StripProblem): Mm {
  const area = items.reduce((sum, { copies, outline }) => sum + copies * Math.abs(polygonArea(outline)), 0)
  return Math.max(area / height, ...items.map(leastExtent))
}

/** How far an item reaches along the strip in the turn in which it reaches least; 0 where it may be turned by degrees. */
function leastExtent({ outline, ways }: Item): Mm {
  const extents = (ways[0] ?? []).map((way) => {
    if (way.tilt > 0) return 0
    const { minX, maxX } = polygonBox(polygonOriented(outline, way))
    return maxX - minX
  })
  return extents.length > 0 ? Math.min(...extents) : 0
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

function diameter({ outline }: Item): Mm {
  return Math.max(...outline.flatMap(([ax, ay]) => outline.map(([bx, by]) => Math.hypot(ax - bx, ay - by))))
}

function boxArea({ outline }: Item): number {
  const xs = outline.map(([x]) => x)
  const ys = outline.map(([, y]) => y)
  return (Math.max(...xs) - Math.min(...xs)) * (Math.max(...ys) - Math.min(...ys))
}
