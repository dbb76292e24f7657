import type { Mm } from '../../base/units.ts'
import type { CopyRef, PackingProblem, Placement, Seat } from '../problem.ts'
import { showsSpot, sitsOnSome } from './confined.ts'
import { laidOutline, type Outline, outlineOf } from './outline.ts'
import { closerThan, liesWithin, overlapDeeply } from './touch.ts'

/** To within this every rule must hold. */
export const TOLERANCE: Mm = 0.01

/** One rule that a packing breaks. Items and regions are indices. */
export type PackingFault =
  | { readonly kind: 'unknown'; readonly item: number; readonly copy: number }
  | { readonly kind: 'twice' | 'missing'; readonly item: number; readonly copy: number }
  | {
      /** `unseated`: does not sit; `unshown`: does not show its spot. */
      readonly kind: 'turn' | 'outside' | 'unseated' | 'unshown'
      readonly item: number
      readonly copy: number
      readonly region: number
    }
  /** `area`: index among what is forbidden, then among what is kept clear. */
  | { readonly kind: 'forbidden'; readonly item: number; readonly copy: number; readonly area: number }
  | { readonly kind: 'too-close' | 'unlike'; readonly first: CopyRef; readonly second: CopyRef }

/**
 * Every rule of the problem that the placements break; none for a true packing. Shares no code with what finds
 * packings, only types. A copy must either be placed or be named in `leftOut`; whether it may be left out is for
 * `neededAreAll` to say.
 */
export function checkPacking(
  problem: PackingProblem,
  placements: readonly Placement[],
  leftOut: readonly CopyRef[],
): PackingFault[] {
  const regions = problem.regions.map(({ outline, forbidden, keptClear = [], seats = [] }) => ({
    border: outlineOf(outline),
    forbidden: forbidden.map(outlineOf),
    keptClear: keptClear.map(outlineOf),
    seats,
  }))
  const known = placements.filter((p) => isCopy(problem, p) && problem.regions[p.region] !== undefined)
  const laid = known.map((placement) => ({
    placement,
    outline: laidOutline(problem.items[placement.item]!.outline, placement),
  }))
  return [
    ...checkCopies(problem, placements, leftOut),
    ...laid.flatMap(({ placement, outline }) => [
      ...checkTurn(problem, placement),
      ...checkPlace(problem, placement, outline, regions[placement.region]!),
      ...checkConfined(problem, placement, outline, regions[placement.region]!),
    ]),
    ...checkApart(problem.clearance, laid),
    ...checkAlike(problem, known),
  ]
}

/** True if nothing is left out but what the problem calls optional. */
export function neededAreAll(problem: PackingProblem, leftOut: readonly CopyRef[]): boolean {
  return leftOut.every(({ item }) => problem.items[item]?.optional === true)
}

function isCopy(problem: PackingProblem, { item, copy }: CopyRef): boolean {
  const copies = problem.items[item]?.copies ?? 0
  return Number.isInteger(copy) && copy >= 0 && copy < copies
}

/** Each copy of each item once, either placed or left out. */
function checkCopies(
  problem: PackingProblem,
  placements: readonly Placement[],
  leftOut: readonly CopyRef[],
): PackingFault[] {
  const faults: PackingFault[] = []
  const seen = new Set<string>()
  for (const { item, copy } of [...placements, ...leftOut]) {
    const key = `${item}#${copy}`
    if (!isCopy(problem, { item, copy })) faults.push({ kind: 'unknown', item, copy })
    else if (seen.has(key)) faults.push({ kind: 'twice', item, copy })
    seen.add(key)
  }
  problem.items.forEach(({ copies }, item) => {
    for (let copy = 0; copy < copies; copy++)
      if (!seen.has(`${item}#${copy}`)) faults.push({ kind: 'missing', item, copy })
  })
  for (const { item, copy, region } of placements)
    if (problem.regions[region] === undefined) faults.push({ kind: 'unknown', item, copy })
  return faults
}

