import type { IDBPDatabase, IDBPTransaction } from 'idb'

/**
 * Brings the database from the version before to its own. Untyped on purpose: `Schema` is the newest version,
 * and an upgrade works on an old one. It may await requests of the transaction and nothing else.
 */
export type Upgrade = (
  database: IDBPDatabase<unknown>,
  transaction: IDBPTransaction<unknown, string[], 'versionchange'>,
) => void | Promise<void>
