import { changedRecord, movedRecord } from '../core/records/units.ts'
import type { Store } from './open-store.ts'
import type { Kept, RecordStore, Records, Removed, StoredPicture, StoreName } from './schema.ts'
import { type Transaction, transact } from './transact.ts'

/** Stores with an index of what belongs to a garment. */
export type GarmentIndexed = 'reservations' | 'cuts' | 'offcuts'
/** Stores with an index of what belongs to a project. */
export type ProjectIndexed = 'reservations' | 'cuts'

/**
 * Reads and writes records of these stores, all or nothing; every removal is noted in the same transaction. `work` may
 * await the writing's functions and nothing else.
 */
export async function writeRecords<T>(
  store: Store<unknown>,
  names: readonly (RecordStore | 'pictures' | 'drafts')[],
  work: (writing: RecordWriting) => Promise<T>,
): Promise<T> {
  let given: T | undefined
  await transact<StoreName>(store, [...names, 'removed'], async (transaction) => {
    given = await work(new RecordWriting(transaction, store))
  })
  return given as T
}

/** Records in a transaction. What is read has passed its gate; what has not is as if it were not there, and stays. */
export class RecordWriting {
  readonly transaction: Transaction<StoreName>
  #now: number
  readonly #gates: Store<unknown>['gates']

  constructor(transaction: Transaction<StoreName>, store: Store<unknown>) {
    this.transaction = transaction
    this.#now = store.now()
    this.#gates = store.gates
  }

  /** The time of the last change made here, or of the next if none was. */
  get now(): number {
    return this.#now
  }

  async get<Name extends RecordStore>(name: Name, id: string): Promise<Records[Name] | null> {
    const [value] = this.#read(name, [await this.kept(name, id)])
    return value ?? null
  }

  async ofGarment<Name extends GarmentIndexed>(name: Name, garment: string): Promise<Records[Name][]> {
    return this.#read(name, await this.keptOfGarment(name, garment))
  }

  async ofProject<Name extends ProjectIndexed>(name: Name, project: string): Promise<Records[Name][]> {
    return this.#read(name, await this.keptOfProject(name, project))
  }

  /** As it is stored, whether it can be read or not; null: there is none. */
  async kept<Name extends RecordStore>(name: Name, id: string): Promise<Kept<Records[Name]> | null> {
    return ((await this.transaction.objectStore(name).get(id)) as Kept<Records[Name]> | undefined) ?? null
  }

  async keptOfGarment<Name extends GarmentIndexed>(
    name: Name,
    garment: string,
  ): Promise<Kept<Records[Name]>[]> {
    const index = this.transaction.objectStore(name as GarmentIndexed).index('garment')
    return (await index.getAll(garment)) as unknown as Kept<Records[Name]>[]
  }

  async keptOfProject<Name extends ProjectIndexed>(
    name: Name,
    project: string,
  ): Promise<Kept<Records[Name]>[]> {
    const index = this.transaction.objectStore(name as ProjectIndexed).index('project')
    return (await index.getAll(project)) as unknown as Kept<Records[Name]>[]
  }

  /** Writes over the record of the same id, whose time of keeping the value takes over. A removed one is back. */
  async put<Name extends RecordStore>(name: Name, value: Records[Name]): Promise<void> {
    const before = await this.kept(name, value.id)
    await this.#write(name, changedRecord(name, before, value, await this.#stamp(name, value.id, before)))
  }

  /** Puts a removed record back as it was: its fields were changed when they were. */
  async putBack(name: RecordStore, record: Kept<Records[RecordStore]>): Promise<void> {
    const at = await this.#stamp(name, record.id, record)
    await this.#write(name, movedRecord(name, record, at))
  }

  async #write(name: RecordStore, record: Kept<unknown>): Promise<void> {
    await this.transaction.objectStore(name).put(record as never)
    await this.transaction.objectStore('removed').delete([name, record.id])
  }

  /**
   * The time of a change made now: later than whatever was said of the record before, be the clock behind. Another device
   * would hold the older word for the later one and undo the change. Later ones of a transaction are not before earlier.
   */
  async #stamp(name: RecordStore, id: string, before: Kept<unknown> | null): Promise<number> {
    const removed = (await this.transaction.objectStore('removed').get([name, id])) as Removed | undefined
    // A record that cannot be read may say anything where its time should be.
    const said = [before?.changedAt, removed?.removedAt].map((at) =>
      Number.isFinite(at) ? Number(at) + 1 : 0,
    )
    this.#now = Math.max(this.#now, ...said)
    return this.#now
  }

  /** Removes the record, if there is one, and gives what it was. */
  async remove<Name extends RecordStore>(name: Name, id: string): Promise<Kept<Records[Name]> | null> {
    const before = await this.kept(name, id)
    if (!before) return null
    const removedAt = await this.#stamp(name, id, before)
    await this.transaction.objectStore(name).delete(id)
    await this.transaction.objectStore('removed').put({ store: name, id, removedAt })
    return before
  }

  async picture(id: string): Promise<StoredPicture | null> {
    return (await this.transaction.objectStore('pictures').get(id)) ?? null
  }

  #read<Name extends RecordStore>(
    name: Name,
    stored: readonly (Kept<Records[Name]> | null)[],
  ): Records[Name][] {
    return stored.flatMap((one): Records[Name][] => {
      const read = one && this.#gates[name](one.value)
      return read?.ok ? [read.value as Records[Name]] : []
    })
  }
}