interface Ground {
  readonly border: Outline
  readonly forbidden: readonly Outline[]
  readonly keptClear: readonly Outline[]
  readonly seats: readonly Seat[]
}

/** One copy against its region: inside the outline, off the forbidden areas and, unless it sits, off those kept clear. */
function checkPlace(
  { items }: PackingProblem,
  { item, copy, region }: Placement,
  outline: Outline,
  ground: Ground,
): PackingFault[] {
  const faults: PackingFault[] = []
  const clear = items[item]!.sits === undefined ? ground.keptClear : []
  if (!liesWithin(outline, ground.border, TOLERANCE)) faults.push({ kind: 'outside', item, copy, region })
  ;[...ground.forbidden, ...clear].forEach((taboo, area) => {
    if (overlapDeeply(outline, taboo, TOLERANCE)) faults.push({ kind: 'forbidden', item, copy, area })
  })
  return faults
}

/** One copy against where its item must sit and what it must show. */
function checkConfined(
  { items }: PackingProblem,
  placement: Placement,
  outline: Outline,
  { seats }: Ground,
): PackingFault[] {
  const { item, copy, region } = placement
  const { sits, shows } = items[item]!
  const faults: PackingFault[] = []
  if (sits !== undefined && !sitsOnSome(outline, sits, seats, TOLERANCE))
    faults.push({ kind: 'unseated', item, copy, region })
  if (shows && !showsSpot(outline, placement, shows, TOLERANCE))
    faults.push({ kind: 'unshown', item, copy, region })
  return faults
}

/** Degrees by which a turn may miss its range: at 1,000 mm from the origin this is 0.02 µm. */
const TURN_ROUNDING = 1e-6

/** One copy against the orientations that its item allows in its region. */
function checkTurn(
  problem: PackingProblem,
  { item, copy, region, turn, mirrored }: Placement,
): PackingFault[] {
  const ways = problem.items[item]!.ways[region] ?? []
  const allowed = ways.some((way) => {
    const off = Math.abs(turn - way.turn) % 360
    return way.mirrored === mirrored && Math.min(off, 360 - off) <= way.tilt + TURN_ROUNDING
  })
  return allowed ? [] : [{ kind: 'turn', item, copy, region }]
}

/** Every two copies that must turn alike: off each other by no more than both may be off, head for head where that tells. */
function checkAlike({ items, regions }: PackingProblem, placed: readonly Placement[]): PackingFault[] {
  return placed.flatMap((first, i) =>
    placed.slice(i + 1).flatMap((second): PackingFault[] => {
      const [one, other] = [items[first.item]!.alike, items[second.item]!.alike]
      if (!one || !other || one.group !== other.group) return []
      const round = regions[first.region]!.headed && regions[second.region]!.headed ? 360 : 180
      const off = Math.abs(first.turn - second.turn) % round
      if (Math.min(off, round - off) <= one.within + other.within + 2 * TURN_ROUNDING) return []
      const ref = ({ item, copy }: Placement): CopyRef => ({ item, copy })
      return [{ kind: 'unlike', first: ref(first), second: ref(second) }]
    }),
  )
}

interface Laid {
  readonly placement: Placement
  readonly outline: Outline
}

/** Every two copies in one region: apart by the clearance, or not on each other where there is none. */
function checkApart(clearance: Mm, laid: readonly Laid[]): PackingFault[] {
  const clash = (a: Outline, b: Outline): boolean =>
    clearance > TOLERANCE ? closerThan(a, b, clearance - TOLERANCE) : overlapDeeply(a, b, TOLERANCE)
  return laid.flatMap((first, i) =>
    laid
      .slice(i + 1)
      .filter(
        (second) =>
          second.placement.region === first.placement.region && clash(first.outline, second.outline),
      )
      .map(
        (second): PackingFault => ({
          kind: 'too-close',
          first: { item: first.placement.item, copy: first.placement.copy },
          second: { item: second.placement.item, copy: second.placement.copy },
        }),
      ),
  )
}
