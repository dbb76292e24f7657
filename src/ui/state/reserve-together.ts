import type { Together } from '../../core/planning/donors/together.ts'
import { projectQuestion } from '../../core/planning/project-question.ts'
import type { Project } from '../../core/stash/project.ts'
import type { Jobs } from '../../workers/protocol.ts'
import { answerTo, PRIORITY } from './answers.ts'
import { clothRecords, reserveLay } from './cloth-state.ts'
import { garmentById } from './stash-state.ts'

const SECONDS = 10

/** Reserves a donor for each role of a proposal. False at the first that could not be; those before it stay reserved. */
export async function reserveTogether(project: Project, { parts }: Together): Promise<boolean> {
  for (const { role, row } of parts) {
    const garment = garmentById(row.donor)
    const question = garment && projectQuestion(project, garment, [role], clothRecords.value)
    if (!question) return false
    const limits = { seed: 1, seconds: SECONDS, priority: PRIORITY.live, warmStart: row.lay.placements }
    const told = await answerTo(question, new AbortController().signal, limits)
    if (!told.ok || told.value.lay.verdict !== 'fits') return false
    const of = { project: project.id, garment: row.donor }
    if (!(await reserveLay({ answer: told.value, question, of }))) return false
  }
  return true
}

/** Reserves one role on several cloths. False at the first that could not be; those before it stay reserved. */
export async function reserveBlocked(project: Project, way: Jobs['blocking']['tells']): Promise<boolean> {
  for (const { garment, answer } of way) {
    if (!(await reserveLay({ answer, of: { project: project.id, garment } }))) return false
  }
  return true
}
