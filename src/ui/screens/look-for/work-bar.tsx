import { useSignal } from '@preact/signals'
import { Button } from '../../parts/button.tsx'
import { givenNow, lookForFailed, stopWork, underWay, workOut } from '../../state/look-for.ts'
import { type LookForList, missingKinds } from '../../state/look-for-list.ts'
import { lookForWords } from '../../words/en/look-for.ts'
import { writeNumber } from '../../words/format.ts'

/** How far the work is, and the way to stop it or go on. */
export function WorkBar({ list }: { list: LookForList }) {
  const stopped = useSignal(false)
  const { things, kinds } = list
  const missing = things.reduce((sum, thing) => {
    const given = givenNow(thing)
    return given === null ? sum : sum + missingKinds(thing, kinds, given).length
  }, 0)
  if (missing === 0) return null
  const running = underWay.value.size > 0
  const of = things.length * kinds.length
  return (
    <div class="look-for-work unprinted">
      <p role="status" class="grow">
        {running && lookForWords.working(writeNumber(of - missing), writeNumber(of))}
        {!running && lookForFailed.value && lookForWords.failed}
      </p>
      {running && (
        <Button
          icon="stop"
          onPress={() => {
            stopped.value = true
            stopWork()
          }}
        >
          {lookForWords.stop}
        </Button>
      )}
      {!running && (stopped.value || lookForFailed.value) && (
        <Button onPress={() => void workOut()}>{lookForWords.goOn}</Button>
      )}
    </div>
  )
}
