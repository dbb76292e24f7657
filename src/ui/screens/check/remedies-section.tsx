import { useEffect } from 'preact/hooks'
import type { Pattern } from '../../../core/patterns/pattern.ts'
import type { RemedyOutcome } from '../../../core/planning/remedies/solve-remedies.ts'
import type { AnsweredCheck } from '../../../workers/protocol.ts'
import { Button } from '../../parts/button.tsx'
import { CardButton } from '../../parts/card.tsx'
import { Icon } from '../../parts/icon.tsx'
import { hideRemedy, inVainOf, remedies, savingOf, shownRemedy, showRemedy } from '../../state/remedies.ts'
import { settings } from '../../state/settings-state.ts'
import { signOf } from '../../state/verdict.ts'
import { remedyWords } from '../../words/en/remedies.ts'
import { remediesStatus } from '../../words/remedies-status.ts'
import { remedySentence } from '../../words/remedy-words.ts'
import { words } from '../../words/words.ts'
import './remedies-section.css'
import { RemedySheet } from './remedy-sheet.tsx'
import { SIGN_ICONS } from './verdict-strip.tsx'

interface RemediesProps {
  readonly asked: AnsweredCheck
  readonly pattern: Pattern
  /** What all of it takes for granted, as it stands before a list. */
  readonly given: string | null
  /** She made one of the changes. */
  readonly onTaken: () => void
}

/** What would save a check that does not fit: each one solved before it is shown, the cheapest to her first. */
export function Remedies({ asked, pattern, given, onTaken }: RemediesProps) {
  useEffect(() => {
    void remedies.look(asked)
    return () => {
      remedies.stop()
      hideRemedy()
    }
  }, [asked.answer, asked.doubt])
  const { state, found } = remedies.outcomes.value
  const saving = savingOf(asked.answer, found)
  const inVain = inVainOf(asked.answer, found)
  return (
    <section class="stack" aria-labelledby="remedies-title">
      <h2 id="remedies-title">{remedyWords.title}</h2>
      <p role="status">{remediesStatus(state, saving.length, inVain.length)}</p>
      {given && saving.length > 0 && <p class="soft">{given}</p>}
      {saving.length > 0 && (
        <ul class="stack">
          {saving.map((outcome) => (
            <li key={outcome.rank}>
              <Row outcome={outcome} pattern={pattern} />
            </li>
          ))}
        </ul>
      )}
      {inVain.length > 0 && <InVain outcomes={inVain} pattern={pattern} />}
      {state === 'running' && (
        <Button icon="stop" onPress={remedies.stop}>
          {remedyWords.stop}
        </Button>
      )}
      {(state === 'stopped' || state === 'failed') && (
        <Button onPress={() => void remedies.look(asked)}>{remedyWords.again}</Button>
      )}
      {shownRemedy.value && <RemedySheet shown={shownRemedy.value} pattern={pattern} onTaken={onTaken} />}
    </section>
  )
}

interface RowProps {
  readonly outcome: RemedyOutcome
  readonly pattern: Pattern
}

function Row({ outcome, pattern }: RowProps) {
  const { what, cost } = remedySentence(outcome.remedy, pattern, settings.value)
  const sign = outcomeSign(outcome)
  return (
    <CardButton
      title={what}
      picture={
        <span class={`remedy-sign remedy-${sign}`}>
          <Icon name={SIGN_ICONS[sign]} size={28} />
        </span>
      }
      onPress={() => void showRemedy(outcome)}
    >
      <span class="card-text">
        <b class={`remedy-${sign}`}>{words.verdict.words[sign]}.</b> {cost}
      </span>
    </CardButton>
  )
}

/** What was tried and is no help, so that she need not wonder. */
function InVain({ outcomes, pattern }: { outcomes: readonly RemedyOutcome[]; pattern: Pattern }) {
  return (
    <details class="in-vain">
      <summary>{remedyWords.inVain(outcomes.length)}</summary>
      <ul>
        {outcomes.map((outcome) => (
          <li key={outcome.rank}>
            <Icon name={SIGN_ICONS[outcomeSign(outcome)]} size={20} />
            <span>
              {remedySentence(outcome.remedy, pattern, settings.value).what}:{' '}
              {words.verdict.words[outcomeSign(outcome)].toLowerCase()}
            </span>
          </li>
        ))}
      </ul>
    </details>
  )
}

function outcomeSign({ remedy, answer }: RemedyOutcome) {
  return signOf(answer, remedy.question.garment, settings.value.tapeDoubt)
}
