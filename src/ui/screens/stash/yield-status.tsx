import { useSignal } from '@preact/signals'
import type { Garment } from '../../../core/garments/index.ts'
import type { ThreeWays } from '../../../core/planning/donors/three-ways.ts'
import { Button } from '../../parts/button.tsx'
import { LongList } from '../../parts/long-list.tsx'
import { lookOn, stopLooking } from '../../state/follow-yields.ts'
import { patternById } from '../../state/patterns-state.ts'
import { foundGarments } from '../../state/stash-view.ts'
import { lookState, yieldAsk } from '../../state/stash-yield.ts'
import { stashWords } from '../../words/en/stash.ts'
import { writeNumber } from '../../words/format.ts'
import { words } from '../../words/words.ts'
import { askedInWords } from '../../words/yield-words.ts'
import { garmentCard } from './garment-card.tsx'

const texts = stashWords.wouldYield

/** What the garments are to yield. */
export function Asked() {
  const ask = yieldAsk.value
  const pattern = patternById(ask?.pattern ?? null)
  return ask && pattern && <p>{askedInWords(pattern, ask)}</p>
}

/** How far the looking is, and what is known: every garment is counted somewhere. */
export function YieldStatus({ parts }: { parts: ThreeWays<Garment> }) {
  const { yields, cannot, waiting } = parts
  const state = lookState.value
  const isLooking = state === 'running' || state === 'waiting'
  const [count, of] = [writeNumber(yields.length), writeNumber(foundGarments.value.length)]
  return (
    <>
      <p class="soft" role="status">
        {isLooking ? texts.soFar(count, of) : texts.over(count, of)}{' '}
        {waiting.length > 0 && `${texts.waiting(waiting.length)} `}
        {cannot.length > 0 && `${texts.cannot(cannot.length)} `}
        {state === 'stopped' && texts.stopped}
        {state === 'failed' && texts.failed}
      </p>
      {isLooking && (
        <Button icon="stop" onPress={stopLooking}>
          {words.verdict.stop}
        </Button>
      )}
      {(state === 'stopped' || state === 'failed') && <Button onPress={lookOn}>{texts.lookOn}</Button>}
    </>
  )
}

/** Garments that were not found to yield it, apart from those that do: that none was found is no proof. */
export function OpenGarments({ garments }: { garments: readonly Garment[] }) {
  const isShown = useSignal(false)
  if (garments.length === 0) return null
  return (
    <details class="stack" onToggle={({ currentTarget }) => (isShown.value = currentTarget.open)}>
      <summary>{texts.open(garments.length)}</summary>
      <p class="soft">{texts.openHow}</p>
      {isShown.value && <LongList items={garments} keyOf={({ id }) => id} draw={garmentCard} />}
    </details>
  )
}
