import type { Deadline } from '../../base/deadline.ts'
import type { Random } from '../../base/random.ts'
import { IMPROVE, JIGSAW } from '../config.ts'
import { separate } from './attempt.ts'
import { constructRounds } from './construct-rounds.ts'
import { improveOnce, overlappingLay } from './improve.ts'
import { isJigsaw, solveJigsaw } from './jigsaw.ts'
import { type Layout, layoutServes, layoutWorth } from './layout.ts'
import type { Model } from './model.ts'
import { filledUp, withoutOverlaps } from './part-lay.ts'

/** How much to try before giving up. */
export interface Effort {
  /** Constructive lays before each run of overlap minimisation. */
  readonly rounds: number
  /** Runs of overlap minimisation. */
  readonly runs: number
}

export interface SearchControl {
  readonly random: Random
  readonly deadline: Deadline
  /** Called with every better lay. */
  readonly onBetter?: (layout: Layout) => void
  readonly warmStart?: Layout
}

/** The best lay found: constructive lays first, then overlap minimisation from the best of them. */
export function searchLayout(model: Model, effort: Effort, control: SearchControl): Layout {
  const best = new Best(model, control)
  const { random, deadline, warmStart } = control
  if (warmStart) {
    const lay = overlappingLay(model, warmStart, random)
    best.offer(filledUp(model, withoutOverlaps(lay)))
  }
  const jigsaw = isJigsaw(model)
  for (let run = 0; run < effort.runs && !best.serves; run++) {
    const constructed = constructRounds(model, random, deadline, effort.rounds)
    best.offer(constructed)
    if (best.serves || deadline.passed()) break
    if (jigsaw) best.offer(jigsawLayout(model, run, control))
    if (best.serves || deadline.passed()) break
    const start = run % 2 === 0 ? best.layout : constructed
    best.offer(improveOnce(model, start, random, deadline))
    if (deadline.passed()) break
  }
  return best.layout
}

/** A lay without gaps made exact, or an empty lay. */
function jigsawLayout(model: Model, run: number, { random, deadline }: SearchControl): Layout {
  const rough = solveJigsaw(model, random, JIGSAW.nodes * 2 ** run, deadline)
  if (!rough) return model.copies.map(() => null)
  const lay = overlappingLay(model, rough, random)
  separate(lay, IMPROVE.patience, deadline)
  return filledUp(model, withoutOverlaps(lay))
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
