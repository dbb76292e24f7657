import { RECORD_STORES } from '../../core/records/record.ts'
import { orStorageError } from '../errors.ts'
import type { Store } from '../open-store.ts'
import { type Kept, type StoreName, THIS_DEVICE } from '../schema.ts'

/** What a reminder of backing up goes by. Times are ms since 1970. */
export interface BackupFacts {
  /** null: never. */
  readonly backedUpAt: number | null
  /** When the oldest record was kept and the last was changed; null: there is none. */
  readonly firstKeptAt: number | null
  readonly lastChangedAt: number | null
}

const STORES = [...RECORD_STORES, 'device'] as const satisfies StoreName[]

/** Records that come with the app count for nothing. */
export async function readBackupFacts(
  { database }: Store<unknown>,
  counts: (id: string) => boolean,
): Promise<BackupFacts> {
  const transaction = database.transaction([...STORES])
  const reading = Promise.all([
    transaction.objectStore('device').get(THIS_DEVICE),
    ...RECORD_STORES.map((name) => transaction.objectStore(name).getAll() as Promise<Kept<unknown>[]>),
  ])
  const [device, ...shelves] = await orStorageError(reading)
  const own = shelves.flat().filter(({ id }) => counts(id))
  return {
    backedUpAt: device?.backedUpAt ?? null,
    firstKeptAt: own.length === 0 ? null : Math.min(...own.map(({ keptAt }) => keptAt)),
    lastChangedAt: own.length === 0 ? null : Math.max(...own.map(({ changedAt }) => changedAt)),
  }
}
