import type { Deadline } from '../../base/deadline.ts'
import type { Random } from '../../base/random.ts'
import { type Patience, separate } from './attempt.ts'
import { swapLarge } from './disrupt.ts'
import type { Layout, Spot } from './layout.ts'
import type { Model } from './model.ts'
import type { Option } from './option.ts'
import { filledUp, withoutOverlaps } from './part-lay.ts'
import { Separation } from './separation.ts'

/**
 * Overlap minimisation from a part-lay: copies that found no room are thrown in anywhere, and everything is
 * pushed apart. Gives a lay without overlaps that holds all needed copies if it finds one, else what is left of
 * the attempt when overlapping items go.
 */
export function improveOnce(
  model: Model,
  start: Layout,
  { disruptions, patience }: { readonly disruptions: number; readonly patience: Patience },
  random: Random,
  deadline: Deadline,
): Layout {
  const lay = overlappingLay(model, start, random)
  separate(lay, patience, deadline)
  for (let k = 0; k < disruptions && lay.overlap > 0 && !deadline.passed(); k++) {
    swapLarge(lay, random)
    lay.resetWeights()
    separate(lay, patience, deadline)
  }
  return filledUp(model, withoutOverlaps(lay), deadline)
}

/** All needed copies, each inside its domain. */
export function overlappingLay(model: Model, start: Layout, random: Random): Separation {
  const spots = model.copies.map(({ kind }, c): Spot | null => {
    const known = start[c]
    if (known || c >= model.needed || kind.options.length === 0)
      return c < model.needed ? (known ?? null) : null
    const option = kind.options[Math.floor(random() * kind.options.length)] as Option
    const { minX, minY, maxX, maxY } = option.domain
    return { option, x: minX + random() * (maxX - minX), y: minY + random() * (maxY - minY) }
  })
  const lay = new Separation(model, spots, random)
  for (let i = 0; i < lay.size; i++)
    lay.putInside(i, lay.options[i] as Option, lay.x[i] as number, lay.y[i] as number)
  return lay
}
