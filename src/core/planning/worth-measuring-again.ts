import type { MeasureOutcome } from './binding-measures.ts'

/** The measures that bind: in front those that leave no lay, or that bring spare with it; else in the order they are asked. */
export function worthMeasuringAgain(outcomes: readonly MeasureOutcome[]): readonly MeasureOutcome[] {
  const left = ({ verdict, spare }: MeasureOutcome) => (verdict === 'fits' ? (spare ?? 0) : -1)
  return outcomes
    .filter(({ binds }) => binds)
    .sort((a, b) => (a.by < 0 ? left(a) - left(b) : left(b) - left(a)))
}
