import { signal } from '@preact/signals'
import { isDemoId } from '../../core/records/demo.ts'
import { type BackupFacts, readBackupFacts } from '../../storage/backup/facts.ts'
import { theStore } from './keeper.ts'

const DAY = 86_400_000
/** So long after something was first kept, and so long after the last backup, is long ago. */
const FIRST_AFTER = 14 * DAY
const AGAIN_AFTER = 30 * DAY
/** So long a reminder that was put off keeps quiet. */
const QUIET_FOR = 7 * DAY

export const backupFacts = signal<BackupFacts | null>(null)

export async function readFacts(): Promise<void> {
  // Demo records come back at one tap.
  const counts = (id: string) => !isDemoId(id)
  backupFacts.value = await readBackupFacts(await theStore(), counts).catch(() => null)
}

/** True if there is something that was never backed up, or was changed since a backup long ago. */
export function backupIsDue({ backedUpAt, firstKeptAt, lastChangedAt }: BackupFacts, now: number): boolean {
  if (firstKeptAt === null || lastChangedAt === null) return false
  if (backedUpAt === null) return now - firstKeptAt >= FIRST_AFTER
  return lastChangedAt > backedUpAt && now - backedUpAt >= AGAIN_AFTER
}

/** True if she has put the reminder off and that still counts; a clock set back does not keep it quiet for ever. */
export function isPutOff(at: number | null, now: number): boolean {
  return at !== null && at <= now && now - at < QUIET_FOR
}
