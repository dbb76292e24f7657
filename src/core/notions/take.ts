import { isByLength } from './needs.ts'
import type { Notion } from './notion.ts'
import { type NotionCut, SHORTEST_END } from './plan.ts'

/** Lengths that differ by no more than this, mm, are the same one. */
const SAME = 0.01

/**
 * What is owned of the notion once pieces are cut or taken from it: an end too short for anything is not kept. null: the
 * length, or the count, is not there, because the notion has changed since the cut was planned.
 */
export function withoutCut(notion: Notion, cut: NotionCut): Notion | null {
  if (!isByLength(notion.kind)) {
    const count = notion.count - amountOf(cut)
    return count < 0 ? null : { ...notion, count }
  }
  const lengths = replaced(notion.lengths, cut.from, endsOf(cut))
  return lengths && { ...notion, lengths }
}

/**
 * What is owned when a cut is taken back: the length is whole again, as nothing was cut. Where its end has been used
 * since, the pieces come back as lengths of their own.
 */
export function withCutBack(notion: Notion, cut: NotionCut): Notion {
  if (!isByLength(notion.kind)) return { ...notion, count: notion.count + amountOf(cut) }
  const [end] = endsOf(cut)
  const whole = end === undefined ? [...notion.lengths, cut.from] : replaced(notion.lengths, end, [cut.from])
  return { ...notion, lengths: whole ?? [...notion.lengths, ...cut.takes.map(({ amount }) => amount)] }
}

function amountOf({ takes }: NotionCut): number {
  return takes.reduce((sum, { amount }) => sum + amount, 0)
}

function endsOf({ left }: NotionCut): readonly number[] {
  return left >= SHORTEST_END ? [left] : []
}

function replaced(lengths: readonly number[], one: number, by: readonly number[]): readonly number[] | null {
  const at = lengths.findIndex((length) => Math.abs(length - one) <= SAME)
  return at < 0 ? null : [...lengths.slice(0, at), ...by, ...lengths.slice(at + 1)]
}
