import type { Project } from '../../core/stash/project.ts'
import type { Store } from '../open-store.ts'
import type { Reading } from '../reading.ts'
import { type RecordWriting, writeRecords } from '../record-writing.ts'
import { type Removal, Removing } from '../removal.ts'
import type { Kept } from '../schema.ts'
import { putRecord, readAll } from './collection.ts'

/** All projects, the last begun first. */
export function readProjects(store: Store<unknown>): Promise<Reading<Kept<Project>>> {
  return readAll(store, 'projects')
}

/** Stores a project, over the one of the same id if there is one. */
export function putProject(store: Store<unknown>, project: Project): Promise<void> {
  return putRecord(store, 'projects', project)
}

/**
 * Removes the project and releases what it had reserved. What was cut for it stays cut. Gives what was removed, for
 * `restore`; nothing if there is none of that id.
 */
export function removeProject(store: Store<unknown>, id: string): Promise<Removal> {
  return writeRecords(store, ['projects', 'reservations'], async (writing) => {
    const removing = new Removing(writing)
    await removeProjectIn(writing, removing, id)
    return removing.removal()
  })
}

/** The same, as a part of a removal of more. The transaction has projects and reservations. */
export async function removeProjectIn(writing: RecordWriting, removing: Removing, id: string): Promise<void> {
  await removing.remove('projects', id)
  await removing.removeAll('reservations', await writing.keptOfProject('reservations', id))
}
