import { signal } from '@preact/signals'
import { Button, IconButton } from '../parts/button.tsx'
import { Notice } from '../parts/notice.tsx'
import { storeTrouble } from '../state/keeper.ts'
import { keptJustNow, keptOffline } from '../state/kept-offline.ts'
import { unwritten } from '../state/unwritten.ts'
import { words } from '../words/words.ts'
import { applyUpdate, onUpdateReady } from './offline.ts'
import { StoreTrouble } from './store-trouble.tsx'

const offline = signal(!navigator.onLine)
const update = signal(false)

/** Begins to listen for what the bar may have to say. */
export function followNews(): void {
  addEventListener('online', () => {
    offline.value = false
  })
  addEventListener('offline', () => {
    offline.value = true
  })
  onUpdateReady(() => {
    update.value = true
  })
  // Once she goes on she has seen it.
  addEventListener('hashchange', keptIsSaid)
}

/** What the app itself has to say, above every screen; the most pressing first. */
export function NewsBar() {
  const trouble = storeTrouble.value ?? unwritten.value
  if (trouble !== null) return <StoreTrouble trouble={trouble} />
  if (update.value) return <Update />
  if (offline.value && keptOffline.value !== null) return <Offline kept={keptOffline.value} />
  if (keptJustNow.value) return <Kept />
  return null
}

function Offline({ kept }: { kept: boolean }) {
  return <Notice icon="offline">{kept ? words.shell.offline : words.shell.offlineInPart}</Notice>
}

function keptIsSaid(): void {
  keptJustNow.value = false
}

function Kept() {
  return (
    <Notice
      icon="tick"
      actions={<IconButton icon="close" label={words.shell.putAway} onPress={keptIsSaid} />}
    >
      {words.shell.kept}
    </Notice>
  )
}

function Update() {
  return (
    <Notice
      icon="plus"
      actions={
        <>
          <Button look="quiet" onPress={() => (update.value = false)}>
            {words.shell.later}
          </Button>
          <Button onPress={applyUpdate}>{words.shell.updateNow}</Button>
        </>
      }
    >
      {words.shell.update}
    </Notice>
  )
}
