import type { Pattern } from '../../../core/patterns/pattern.ts'
import { Button } from '../../parts/button.tsx'
import { Icon } from '../../parts/icon.tsx'
import { Sheet } from '../../parts/sheet.tsx'
import { draft } from '../../state/check-state.ts'
import { hideRemedy, type ShownRemedy, takeRemedy } from '../../state/remedies.ts'
import { changeFor } from '../../state/remedy-change.ts'
import { settings } from '../../state/settings-state.ts'
import { signOf } from '../../state/verdict.ts'
import { remedyWords } from '../../words/en/remedies.ts'
import { remedySentence } from '../../words/remedy-words.ts'
import { spareWords } from '../../words/verdict-words.ts'
import { words } from '../../words/words.ts'
import { LaySection } from './lay-section.tsx'
import { SIGN_ICONS } from './verdict-strip.tsx'

interface RemedySheetProps {
  readonly shown: ShownRemedy
  readonly pattern: Pattern
  readonly onTaken: () => void
}

/** The lay of one remedy, and the change made in the check where the check can hold it. */
export function RemedySheet({ shown, pattern, onTaken }: RemedySheetProps) {
  const { remedy } = shown.outcome
  const { what, cost } = remedySentence(remedy, pattern, settings.value)
  const change = changeFor(draft.value, remedy)
  const take = () => {
    hideRemedy()
    if (change) takeRemedy(change, remedyWords.taken)
    onTaken()
  }
  return (
    <Sheet title={what} onClose={hideRemedy}>
      <Sentence shown={shown} />
      <p>{cost}</p>
      <LaySection answer={shown.answer} pattern={remedy.question.pattern} />
      {change && (
        <div class="remedy-take">
          <Button look="main" wide onPress={take}>
            {words.check.useThis}
          </Button>
        </div>
      )}
    </Sheet>
  )
}

/** That it fits is known; how much is to spare is still being worked out at first. */
function Sentence({ shown: { garment, answer, looking } }: { shown: ShownRemedy }) {
  const { lay } = answer
  const sign = signOf(answer, garment, settings.value.tapeDoubt)
  const spare =
    spareWords(lay, settings.value) ?? (looking ? words.verdict.looking : words.verdict.roomOpenShort)
  return (
    <div class={`verdict verdict-${sign}`}>
      <div class="verdict-line" role="status">
        <Icon name={SIGN_ICONS[sign]} size={32} />
        <div class="grow">
          <p class="verdict-headline">{words.verdict.words[sign]}</p>
          <p class="verdict-detail">{spare}</p>
        </div>
      </div>
    </div>
  )
}
