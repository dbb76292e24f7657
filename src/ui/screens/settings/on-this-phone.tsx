import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { Button } from '../../parts/button.tsx'
import { keptOffline } from '../../state/kept-offline.ts'
import { askKept, readStorageFacts, storageFacts } from '../../state/storage-facts.ts'
import { settingsWords } from '../../words/en/settings.ts'
import { writeBytes } from '../../words/format.ts'

/** Where everything is, how much of it, and whether the browser may clear it. */
export function OnThisPhone() {
  const refused = useSignal(false)
  useEffect(() => void readStorageFacts(), [])
  const { used, left, kept } = storageFacts.value
  return (
    <>
      <p>{settingsWords.storageOnly}</p>
      {keptOffline.value !== null && (
        <p role="status">{keptOffline.value ? settingsWords.works : settingsWords.worksNotYet}</p>
      )}
      <p role="status">
        {used !== null && `${roomWords(used, left)} `}
        {kept ? settingsWords.kept : settingsWords.notKept}
      </p>
      {!kept && (
        <Button onPress={() => void askKept().then((given) => (refused.value = !given))}>
          {settingsWords.askKept}
        </Button>
      )}
      {!kept && refused.value && <p class="field-query">{settingsWords.refused}</p>}
    </>
  )
}

function roomWords(used: number, left: number | null): string {
  return left === null
    ? settingsWords.used(writeBytes(used))
    : settingsWords.room(writeBytes(used), writeBytes(left))
}
