import type { Deadline } from '../../base/deadline.ts'
import type { Random } from '../../base/random.ts'
import { ended, type Slices } from '../../base/slices.ts'
import { BEST_FIT, JIGSAW } from '../config.ts'
import { type Patience, separate } from './attempt.ts'
import { bestFitLayout } from './best-fit.ts'
import { constructRounds } from './construct-rounds.ts'
import { improveOnce, overlappingLay, pushable } from './improve.ts'
import { isJigsaw, slackArea, solveJigsaw } from './jigsaw.ts'
import { type Layout, layoutServes, layoutWorth } from './layout.ts'
import type { Model } from './model.ts'
import { filledUp, withoutOverlaps } from './part-lay.ts'
import { transferred } from './transfer.ts'

/** How much to try before giving up. */
export interface Effort {
  /** Constructive lays before each run of overlap minimisation. */
  readonly rounds: number
  /** Runs of overlap minimisation, each with so many swaps of large items when it is stuck. */
  readonly runs: number
  readonly disruptions: number
  readonly patience: Patience
  /** Lays by best fit before each run, if the problem is tight. */
  readonly bestFits: number
}

export interface SearchControl {
  readonly random: Random
  readonly deadline: Deadline
  /** Called with every better lay. */
  readonly onBetter?: (layout: Layout) => void
  readonly warmStart?: Layout
  /** The same problem with tilted turns too, made when exact ones have failed. */
  readonly tilted?: () => Model
}

/**
 * The best lay found: constructive lays first, then overlap minimisation from the best of them, again and again.
 * In slices of some tens or hundreds of milliseconds, so that proofs can take turns with the search.
 */
export function* searchSlices(model: Model, effort: Effort, control: SearchControl): Slices<Layout> {
  const best = new Best(model, control)
  const { random, deadline, warmStart } = control
  const warm = warmStart && pushable(model, warmStart, random, deadline)
  if (warm) best.offer(filledUp(model, withoutOverlaps(warm), deadline))
  const jigsaw = isJigsaw(model)
  const pushing = jigsaw ? { ...effort, disruptions: 0 } : effort
  for (let run = 0; run < effort.runs && !best.serves; run++) {
    const rounds = jigsaw ? Math.min(effort.rounds, JIGSAW.rounds) : effort.rounds
    const constructed = yield* constructRounds(model, random, deadline, rounds)
    best.offer(constructed)
    yield
    if (best.serves || deadline.passed()) break
    if (jigsaw) {
      best.offer(jigsawLayout(model, run, control))
      yield
      if (best.serves || deadline.passed()) break
    }
    if (effort.bestFits > 0 && isTight(model)) {
      const finest = control.tilted?.() ?? model
      const lays = effort.bestFits * (turnsAnyhow(model) ? BEST_FIT.anyTurn : 1)
      for (let k = 0; k < lays && !best.serves; k++) {
        best.offer(filledUp(finest, bestFitLayout(finest, random, deadline), deadline))
        yield
        if (best.serves || deadline.passed()) return best.layout
      }
    }
    const start = run % 2 === 0 ? best.layout : constructed
    const tilt = control.tilted !== undefined && run % 3 === 2
    const held = tilt ? control.tilted() : model
    best.offer(improveOnce(held, tilt ? transferred(held, start) : start, pushing, random, deadline))
    yield
    if (deadline.passed()) break
  }
  return best.layout
}

/** True if the items fill the regions so far that it matters how they lie against each other. */
function isTight(model: Model): boolean {
  const needed = model.copies.slice(0, model.needed)
  const area = needed.reduce((sum, { kind }) => sum + kind.area, 0)
  return needed.length <= BEST_FIT.mostCopies && area > BEST_FIT.fill * (slackArea(model) + area)
}

function turnsAnyhow(model: Model): boolean {
  return model.problem.items.some(({ ways }) => ways.flat().some(({ tilt }) => tilt >= 180))
}

/** All slices in one go. */
export function searchLayout(model: Model, effort: Effort, control: SearchControl): Layout {
  return ended(searchSlices(model, effort, control))
}

/** A lay without gaps made exact, or an empty lay. */
function jigsawLayout(model: Model, run: number, { random, deadline }: SearchControl): Layout {
  const rough = solveJigsaw(model, random, JIGSAW.nodes * 2 ** run, deadline)
  if (!rough) return model.copies.map(() => null)
  const lay = overlappingLay(model, rough, random)
  separate(lay, JIGSAW.patience, deadline)
  return filledUp(model, withoutOverlaps(lay), deadline)
}

/** The lay of most worth so far. */
class Best {
  layout: Layout
  private worth = -1

  constructor(
    private readonly model: Model,
    private readonly control: SearchControl,
  ) {
    this.layout = model.copies.map(() => null)
  }

  offer(layout: Layout): void {
    const worth = layoutWorth(this.model, layout)
    if (worth <= this.worth) return
    this.worth = worth
    this.layout = layout
    this.control.onBetter?.(layout)
  }

  get serves(): boolean {
    return layoutServes(this.model, this.layout)
  }
}
