import { useEffect } from 'preact/hooks'
import { CardLink } from '../../parts/card.tsx'
import { backupFacts, backupIsDue, readFacts } from '../../state/backup-due.ts'
import { settingsWords } from '../../words/en/settings.ts'
import { writeDay } from '../../words/format.ts'

/** The way to backups, with when the last was made; a nudge when that is long ago. */
export function YoursCard() {
  useEffect(() => void readFacts(), [])
  const facts = backupFacts.value
  return (
    <>
      <CardLink to="/settings/yours" title={settingsWords.yoursOpen}>
        <span class="field-hint" role="status">
          {facts && lastBackup(facts.backedUpAt)}
        </span>
      </CardLink>
      {facts && backupIsDue(facts, Date.now()) && <p class="field-query">{settingsWords.backupDue}</p>}
    </>
  )
}

export function lastBackup(at: number | null): string {
  return at === null ? settingsWords.neverBackedUp : settingsWords.backedUp(writeDay(at))
}
