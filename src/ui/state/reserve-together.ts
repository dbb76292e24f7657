import type { Together } from '../../core/planning/donors/together.ts'
import type { Project } from '../../core/stash/project.ts'
import type { Jobs } from '../../workers/protocol.ts'
import { type AcceptedLay, reserveLays } from './cloth-state.ts'
import type { RoleSearch } from './donors.ts'

/**
 * Reserves a donor for each role of a proposal, as it was found: all of them, or none. False when they could not be
 * reserved, and `clothRefusal` or `storeTrouble` says why.
 */
export async function reserveTogether(
  project: Project,
  { parts }: Together,
  searches: readonly RoleSearch[],
): Promise<boolean> {
  const lays = parts.flatMap(({ role, row }): readonly AcceptedLay[] => {
    const search = searches.find((each) => each.role === role)
    if (!search) return []
    const lay = { placements: row.lay.placements, spare: null }
    const answer = { problem: search.asked, lay, heads: row.heads }
    return [{ answer, question: search.question, of: { project: project.id, garment: row.donor } }]
  })
  return (await reserveLays(lays)) !== null
}

/** Reserves one role on several cloths: on all, or on none. False as above. */
export async function reserveBlocked(
  project: Project,
  way: Jobs['blocking']['tells'],
  { question }: RoleSearch,
): Promise<boolean> {
  const lays = way.map(
    ({ garment, answer }): AcceptedLay => ({ answer, question, of: { project: project.id, garment } }),
  )
  return (await reserveLays(lays)) !== null
}
