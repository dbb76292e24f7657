import { useRef } from 'preact/hooks'
import type { Fault } from '../../../core/base/result.ts'
import { Button } from '../../parts/button.tsx'
import { Icon } from '../../parts/icon.tsx'
import { Screen } from '../../parts/screen.tsx'
import { opened, openFile } from '../../state/opened-check.ts'
import { words } from '../../words/words.ts'
import './open-check.css'
import { OpenedCheck } from './opened-check.tsx'

/** A check that somebody shared: its panels, its pieces and its verdict, to read. */
export function OpenCheckScreen() {
  const now = opened.value
  return (
    <Screen title={words.sharing.openTitle} back="/">
      {now.state === 'none' && <p>{words.sharing.openHow}</p>}
      {now.state === 'faults' && <Faults faults={now.faults} />}
      {'problem' in now && <OpenedCheck opened={now} />}
      <FileButton first={now.state === 'none'} />
    </Screen>
  )
}

/** The browser's own way to choose a file, behind a button that looks like the others. */
function FileButton({ first }: { first: boolean }) {
  const input = useRef<HTMLInputElement>(null)
  return (
    <>
      <Button look={first ? 'main' : 'plain'} wide onPress={() => input.current?.click()}>
        {first ? words.sharing.choose : words.sharing.chooseOther}
      </Button>
      <input
        ref={input}
        type="file"
        class="unseen"
        tabIndex={-1}
        accept=".json,.txt,application/json,text/plain"
        aria-label={words.sharing.choose}
        onChange={(event) => {
          const field = event.currentTarget
          const [file] = field.files ?? []
          if (!file) return
          void openFile(file).finally(() => {
            // So that the same file, mended, can be chosen again.
            field.value = ''
          })
        }}
      />
    </>
  )
}

function Faults({ faults }: { faults: readonly Fault[] }) {
  return (
    <section class="file-faults stack" role="alert">
      <h2 class="row">
        <Icon name="cannot" />
        {words.sharing.faults}
      </h2>
      <p>{words.sharing.faultsHow}</p>
      <ul class="stack">
        {faults.map(({ field, message }) => (
          <li key={field + message}>
            {field === 'document' ? <b>{words.sharing.document}</b> : <code>{field}</code>} {message}.
          </li>
        ))}
      </ul>
    </section>
  )
}
