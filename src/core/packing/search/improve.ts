import { type Deadline, NO_DEADLINE } from '../../base/deadline.ts'
import type { Random } from '../../base/random.ts'
import { type Patience, separate } from './attempt.ts'
import { bySize } from './construct.ts'
import { swapLarge } from './disrupt.ts'
import type { Layout, Spot } from './layout.ts'
import type { Copy, Model } from './model.ts'
import type { Option } from './option.ts'
import { filledUp, withoutOverlaps } from './part-lay.ts'
import { drawOption, netArea } from './room.ts'
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
  const lay = pushable(model, start, random, deadline)
  if (!lay) return model.copies.map(() => null)
  separate(lay, patience, deadline)
  for (let k = 0; k < disruptions && lay.overlap > 0 && !deadline.passed(); k++) {
    swapLarge(lay, random)
    lay.resetWeights()
    separate(lay, patience, deadline)
  }
  return filledUp(model, withoutOverlaps(lay), deadline)
}

/** All needed copies, each inside its domain; null if there was no time to find out how they lie to each other. */
export function pushable(model: Model, start: Layout, random: Random, deadline: Deadline): Separation | null {
  const spots = thrownIn(model, start, random, deadline)
  return noFitsKnown(model, spots, deadline) ? insideDomains(new Separation(model, spots, random)) : null
}

/** The same in one go, for lays that are known well enough. */
export function overlappingLay(model: Model, start: Layout, random: Random): Separation {
  return insideDomains(new Separation(model, thrownIn(model, start, random, NO_DEADLINE), random))
}

/** The needed copies of a lay, and those that it lacks anywhere. */
function thrownIn(model: Model, start: Layout, random: Random, deadline: Deadline): Layout {
  const spots: (Spot | null)[] = model.copies.map((_, c) => (c < model.needed ? (start[c] ?? null) : null))
  const left = model.problem.regions.map(netArea)
  const take = (c: number, { region }: Option) => {
    left[region] = (left[region] as number) - (model.copies[c] as Copy).kind.area
  }
  spots.forEach((spot, c) => {
    if (spot) take(c, spot.option)
  })
  // The largest find room by area first.
  for (const c of bySize(model.needed, (k) => (model.copies[k] as Copy).kind.area)) {
    if (deadline.passed()) break
    const { kind } = model.copies[c] as Copy
    const option = spots[c] ? null : drawOption(kind, (r) => (left[r] as number) - kind.area, random)
    if (!option) continue
    const { minX, minY, maxX, maxY } = option.domain
    spots[c] = { option, x: minX + random() * (maxX - minX), y: minY + random() * (maxY - minY) }
    take(c, option)
  }
  return spots
}

/** Computes the no-fit polygons of all that share a region; false if time is up before they are known. */
function noFitsKnown({ noFits }: Model, layout: Layout, deadline: Deadline): boolean {
  for (const [c, a] of layout.entries())
    for (const b of layout.slice(0, c)) {
      if (!a || b?.option.region !== a.option.region) continue
      if (deadline.passed()) return false
      noFits.handle(a.option.shape, b.option.shape)
      noFits.handle(b.option.shape, a.option.shape)
    }
  return true
}

function insideDomains(lay: Separation): Separation {
  for (let i = 0; i < lay.size; i++)
    lay.putInside(i, lay.options[i] as Option, lay.x[i] as number, lay.y[i] as number)
  return lay
}
