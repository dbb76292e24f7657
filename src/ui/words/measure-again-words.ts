import type { MeasureOutcome } from '../../core/planning/binding-measures.ts'
import { measureAgainWords } from './en/measure-again.ts'
import { type Units, writeSmall } from './format.ts'

const texts = measureAgainWords

/** What hangs on a measure that binds. */
export function bindingWords({ by, verdict }: MeasureOutcome, units: Units): string {
  const off = writeSmall(Math.abs(by), units, 'nearest')
  if (by > 0) return texts.saved(off)
  if (verdict === 'fits') return texts.scant(off)
  return verdict === 'not-found' ? texts.notFound(off) : texts.lost(off)
}
