import { neededNotions, notionCautions } from '../../../core/notions/index.ts'
import type { Pattern } from '../../../core/patterns/index.ts'
import { Cautions } from '../../parts/notice.tsx'
import { notionWords } from '../../words/en/notions.ts'
import { isNeeded, NeedLine, PlanLists, useNotionPlan } from './needs-plan.tsx'

interface PatternNotionsProps {
  readonly pattern: Pattern
  readonly version: string
  readonly size: string
}

/** What a pattern takes of notions in a version and size, and whether it is there. */
export function PatternNotions({ pattern, version, size }: PatternNotionsProps) {
  const needed = neededNotions(pattern, version, size).filter(isNeeded)
  const { plan, colours } = useNotionPlan(needed)
  if (needed.length === 0) return null
  return (
    <section class="stack" aria-labelledby="pattern-notions">
      <h2 id="pattern-notions">{notionWords.needs}</h2>
      <ul class="stack">
        {needed.map((each) => (
          <NeedLine key={each.need.id} needed={each} size={size} colours={colours} />
        ))}
      </ul>
      <Cautions
        ids={notionCautions(
          needed.map(({ need }) => need),
          pattern.cautions,
        )}
      />
      <PlanLists plan={plan} />
    </section>
  )
}
