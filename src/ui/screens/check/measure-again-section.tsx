import { useEffect } from 'preact/hooks'
import { worthMeasuringAgain } from '../../../core/planning/worth-measuring-again.ts'
import type { AnsweredCheck } from '../../../workers/protocol.ts'
import { CardLink } from '../../parts/card.tsx'
import { Icon } from '../../parts/icon.tsx'
import { askedMeasures } from '../../state/check-draft.ts'
import { draft, kind } from '../../state/check-state.ts'
import { bindingMeasures } from '../../state/measure-again.ts'
import { settings } from '../../state/settings-state.ts'
import { measureAgainWords } from '../../words/en/measure-again.ts'
import { bindingWords } from '../../words/measure-again-words.ts'
import { words } from '../../words/words.ts'

const texts = measureAgainWords

interface MeasureAgainProps {
  readonly asked: AnsweredCheck
  /** What all of it takes for granted, as it stands before a list. */
  readonly given: string | null
}

/** The measures that a scant lay hangs on, or a single one that would bring a lay; each leads to its field. */
export function MeasureAgain({ asked, given }: MeasureAgainProps) {
  useEffect(() => {
    void bindingMeasures.look(asked)
    return bindingMeasures.stop
  }, [asked.answer, asked.doubt])
  const { state, found } = bindingMeasures.outcomes.value
  const binding = worthMeasuringAgain(found)
  const fits = asked.answer.lay.verdict === 'fits'
  const measures = kind.value ? askedMeasures(draft.value, kind.value).length : 0
  if (measures === 0 || (binding.length === 0 && (!fits || state === 'failed'))) return null
  return (
    <section class="stack" aria-labelledby="measure-again-title">
      <h2 id="measure-again-title">{fits ? texts.title : texts.titleNear}</h2>
      {binding.length > 0 && <p class="soft">{fits ? texts.hint : texts.hintNear}</p>}
      {given && binding.length > 0 && <p class="soft">{given}</p>}
      <ul class="stack">
        {binding.map((outcome) => (
          <li key={outcome.measure}>
            <CardLink
              to={`/check/measures/${outcome.measure}`}
              title={words.garments.measures[outcome.measure]?.name ?? outcome.measure}
              picture={<Icon name="measure" size={28} />}
            >
              <span class="card-text">{bindingWords(outcome, settings.value)}</span>
            </CardLink>
          </li>
        ))}
      </ul>
      {fits && state === 'running' && <p role="status">{texts.looking}</p>}
      {fits && binding.length === 0 && found.length === measures && <p>{texts.none}</p>}
    </section>
  )
}
