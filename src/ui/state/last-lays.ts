import type { CheckAnswer, CheckQuestion } from '../../core/planning/check.ts'
import type { LayPlacement } from '../../core/planning/lay.ts'

/** Enough for a pattern's whole table. */
const KEPT = 60

interface LastLay {
  readonly placements: readonly LayPlacement[]
  readonly fits: boolean
}

const lays = new Map<string, LastLay>()

/** Where the search for an answer may begin: the last lay of the same kind of garment, size and version, whatever measures and flaws it had. */
export function lastLay(question: CheckQuestion): readonly LayPlacement[] | undefined {
  return lays.get(likeness(question))?.placements
}

/** Keeps the answer's lay; one with copies left out only as long as there is no whole one. */
export function keepLay(question: CheckQuestion, { lay: { verdict, placements } }: CheckAnswer): void {
  const key = likeness(question)
  const fits = verdict === 'fits'
  if (placements.length === 0 || (!fits && lays.get(key)?.fits)) return
  lays.delete(key)
  if (lays.size >= KEPT) lays.delete(lays.keys().next().value as string)
  lays.set(key, { placements, fits })
}

function likeness({ pattern, version, size, garment }: CheckQuestion): string {
  return JSON.stringify([pattern.id, version, size, garment.kind])
}
