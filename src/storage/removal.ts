import type { RecordWriting } from './record-writing.ts'
import type { Kept, RecordStore, Records, StoredPicture } from './schema.ts'

/** What one stroke removed, as it was stored; `restore` in cloth/restore.ts puts it back. */
export interface Removal {
  readonly records: readonly RemovedRecord[]
  readonly pictures: readonly StoredPicture[]
}

export interface RemovedRecord {
  readonly store: RecordStore
  readonly kept: Kept<Records[RecordStore]>
}

/** Collects what is removed in one transaction. */
export class Removing {
  readonly #writing: RecordWriting
  readonly #records: RemovedRecord[] = []
  readonly #pictures: StoredPicture[] = []

  constructor(writing: RecordWriting) {
    this.#writing = writing
  }

  async remove(store: RecordStore, id: string): Promise<void> {
    const kept = await this.#writing.remove(store, id)
    if (kept) this.#records.push({ store, kept })
  }

  async removeAll(store: RecordStore, records: readonly { readonly id: string }[]): Promise<void> {
    for (const { id } of records) await this.remove(store, id)
  }

  /** A photo with its picture. */
  async removePhoto(id: string): Promise<void> {
    await this.remove('photos', id)
    const picture = await this.#writing.picture(id)
    if (!picture) return
    await this.#writing.transaction.objectStore('pictures').delete(id)
    this.#pictures.push(picture)
  }

  removal(): Removal {
    return { records: this.#records, pictures: this.#pictures }
  }
}
