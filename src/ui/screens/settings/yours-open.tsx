import { useSignal } from '@preact/signals'
import { useRef } from 'preact/hooks'
import type { Backup } from '../../../readers/backup/backup.ts'
import type { BackupFault } from '../../../readers/backup/read-backup.ts'
import type { MergePreview } from '../../../storage/backup/merge.ts'
import { Button } from '../../parts/button.tsx'
import { Icon } from '../../parts/icon.tsx'
import { Sheet } from '../../parts/sheet.tsx'
import {
  contentsNow,
  isEmpty,
  mergeBackup,
  openBackup,
  openBackupFile,
  restoreBackup,
} from '../../state/yours-state.ts'
import { yours } from '../../words/en/yours.ts'
import { writeDay } from '../../words/format.ts'
import { contentsWords } from '../../words/yours-words.ts'
import { BackUpButton } from './yours-back-up.tsx'
import { MergeList } from './yours-merge-list.tsx'
import './yours.css'
import { useWork } from './yours-work.ts'

/** A backup of this device or another: what it holds, what merging it would do, and the two ways to take it. */
export function OpenBackup() {
  const now = openBackup.value
  const merging = useWork()
  return (
    <>
      {now.state === 'none' && <p>{yours.openHow}</p>}
      {now.state === 'refused' && <Refused faults={now.faults} />}
      {now.state === 'open' && (
        <Opened
          backup={now.backup}
          merge={now.merge}
          busy={merging.busy.value}
          onMerge={() =>
            merging.run(async () => {
              await mergeBackup(now.backup)
              return `${yours.done.merged} ${yours.mergeHow}`
            })
          }
        />
      )}
      <p role="status">{now.state === 'reading' ? yours.reading : merging.said.value}</p>
      <ChooseFile
        first={now.state === 'none'}
        onFile={(file) => {
          merging.said.value = ''
          return openBackupFile(file)
        }}
      />
    </>
  )
}

/** The browser's own way to choose a file, behind a button that looks like the others. */
function ChooseFile({ first, onFile }: { first: boolean; onFile: (file: File) => Promise<void> }) {
  const input = useRef<HTMLInputElement>(null)
  return (
    <>
      <Button wide onPress={() => input.current?.click()}>
        {first ? yours.choose : yours.chooseOther}
      </Button>
      <input
        ref={input}
        type="file"
        class="unseen"
        tabIndex={-1}
        accept=".zip,application/zip"
        aria-label={yours.choose}
        onChange={(event) => {
          const field = event.currentTarget
          const [file] = field.files ?? []
          if (!file) return
          void onFile(file).finally(() => {
            // So that the same file can be chosen again.
            field.value = ''
          })
        }}
      />
    </>
  )
}

function Refused({ faults }: { faults: readonly BackupFault[] }) {
  return (
    <div class="backup-refused stack" role="alert">
      <h3 class="row">
        <Icon name="cannot" />
        {yours.refused}
      </h3>
      <ul class="stack">
        {faults.map(({ field, message, record }) => (
          <li key={field + message + record?.name}>
            {record && <b>{yours.fault(yours.kinds[record.store], record.name)} </b>}
            {field === 'document' ? <b>{yours.document}</b> : <code>{field}</code>} {message}.
          </li>
        ))}
      </ul>
      <p>{yours.refusedHow}</p>
    </div>
  )
}

interface OpenedProps {
  readonly backup: Backup
  readonly merge: MergePreview
  readonly busy: boolean
  readonly onMerge: () => void
}

function Opened({ backup, merge, busy, onMerge }: OpenedProps) {
  const asking = useSignal(false)
  const held = contentsWords(backup.contents)
  return (
    <div class="stack">
      <h3>{yours.madeOn(writeDay(backup.madeAt))}</h3>
      <p>{held ? yours.holds(held) : yours.holdsNothing}</p>
      <MergeList merge={merge} file={backup.contents} />
      <Button look="main" wide disabled={busy} onPress={onMerge}>
        {yours.merge}
      </Button>
      <Button look="danger" wide disabled={busy} onPress={() => (asking.value = true)}>
        {yours.replace}
      </Button>
      {asking.value && <Replace backup={backup} onClose={() => (asking.value = false)} />}
    </div>
  )
}

/** Asks before everything is replaced, and offers a backup of it. */
function Replace({ backup, onClose }: { backup: Backup; onClose: () => void }) {
  const { busy, said, run } = useWork()
  const here = contentsNow.value
  return (
    <Sheet title={yours.replaceTitle} onClose={onClose}>
      <p>{yours.replaceHow}</p>
      {here && !isEmpty(here) && (
        <>
          <p>{yours.replacedBy(contentsWords(here))}</p>
          <BackUpButton look="plain" label={yours.backUpFirst} />
        </>
      )}
      <Button
        look="danger"
        wide
        disabled={busy.value}
        onPress={() => run(() => restoreBackup(backup).then(() => ''))}
      >
        {yours.replaceNow}
      </Button>
      <p role="status">{said.value}</p>
    </Sheet>
  )
}
