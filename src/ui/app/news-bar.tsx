import { signal } from '@preact/signals'
import { Button } from '../parts/button.tsx'
import { Notice } from '../parts/notice.tsx'
import { storeTrouble } from '../state/keeper.ts'
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
}

/** What the app itself has to say, above every screen; the most pressing first. */
export function NewsBar() {
  const trouble = storeTrouble.value ?? unwritten.value
  if (trouble !== null) return <StoreTrouble trouble={trouble} />
  if (update.value) return <Update />
  if (offline.value) return <Notice icon="offline">{words.shell.offline}</Notice>
  return null
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
