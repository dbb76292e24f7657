import { useSignal } from '@preact/signals'
import { Button } from '../../parts/button.tsx'
import { Sheet } from '../../parts/sheet.tsx'
import { contentsNow, isEmpty, wipeEverything } from '../../state/yours-state.ts'
import { yours } from '../../words/en/yours.ts'
import { contentsWords } from '../../words/yours-words.ts'
import { BackUpButton } from './yours-back-up.tsx'
import { useWork } from './yours-work.ts'

/** Clears the device; asks twice, and offers a backup in between. */
export function ClearEverything() {
  const asked = useSignal<0 | 1 | 2>(0)
  const close = () => (asked.value = 0)
  return (
    <>
      <p>{yours.wipeHow}</p>
      <Button look="danger" icon="remove" wide onPress={() => (asked.value = 1)}>
        {yours.wipe}
      </Button>
      {asked.value === 1 && <AskOnce onClose={close} onGoOn={() => (asked.value = 2)} />}
      {asked.value === 2 && <AskAgain onClose={close} />}
    </>
  )
}

function AskOnce({ onClose, onGoOn }: { onClose: () => void; onGoOn: () => void }) {
  const here = contentsNow.value
  const list = here && !isEmpty(here) ? contentsWords(here) : ''
  return (
    <Sheet title={yours.wipeTitle} onClose={onClose}>
      <p>{list ? yours.wipeAsk(list) : yours.wipeAskNothing}</p>
      {list && <BackUpButton look="plain" label={yours.backUpFirst} />}
      <Button look="danger" wide onPress={onGoOn}>
        {yours.wipeOn}
      </Button>
    </Sheet>
  )
}

function AskAgain({ onClose }: { onClose: () => void }) {
  const { busy, said, run } = useWork()
  return (
    <Sheet title={yours.wipeTwice} onClose={onClose}>
      <p>{yours.wipeLast}</p>
      <Button
        look="danger"
        icon="remove"
        wide
        disabled={busy.value}
        onPress={() => run(() => wipeEverything().then(() => ''))}
      >
        {yours.wipeNow}
      </Button>
      <p role="status">{said.value}</p>
    </Sheet>
  )
}
