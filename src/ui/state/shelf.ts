import { type Signal, signal } from '@preact/signals'
import { onStoreChange, type Store } from '../../storage/open-store.ts'
import type { Reading, Unreadable } from '../../storage/reading.ts'
import type { Kept, StoreName } from '../../storage/schema.ts'
import { askToKeep } from './ask-to-keep.ts'
import { holdUnwritten } from './unwritten.ts'

type AnyStore = Store<unknown>

/** The functions of one store of many records. */
export interface ShelfStore<T> {
  readonly name: StoreName
  readonly read: (store: AnyStore) => Promise<Reading<Kept<T>>>
  readonly put: (store: AnyStore, value: T) => Promise<void>
  readonly remove: (store: AnyStore, id: string) => Promise<unknown>
}

/**
 * One store's records as a signal. A change shows at once and is written in turn; of several changes to one record
 * that wait for the disk only the last is written. What another tab changes appears here too.
 */
export class Shelf<T extends { readonly id: string }> {
  /** The last kept first. */
  readonly records: Signal<readonly T[]> = signal([])
  /** Records that do not pass their gate; they stay stored. */
  readonly unreadable: Signal<readonly Unreadable[]> = signal([])
  readonly #functions: ShelfStore<T>
  /** null: to be removed. */
  readonly #waiting = new Map<string, T | null>()
  #store: AnyStore | null = null
  #trouble: Signal<unknown> = signal(null)
  #writing = false
  #reads = 0
  #written: Promise<void> = Promise.resolve()
  readonly #tryAgain = () => {
    if (!this.#writing) this.#written = this.#writeAll()
  }

  constructor(functions: ShelfStore<T>) {
    this.#functions = functions
  }

  /** Reads what is stored and follows its changes. What the device refuses stands in `trouble`. */
  async follow(store: AnyStore, trouble: Signal<unknown>): Promise<void> {
    if (this.#store) return
    this.#store = store
    this.#trouble = trouble
    onStoreChange(store, (names) => {
      if (names.includes(this.#functions.name)) void this.#read()
    })
    // What was put before the store was open is written now; the end of that writing reads.
    await (this.#waiting.size > 0 ? this.#writeAll() : this.#read())
  }

  /** Keeps the value, over the one of the same id if there is one. */
  put(value: T): void {
    const known = this.records.value.some(({ id }) => id === value.id)
    this.records.value = known
      ? this.records.value.map((each) => (each.id === value.id ? value : each))
      : [value, ...this.records.value]
    this.#write(value.id, value)
  }

  remove(id: string): void {
    this.records.value = this.records.value.filter((each) => each.id !== id)
    this.#write(id, null)
  }

  /** Resolves when nothing more is being written. */
  written(): Promise<void> {
    return this.#written
  }

  #write(id: string, value: T | null): void {
    this.#waiting.set(id, value)
    this.#tryAgain()
  }

  async #writeAll(): Promise<void> {
    const store = this.#store
    if (!store) return
    this.#writing = true
    let refused: unknown = null
    while (this.#waiting.size > 0 && refused === null) {
      const [id, value] = this.#waiting.entries().next().value as [string, T | null]
      this.#waiting.delete(id)
      try {
        await (value === null ? this.#functions.remove(store, id) : this.#functions.put(store, value))
        if (value !== null) askToKeep(id)
      } catch (error) {
        refused = error
        // Tried again with the next change or when she asks, unless this very record has changed since.
        if (!this.#waiting.has(id)) this.#waiting.set(id, value)
      }
    }
    this.#writing = false
    this.#trouble.value = refused
    holdUnwritten(this.#tryAgain, refused)
    await this.#read()
  }

  /** What waits to be written is newer than what is stored, so nothing is read over it; the end of that writing reads. */
  async #read(): Promise<void> {
    const isBusy = () => this.#writing || this.#waiting.size > 0
    if (!this.#store || isBusy()) return
    this.#reads += 1
    const turn = this.#reads
    let reading: Reading<Kept<T>>
    try {
      reading = await this.#functions.read(this.#store)
    } catch (error) {
      this.#trouble.value = error
      return
    }
    // Reading takes a while: what was read first is not shown over what was read since.
    if (isBusy() || turn !== this.#reads) return
    const { records, unreadable } = reading
    const held = new Map(this.records.value.map((value) => [value.id, value]))
    this.records.value = records.map(({ value }) => sameOr(held.get(value.id), value))
    this.unreadable.value = unreadable
  }
}

/** The object held already if it says the same, so that whoever goes by identity sees no change. */
function sameOr<T>(held: T | undefined, read: T): T {
  return held !== undefined && JSON.stringify(held) === JSON.stringify(read) ? held : read
}
