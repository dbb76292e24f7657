import type { Mm } from '../base/units.ts'
import { LENGTH_KINDS, type LengthKind, type NeedAmount, type NotionKind, type NotionNeed } from './notion.ts'

/** What a need comes to. */
export interface Needed {
  readonly need: NotionNeed
  /** Of kinds owned by length: the cut length of every piece. */
  readonly lengths: readonly Mm[]
  /** Of kinds owned by count: how many. */
  readonly count: number
  /** The pattern gives no figure for this size, so nobody knows how much. */
  readonly unknown: boolean
}

/** The part of a pattern that says what it takes besides cloth. */
export interface WithNotions {
  readonly notions?: readonly NotionNeed[]
}

export function isByLength(kind: NotionKind): kind is LengthKind {
  return LENGTH_KINDS.some((each) => each === kind)
}

/** Every notion that so many garments of a version (by id) and size take, in the pattern's order. */
export function neededNotions(
  pattern: WithNotions,
  version: string,
  size: string,
  garments = 1,
): readonly Needed[] {
  const needs = (pattern.notions ?? []).filter(({ versions }) => versions?.includes(version) ?? true)
  return needs.map((need) => {
    const none = { need, lengths: [], count: 0, unknown: false }
    if (!isByLength(need.kind)) {
      const count = countIn(need.amount, size)
      return count === null ? { ...none, unknown: true } : { ...none, count: count * garments }
    }
    const length = cutLength(need.amount, size)
    if (length === null || need.amount.form === 'count') return { ...none, unknown: true }
    return { ...none, lengths: length > 0 ? Array(need.amount.each * garments).fill(length) : [] }
  })
}

/**
 * The length to cut one piece to. From a table as it stands; by formula edge × ratio + extra: elastic for an 80 cm waist
 * at 0.90 with 2 cm of overlap is cut 74 cm (common practice). null: no figure for that size, or needed by count.
 */
export function cutLength(amount: NeedAmount, size: string): Mm | null {
  if (amount.form === 'table') return amount.length[size] ?? null
  if (amount.form === 'count') return null
  const edge = amount.edge[size]
  return edge === undefined ? null : edge * amount.ratio + amount.extra
}

function countIn(amount: NeedAmount, size: string): number | null {
  return amount.form === 'count' ? (amount.count[size] ?? null) : amount.each
}

/** So much of a need has been cut or taken already. */
export interface Taken {
  readonly need: string
  readonly amount: number
}

/** A taken length serves a need that is longer by no more than this. */
const TAKEN_TOLERANCE: Mm = 0.5

/** What is left to cut or take. A length taken serves the longest piece of its need that it is long enough for. */
export function stillNeeded(needed: readonly Needed[], taken: readonly Taken[]): readonly Needed[] {
  return needed.map((each) => {
    const amounts = taken.filter(({ need }) => need === each.need.id).map(({ amount }) => amount)
    if (!isByLength(each.need.kind)) {
      return { ...each, count: Math.max(0, each.count - amounts.reduce((sum, amount) => sum + amount, 0)) }
    }
    return { ...each, lengths: amounts.reduce(withoutOne, each.lengths) }
  })
}

function withoutOne(lengths: readonly Mm[], taken: Mm): readonly Mm[] {
  const longest = Math.max(0, ...lengths.filter((length) => length <= taken + TAKEN_TOLERANCE))
  const served = lengths.indexOf(longest)
  return lengths.filter((_, k) => k !== served)
}
