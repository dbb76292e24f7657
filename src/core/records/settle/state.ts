import type { Garment } from '../../garments/garment.ts'
import type { HemmedPanel } from '../../garments/opening/keep-hems.ts'
import { panelsKeepingHems } from '../../garments/panels-of.ts'
import type { Cut, Offcut } from '../../stash/cut.ts'
import type { Reservation } from '../../stash/reservation.ts'
import type { Entries, Entry } from '../entries.ts'
import { type Kept, type RecordRef, type RecordStore, type Records, refKey } from '../record.ts'
import { movedRecord } from '../units.ts'

/** One thing that was done so that the stash as a whole makes sense; screens tell it by the records' names. */
export type Settlement = RecordRef &
  (
    | { readonly what: 'kept-for'; readonly by: RecordRef }
    | { readonly what: 'orphan-gone' }
    | { readonly what: 'cut-twice'; readonly by: RecordRef }
    | { readonly what: 'released'; readonly why: 'place-taken' | 'laid-twice'; readonly by: RecordRef }
    | { readonly what: 'released'; readonly why: 'no-cloth' }
    | { readonly what: 'copies-taken-off'; readonly copies: number }
    | { readonly what: 'moved' }
  )

/** A record that one side has removed and the other has still. */
export interface Grave {
  /** As it is on the side that still has it. */
  readonly last: Entry
  /** All of the side that removed it. */
  readonly removedFrom: Entries
}

/** By refKey. */
export type Graves = ReadonlyMap<string, Grave>

/**
 * Records while they are being settled. What is changed or removed here gets a time just after its last change, so
 * that it wins over the copies of it that either device still has.
 */
export class Settling {
  readonly entries: Map<string, Entry>
  readonly graves: Graves
  readonly settlements: Settlement[] = []
  readonly #hemmed = new Map<string, readonly HemmedPanel[]>()
  /** What was removed while settling. */
  readonly #gone = new Map<string, Entry>()

  constructor(entries: Entries, graves: Graves) {
    this.entries = new Map(entries)
    this.graves = graves
  }

  /** The kept records of a store, the last changed first; at equal times in the order of ids. */
  kept<Name extends RecordStore>(store: Name): readonly Kept<Records[Name]>[] {
    const found: Kept<Records[Name]>[] = []
    for (const entry of this.entries.values()) {
      if (entry.store === store && entry.state === 'kept') found.push(entry.kept as Kept<Records[Name]>)
    }
    return found.sort((a, b) => b.changedAt - a.changedAt || (a.id < b.id ? -1 : 1))
  }

  /** True if there is such a record, be it one that cannot be read. */
  has(ref: RecordRef): boolean {
    const entry = this.entries.get(refKey(ref))
    return entry !== undefined && entry.state !== 'removed'
  }

  /** True if it was there and was removed. */
  isGone(ref: RecordRef): boolean {
    return this.entries.get(refKey(ref))?.state === 'removed'
  }

  /** The record, or the last that is known of it if it was removed here or by one side. */
  known(store: 'cuts', id: string): Cut | null
  known(store: 'offcuts', id: string): Offcut | null
  known(store: RecordStore, id: string): unknown {
    const key = refKey({ store, id })
    const entry = this.entries.get(key)
    if (entry?.state === 'kept') return entry.kept.value
    const last = this.#gone.get(key) ?? this.graves.get(key)?.last
    return last?.state === 'kept' ? last.kept.value : null
  }

  /** The panel of a garment with its hems left on, for what pieces on its folds take of the cloth behind; null: it has none. */
  hemmed(garment: string, panel: string): HemmedPanel | null {
    const entry = this.entries.get(refKey({ store: 'garments', id: garment }))
    if (entry?.state !== 'kept') return null
    const panels = this.#hemmed.get(garment) ?? panelsKeepingHems(entry.kept.value as Garment)
    this.#hemmed.set(garment, panels)
    return panels.find(({ id, hems }) => id === panel && hems.length > 0) ?? null
  }

  /** Brings a removed record back for another, unless whoever removed it had that other one before them. */
  revive(ref: RecordRef, child: RecordRef): boolean {
    const key = refKey(ref)
    const removed = this.entries.get(key)
    const grave = this.graves.get(key)
    if (removed?.state !== 'removed' || grave?.last.state !== 'kept') return false
    if (grave.removedFrom.get(refKey(child))?.state === 'kept') return false
    const stamp = removed.stamp + 1
    this.entries.set(key, { ...grave.last, stamp, kept: movedRecord(ref.store, grave.last.kept, stamp) })
    return true
  }

  /** True if the record was removed together with the other one, or after it, by a side that had both. */
  wentWith(ref: RecordRef, other: RecordRef): boolean {
    const grave = this.graves.get(refKey(ref))
    const [own, others] = [ref, other].map((each) => grave?.removedFrom.get(refKey(each)))
    return own?.state === 'removed' && others?.state === 'removed' && own.stamp >= others.stamp
  }

  /** Gives a garment its photos in another order, or without those that are gone: that is no change of hers. */
  setPhotos(id: string, photos: readonly string[]): void {
    const key = refKey({ store: 'garments', id })
    const entry = this.entries.get(key)
    if (entry?.state !== 'kept') return
    const value = { ...(entry.kept.value as Garment), photos }
    this.entries.set(key, { ...entry, kept: { ...entry.kept, value } })
  }

  remove(ref: RecordRef): void {
    const key = refKey(ref)
    const entry = this.entries.get(key)
    if (!entry || entry.state === 'removed') return
    this.#gone.set(key, entry)
    const { store, id, stamp } = entry
    this.entries.set(key, { store, id, stamp: stamp + 1, state: 'removed' })
  }

  changeReservation(id: string, value: Reservation): void {
    const key = refKey({ store: 'reservations', id })
    const entry = this.entries.get(key)
    if (entry?.state !== 'kept') return
    const stamp = entry.stamp + 1
    this.entries.set(key, { ...entry, stamp, kept: { ...entry.kept, value, changedAt: stamp } })
  }
}
