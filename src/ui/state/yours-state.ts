import { signal } from '@preact/signals'
import { type Contents, RECORD_STORES } from '../../core/records/index.ts'
import type { Backup } from '../../readers/backup/backup.ts'
import type { BackupFault } from '../../readers/backup/read-backup.ts'
import { writeBackup } from '../../readers/backup/write-backup.ts'
import { type DecimalSign, writeCsv } from '../../readers/csv/write-csv.ts'
import { knownDevice, rememberBackup } from '../../storage/backup/device.ts'
import { type MergePreview, mergeIn, previewMerge } from '../../storage/backup/merge.ts'
import { readEverything } from '../../storage/backup/read-everything.ts'
import { restore, wipe } from '../../storage/backup/restore.ts'
import { StorageFull } from '../../storage/errors.ts'
import { openBackup as openInWorker } from '../../workers/open-backup.ts'
import { yours } from '../words/en/yours.ts'
import { readFacts } from './backup-due.ts'
import { type HandedOver, handOverFile } from './hand-over.ts'
import { theStore } from './keeper.ts'
import { newId } from './new-id.ts'
import { settings } from './settings-state.ts'
import { stashTable } from './stash-table.ts'
import { readStorageFacts } from './storage-facts.ts'

/** The file she chose, and what would come of it. */
export type OpenBackup =
  | { readonly state: 'none' | 'reading' }
  | { readonly state: 'refused'; readonly faults: readonly BackupFault[] }
  | { readonly state: 'open'; readonly backup: Backup; readonly merge: MergePreview }

export const openBackup = signal<OpenBackup>({ state: 'none' })

/** What is stored now; null until it is read. */
export const contentsNow = signal<Contents | null>(null)

export async function readContentsNow(): Promise<void> {
  contentsNow.value = (await readEverything(await theStore())).contents
  await Promise.all([readFacts(), readStorageFacts()])
}

export function isEmpty({ records, unread }: Contents): boolean {
  return unread.length === 0 && RECORD_STORES.every((name) => records[name].length === 0)
}

/** Makes a backup of everything and hands it over. */
export async function backUp(): Promise<HandedOver> {
  const store = await theStore()
  const { id, common } = await knownDevice(store, newId)
  const everything = await readEverything(store)
  const madeAt = Date.now()
  const zip = await writeBackup({ ...everything, device: id, madeAt, common })
  const name = `${yours.fileName}-${dayStamp(madeAt)}.zip`
  const how = await handOverFile(new File([zip], name, { type: 'application/zip' }))
  if (how !== 'left') await rememberBackup(store, everything.contents, madeAt)
  await readContentsNow()
  return how
}

let reading = new AbortController()

/** Reads a file and works out what merging it would do; nothing is changed. Another file that is still being read is let go. */
export async function openBackupFile(file: Blob): Promise<void> {
  reading.abort()
  reading = new AbortController()
  const { signal } = reading
  openBackup.value = { state: 'reading' }
  const opened = await opening(file, signal)
  if (!signal.aborted) openBackup.value = opened
}

async function opening(file: Blob, signal: AbortSignal): Promise<OpenBackup> {
  const reply = await openInWorker(file, signal).catch(() => null)
  if (reply === null) return refused(yours.tooMuch)
  if (reply.type === 'no-bytes') return refused(yours.unread)
  if (!reply.reading.ok) return { state: 'refused', faults: reply.reading.faults }
  const backup = reply.reading.value
  try {
    return { state: 'open', backup, merge: await previewMerge(await theStore(), backup) }
  } catch {
    return refused(yours.incomparable)
  }
}

function refused(message: string): OpenBackup {
  return { state: 'refused', faults: [{ field: 'document', message }] }
}

export async function mergeBackup(backup: Backup): Promise<void> {
  await mergeIn(await theStore(), backup, newId)
  openBackup.value = { state: 'none' }
  await readContentsNow()
}

export async function restoreBackup(backup: Backup): Promise<void> {
  await restore(await theStore(), backup, newId)
  startAgain('restored')
}

export async function wipeEverything(): Promise<void> {
  await wipe(await theStore())
  startAgain('wiped')
}

/** What the page holds in memory is of before: it starts again from what is stored, and says what was done. */
function startAgain(done: 'restored' | 'wiped'): void {
  location.hash = `/settings/yours/${done}`
  location.reload()
}

export async function saveTable(sign: DecimalSign): Promise<HandedOver> {
  const { contents } = await readEverything(await theStore())
  const csv = writeCsv(stashTable(contents, settings.value), sign)
  const name = `${yours.tableName}-${dayStamp(Date.now())}.csv`
  return handOverFile(new File([csv], name, { type: 'text/csv' }))
}

/** What to say of work that failed. */
export function failureText(error: unknown): string {
  return error instanceof StorageFull ? yours.full : yours.failed
}

/** 2026-11-25 in her own time zone. */
function dayStamp(ms: number): string {
  const date = new Date(ms)
  const two = (n: number) => String(n).padStart(2, '0')
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`
}
