import type { Deadline } from '../base/deadline.ts'
import type { Mm } from '../base/units.ts'
import { SPARE } from './config.ts'
import { type InsetPacking, InsetSearch } from './inset-search.ts'
import type { CopyRef, Item, PackingProblem, Placement } from './problem.ts'
import { withOptional } from './taken-over.ts'

export type { InsetPacking }

/** From which seed the figure is found, when time is up, and what is known beforehand. */
export interface SpareControl {
  readonly seed: number
  readonly deadline: Deadline
  /** So much is enough: no more is looked for. Absent: the most there is. */
  readonly upTo?: Mm
  /** Packings of these copies in a like problem, with the inset they had there: it is asked first whether they have it here too. */
  readonly starts?: readonly InsetPacking[]
  /** Called with every greater inset. */
  readonly onBetter?: (found: SpareFound) => void
}

export interface SpareFound {
  /** null: none was found, for time was up at once. */
  readonly inset: Mm | null
  /** True if the search for more came to its end; false if time ended it, or there was enough. */
  readonly ended: boolean
  /** The packing that has this to spare, optional copies beside it as far as they find room. */
  readonly placements: readonly Placement[]
}

/**
 * How far every region edge and every forbidden edge can move in with a packing of all needed copies still found, each
 * try starting from the last packing. Counted in steps: the same with the same seed unless the deadline cuts it short.
 * A figure found and checked, never a promise of more, and never more than the last of `SPARE.ladder`.
 *
 * Optional copies may be left out for it, but not for more than is `decisive`: then the packing that keeps them stays.
 *
 * @param placements A packing of all needed copies.
 */
export function spare(
  problem: PackingProblem,
  placements: readonly Placement[],
  control: SpareControl,
): SpareFound {
  const whole = climb(asNeeded(problem, placements, placements), control)
  const optional = placements.filter(({ item }) => problem.items[item]?.optional)
  if (optional.length === 0 || whole.inset === null || !whole.ended) return whole
  const { onBetter: _, ...silent } = control
  const starts = [{ inset: whole.inset, placements: whole.placements }, ...(control.starts ?? [])]
  const without = climb(asNeeded(problem, placements, []), { ...silent, starts })
  if (without.inset === null || without.inset <= whole.inset) return { ...whole, ended: without.ended }
  const keepsAll = without.placements.length >= whole.placements.length
  return keepsAll || whole.inset < SPARE.decisive ? without : { ...whole, ended: false }
}

/** From one inset to the next until one fails, then the middle between the two, again and again. */
function climb(task: Needed, { seed, deadline, upTo, starts = [], onBetter }: SpareControl): SpareFound {
  const search = new InsetSearch(task.problem, task.placements, { seed, deadline })
  const tell = () => onBetter?.(task.found(search.best, false))
  for (const { inset, placements } of starts) search.begin({ inset, placements: task.taken(placements) })
  if (search.best) tell()
  const rungs = (upTo === undefined ? SPARE.ladder : [upTo]).filter((inset) => inset > search.inset)
  let high = search.inset
  for (const inset of rungs) {
    high = inset
    const packs = search.packs(inset, 'as-held')
    if (!packs && !(inset <= SPARE.decisive && search.packs(inset, 'as-allowed'))) break
    tell()
  }
  while (high - search.inset > precisionAt(search.inset) && !search.wasCut) {
    const inset = (search.inset + high) / 2
    if (search.packs(inset, 'as-held')) tell()
    else high = inset
  }
  return task.found(search.best, !search.wasCut && !(upTo !== undefined && search.inset >= upTo))
}

function precisionAt(inset: Mm): Mm {
  return inset < SPARE.decisive ? SPARE.precision : inset * SPARE.share
}

/** A problem of needed copies only, made of one with optional ones. */
interface Needed {
  readonly problem: PackingProblem
  readonly placements: readonly Placement[]
  /** Placements of the whole problem, as far as they are of these copies. */
  taken(placements: readonly Placement[]): readonly Placement[]
  /** What was found, as an answer to the whole problem. */
  found(best: InsetPacking | null, ended: boolean): SpareFound
}

/** The needed copies, and those of the optional ones that are among `kept`, all of them needed. */
function asNeeded(
  problem: PackingProblem,
  placements: readonly Placement[],
  kept: readonly CopyRef[],
): Needed {
  const copiesOf = problem.items.map(({ optional, copies }, i) =>
    optional
      ? kept.filter(({ item }) => item === i).map(({ copy }) => copy)
      : Array.from({ length: copies }, (_, k) => k),
  )
  const items = problem.items.flatMap((_, i) => (copiesOf[i]?.length ? [i] : []))
  const taken = (laid: readonly Placement[]) =>
    laid
      .map((each) => ({
        ...each,
        item: items.indexOf(each.item),
        copy: copiesOf[each.item]?.indexOf(each.copy) ?? -1,
      }))
      .filter(({ item, copy }) => item >= 0 && copy >= 0)
  const back = (laid: readonly Placement[]) =>
    laid.map((each): Placement => {
      const item = items[each.item] as number
      return { ...each, item, copy: copiesOf[item]?.[each.copy] as number }
    })
  const isOptional = ({ item }: CopyRef) => problem.items[item]?.optional === true
  return {
    problem: { ...problem, items: items.map((i) => neededItem(problem.items[i] as Item, copiesOf[i] ?? [])) },
    placements: taken(placements),
    taken,
    found(best, ended) {
      const laid = best ? back(best.placements) : placements
      const optional = [...laid, ...placements].filter(isOptional)
      const needed = laid.filter((each) => !isOptional(each))
      const inset = best?.inset ?? (ended ? 0 : null)
      return { inset, ended, placements: withOptional(problem, needed, optional).placements }
    },
  }
}

function neededItem(item: Item, copies: readonly number[]): Item {
  return { ...item, optional: false, copies: copies.length }
}
