import type { Lay } from '../../core/planning/lay.ts'

/** How long a set of questions took, and what came of them. */
export interface AnswerFigure {
  readonly questions: number
  /** Milliseconds. */
  readonly median: number
  readonly p95: number
  readonly verdicts: Readonly<Record<Lay['verdict'], number>>
  /** Of all answers that are no lay, the share that is proved, per cent; null if there is none. */
  readonly proved: number | null
}

export interface Answered {
  readonly verdict: Lay['verdict']
  readonly ms: number
}

export function answerFigure(answers: readonly Answered[]): AnswerFigure {
  const count = (verdict: Lay['verdict']) => answers.filter((answer) => answer.verdict === verdict).length
  const verdicts = { fits: count('fits'), cannot: count('cannot'), 'not-found': count('not-found') }
  const refused = verdicts.cannot + verdicts['not-found']
  const times = answers.map(({ ms }) => ms)
  return {
    questions: answers.length,
    median: quantile(times, 0.5),
    p95: quantile(times, 0.95),
    verdicts,
    proved: refused === 0 ? null : (100 * verdicts.cannot) / refused,
  }
}

/** The value below which this share of the numbers lies; 0 of none. */
export function quantile(numbers: readonly number[], share: number): number {
  const sorted = [...numbers].sort((a, b) => a - b)
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0
}

export function answerRow(name: string, figure: AnswerFigure): string {
  const { questions, median, p95, verdicts, proved } = figure
  const told = Object.entries(verdicts).map(
    ([verdict, count]) => `${verdict} ${((100 * count) / questions).toFixed(0)} %`,
  )
  const no = proved === null ? '' : `; of what does not fit, ${proved.toFixed(0)} % proved`
  return `${name}: ${questions} checks, median ${median.toFixed(0)} ms, 95th per cent ${p95.toFixed(0)} ms; ${told.join(', ')}${no}`
}
