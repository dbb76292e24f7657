import { useSignal } from '@preact/signals'
import type { Pattern } from '../../../core/patterns/index.ts'
import type { CheckAnswer } from '../../../core/planning/check.ts'
import { Button } from '../../parts/button.tsx'
import { fileName, type HandedOver, handOver } from '../../state/hand-over.ts'
import { problemText } from '../../state/shared-check.ts'
import { words } from '../../words/words.ts'
import '../../parts/field.css'

interface ShareButtonProps {
  readonly title: string
  readonly answer: CheckAnswer
  readonly pattern: Pattern
}

/** Hands the check over as a file that this app opens on any phone. */
export function ShareButton({ title, answer, pattern }: ShareButtonProps) {
  const went = useSignal<HandedOver | 'failed' | null>(null)
  const share = () => {
    const nameOf = (id: string) => pattern.pieces.find((piece) => piece.id === id)?.name ?? id
    const text = problemText(answer.problem, nameOf, title)
    handOver({ name: fileName(title, words.sharing.fileName), text }).then(
      (how) => (went.value = how),
      () => (went.value = 'failed'),
    )
  }
  return (
    <div class="stack">
      <Button icon="share" onPress={share}>
        {words.sharing.share}
      </Button>
      <p class="field-hint" role="status">
        {went.value === 'downloaded'
          ? words.sharing.shared
          : went.value === 'failed'
            ? words.sharing.failed
            : words.sharing.shareHint}
      </p>
    </div>
  )
}
