import { useEffect } from 'preact/hooks'
import { Button, ButtonLink } from '../../parts/button.tsx'
import { backupFacts, backupIsDue, isPutOff, readFacts } from '../../state/backup-due.ts'
import { changeSettings, settings } from '../../state/settings-state.ts'
import { stashWords } from '../../words/en/stash.ts'
import { writeDay } from '../../words/format.ts'

const texts = stashWords.backup

/** A quiet line when much is not in any backup; it can be put off. */
export function BackupNudge() {
  const isQuiet = isPutOff(settings.value.backupPutOffAt, Date.now())
  useEffect(() => {
    if (!isQuiet) void readFacts()
  }, [isQuiet])
  const facts = backupFacts.value
  if (isQuiet || !facts || !backupIsDue(facts, Date.now())) return null
  return (
    <div class="backup-nudge">
      <p class="grow">
        {facts.backedUpAt === null ? texts.never : texts.longAgo(writeDay(facts.backedUpAt))}
      </p>
      <ButtonLink look="quiet" to="/settings/yours">
        {texts.toBackup}
      </ButtonLink>
      <Button look="quiet" onPress={() => changeSettings({ backupPutOffAt: Date.now() })}>
        {texts.putOff}
      </Button>
    </div>
  )
}
