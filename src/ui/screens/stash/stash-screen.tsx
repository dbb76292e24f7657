import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { Button, ButtonLink } from '../../parts/button.tsx'
import { Nothing } from '../../parts/nothing.tsx'
import { Screen } from '../../parts/screen.tsx'
import { openCloth } from '../../state/cloth-state.ts'
import { hasDemo, loadDemo, removeDemo } from '../../state/demo.ts'
import { storeUnread } from '../../state/keeper.ts'
import { garments, openStash, stashOpen, unreadableGarments } from '../../state/stash-state.ts'
import { notionWords } from '../../words/en/notions.ts'
import { stashWords } from '../../words/en/stash.ts'
import { words } from '../../words/words.ts'
import { BackupNudge } from './backup-nudge.tsx'
import { StashList } from './stash-list.tsx'
import './stash.css'

/** Everything she owns to cut up. */
export function StashScreen() {
  useEffect(() => {
    void openStash()
    void openCloth()
  }, [])
  if (!stashOpen.value) return <p class="loading soft">{words.shell.loading}</p>
  const unreadable = unreadableGarments.value.length
  return (
    <Screen title={stashWords.title} foot={<Foot />}>
      <BackupNudge />
      {garments.value.length === 0 ? <Empty /> : <StashList />}
      <Demo />
      {unreadable > 0 && <p class="soft">{stashWords.unreadable(unreadable)}</p>}
    </Screen>
  )
}

function Foot() {
  return (
    <div class="foot-row">
      <ButtonLink wide to="/notions">
        {notionWords.title}
      </ButtonLink>
      <ButtonLink icon="plus" wide to="/stash/new-cloth">
        {stashWords.addCloth}
      </ButtonLink>
    </div>
  )
}

function Empty() {
  return (
    <Nothing title={stashWords.empty} how={stashWords.emptyHow} unread={storeUnread.value}>
      <ButtonLink look="main" icon="check" to="/">
        {stashWords.toCheck}
      </ButtonLink>
    </Nothing>
  )
}

/** What has come stands at the top, far from the button that brought it. */
function showFromTop(): void {
  document.querySelector<HTMLElement>('main h1')?.focus()
}

/** Things to try the app with, which come and go with one tap. */
function Demo() {
  const failed = useSignal(false)
  const load = () => {
    failed.value = false
    loadDemo().then(showFromTop, () => (failed.value = true))
  }
  if (hasDemo.value) return <Button onPress={() => void removeDemo()}>{stashWords.demoRemove}</Button>
  return (
    <section class="stack" aria-labelledby="demo-title">
      <h2 id="demo-title">{stashWords.demo}</h2>
      <p>{stashWords.demoHow}</p>
      <Button onPress={load}>{stashWords.demoLoad}</Button>
      {failed.value && (
        <p class="field-error" role="alert">
          {stashWords.demoFailed}
        </p>
      )}
    </section>
  )
}
