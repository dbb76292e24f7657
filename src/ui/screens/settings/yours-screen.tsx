import { useEffect } from 'preact/hooks'
import { useParams } from 'wouter-preact'
import { settingsWords } from '../../words/en/settings.ts'
import '../../parts/field.css'
import { Screen } from '../../parts/screen.tsx'
import { backupFacts, backupIsDue } from '../../state/backup-due.ts'
import { storageFacts } from '../../state/storage-facts.ts'
import { readContentsNow } from '../../state/yours-state.ts'
import { yours } from '../../words/en/yours.ts'
import { writeBytes } from '../../words/format.ts'
import { Section } from './section.tsx'
import { BackUpButton } from './yours-back-up.tsx'
import { lastBackup } from './yours-card.tsx'
import { OpenBackup } from './yours-open.tsx'
import { SpreadsheetTable } from './yours-table.tsx'
import { ClearEverything } from './yours-wipe.tsx'

/** Everything she keeps, in her own hands: backups, another device's file, a table, and clearing it all. */
export function YoursScreen() {
  const { done } = useParams()
  useEffect(() => void readContentsNow(), [])
  const facts = backupFacts.value
  const { used, left } = storageFacts.value
  return (
    <Screen title={yours.title} back="/settings">
      {(done === 'restored' || done === 'wiped') && <p role="status">{yours.done[done]}</p>}
      <Section title={yours.backUp}>
        <p>{yours.intro}</p>
        {facts && <p class="field-hint">{lastBackup(facts.backedUpAt)}</p>}
        {facts && backupIsDue(facts, Date.now()) && <p class="field-query">{settingsWords.backupDue}</p>}
        <BackUpButton />
        {used !== null && left !== null && (
          <p class="field-hint">{yours.room(writeBytes(used), writeBytes(left))}</p>
        )}
      </Section>
      <Section title={yours.open}>
        <OpenBackup />
      </Section>
      <Section title={yours.table}>
        <SpreadsheetTable />
      </Section>
      <Section title={yours.wipe}>
        <ClearEverything />
      </Section>
    </Screen>
  )
}
