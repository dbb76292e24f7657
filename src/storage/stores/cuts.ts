import type { Cut, Offcut } from '../../core/stash/cut.ts'
import type { Store } from '../open-store.ts'
import type { Reading } from '../reading.ts'
import { writeRecords } from '../record-writing.ts'
import type { Kept } from '../schema.ts'
import { readAll } from './collection.ts'

/** Everything that was cut, the last first. Cutting and taking back are in ../cloth/. */
export function readCuts(store: Store<unknown>): Promise<Reading<Kept<Cut>>> {
  return readAll(store, 'cuts')
}

/** All offcuts, those thrown away and those cut again too. */
export function readOffcuts(store: Store<unknown>): Promise<Reading<Kept<Offcut>>> {
  return readAll(store, 'offcuts')
}

/**
 * Throws an offcut away, or takes it back. What is reserved on it stays reserved and is told as a fault of the
 * reservation until the offcut is back. Nothing happens if there is no such offcut.
 */
export function keepOffcut(store: Store<unknown>, id: string, kept: boolean): Promise<void> {
  return writeRecords(store, ['offcuts'], async (writing) => {
    const offcut = await writing.get('offcuts', id)
    if (offcut) await writing.put('offcuts', { ...offcut, kept })
  })
}
