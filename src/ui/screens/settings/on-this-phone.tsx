import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { Button } from '../../parts/button.tsx'
import { askKept, readStorageFacts, storageFacts } from '../../state/storage-facts.ts'
import { writeBytes } from '../../words/format.ts'
import { words } from '../../words/words.ts'

/** Where everything is, how much of it, and whether the browser may clear it. */
export function OnThisPhone() {
  const refused = useSignal(false)
  useEffect(() => void readStorageFacts(), [])
  const { used, kept } = storageFacts.value
  return (
    <>
      <p>{words.settings.storageOnly}</p>
      <p role="status">
        {used !== null && `${words.settings.used(writeBytes(used))} `}
        {kept ? words.settings.kept : words.settings.notKept}
      </p>
      {!kept && (
        <Button onPress={() => void askKept().then((given) => (refused.value = !given))}>
          {words.settings.askKept}
        </Button>
      )}
      {!kept && refused.value && <p class="field-query">{words.settings.refused}</p>}
    </>
  )
}
