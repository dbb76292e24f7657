import type { Pattern } from '../../core/patterns/pattern.ts'
import type { Project } from '../../core/stash/project.ts'
import { newId } from './new-id.ts'
import { projects, saveProject } from './projects-state.ts'
import { settings } from './settings-state.ts'

/** Begins a project of the pattern as it is now, and gives its id. */
export function beginProject(pattern: Pattern, version: string, size: string): string {
  const project = newProject(pattern, version, size)
  saveProject(project)
  return project.id
}

/** A project that is not kept yet. */
export function newProject(pattern: Pattern, version: string, size: string): Project {
  return {
    id: newId(),
    name: freeName(pattern.name),
    pattern,
    version,
    size,
    clearance: settings.peek().clearance,
    colours: {},
    blocked: [],
    newCloth: null,
    taken: [],
    finished: false,
    note: '',
  }
}

/** The pattern's name, with a number from the second project of that name on. */
function freeName(name: string): string {
  const taken = new Set(projects.peek().map((project) => project.name))
  for (let n = 1; ; n++) {
    const candidate = n === 1 ? name : `${name} ${n}`
    if (!taken.has(candidate)) return candidate
  }
}
