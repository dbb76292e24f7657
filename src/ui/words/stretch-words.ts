import type { Stretch } from '../../core/base/terms.ts'
import type { Pattern } from '../../core/patterns/pattern.ts'
import type { CheckAnswer } from '../../core/planning/check.ts'
import { writePercent } from './format.ts'
import { words } from './words.ts'

/** What a verdict that hangs on the stretch says of it. */
export interface StretchWords {
  readonly headline: string
  readonly detail: string
  /** For the strip. */
  readonly short: string
}

/** null: the stretch is sure, or matters to no piece. */
export function stretchDoubtWords(
  { stretch }: Pick<CheckAnswer, 'stretch'>,
  pattern: Pick<Pattern, 'pieces'> | null,
): StretchWords | null {
  if (!stretch || stretch.standing === 'sure') return null
  const { standing, needs, has } = stretch
  const texts = words.verdict.gauge
  const name = pattern?.pieces.find(({ id }) => id === stretch.piece)?.name ?? stretch.piece
  const needed = bothWays(needs, needs)
  if (standing === 'unmeasured' || has === null)
    return {
      headline: texts.unmeasured(needed),
      detail: texts.unmeasuredHint(name, needed),
      short: texts.unmeasuredShort,
    }
  const measured = bothWays(has, needs)
  return {
    headline: texts[standing],
    detail: texts.hint(name, needed, measured),
    short: texts.short(needed, measured),
  }
}

/** The figures of the ways that are asked. */
function bothWays({ across, along }: Stretch, asked: Stretch): string {
  const { across: sideways, along: upright } = words.verdict.gauge.ways
  return [
    ...(asked.across > 0 ? [sideways(writePercent(across))] : []),
    ...(asked.along > 0 ? [upright(writePercent(along))] : []),
  ].join(words.verdict.gauge.and)
}
