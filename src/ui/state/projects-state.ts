import { signal } from '@preact/signals'
import type { Project } from '../../core/stash/project.ts'
import { putProject, readProjects, removeProject } from '../../storage/stores/projects.ts'
import { DropShelf } from './drop-shelf.ts'
import { storeTrouble, theStore } from './keeper.ts'

const shelf = new DropShelf<Project>({
  name: 'projects',
  read: readProjects,
  put: putProject,
  remove: removeProject,
})

/** Every project, the last begun first. */
export const projects = shelf.records
export const unreadableProjects = shelf.unreadable

/** False until `projects` holds what is stored. */
export const projectsOpen = signal(false)

/** Reads the projects, once, and follows their changes. */
export async function openProjects(): Promise<void> {
  try {
    await shelf.follow(await theStore(), storeTrouble)
  } catch (error) {
    storeTrouble.value = error
  }
  projectsOpen.value = true
}

export function projectById(id: string): Project | null {
  return projects.value.find((project) => project.id === id) ?? null
}

/** Keeps a project, over the one of the same id if there is one. */
export function saveProject(project: Project): void {
  shelf.put(project)
}

/** Resolves when every change of a project made so far is stored, or refused. */
export function projectsWritten(): Promise<void> {
  return shelf.written()
}

/** Changes a kept project; nothing happens if it is gone. */
export function changeProject(id: string, part: Partial<Project>): void {
  const now = projectById(id)
  if (now) shelf.put({ ...now, ...part })
}

/** Removes a project and releases what it had reserved, and offers to take that back. What was cut stays cut. */
export function dropProject(project: Project, said: string): void {
  shelf.drop(project, said)
}
