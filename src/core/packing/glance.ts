import type { Deadline } from '../base/deadline.ts'
import type { Random } from '../base/random.ts'
import { ended, endedBy } from '../base/slices.ts'
import type { Refutation } from './answer.ts'
import { refuteAlone } from './proof/alone.ts'
import { refuteWhole } from './proof/refute.ts'
import { constructRounds } from './search/construct-rounds.ts'
import { type Layout, layoutServes } from './search/layout.ts'
import { itemsWithRoom, type Model } from './search/model.ts'

/** Constructive lays: the first few find most of what they ever find. */
const ROUNDS = 4

/**
 * A lay or a refutation if there is one that takes milliseconds, for many problems one after another; else a part of a
 * lay. What has no place at all is seen before anything is placed, and proofs wait until a few lays have failed. Areas
 * are for the caller to compare.
 */
export function glance(model: Model, random: Random, deadline: Deadline): Layout | Refutation {
  const { problem } = model
  const withRoom = itemsWithRoom(model, deadline)
  const alone = endedBy(refuteAlone(problem, withRoom), deadline)
  if (alone) return alone
  const layout = ended(constructRounds(model, random, deadline, ROUNDS))
  if (layoutServes(model, layout)) return layout
  return endedBy(refuteWhole(problem), deadline) ?? layout
}
