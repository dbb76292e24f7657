import { deadlineAfter } from '../../src/core/base/deadline.ts'
import type { SolveControl } from '../../src/core/planning/check.ts'
import { checkQuestion } from '../../src/core/planning/check-question.ts'
import { projectQuestion } from '../../src/core/planning/project-question.ts'
import { reservationFrom } from '../../src/core/planning/reservation-from.ts'
import { type Demo, demoId } from '../../src/core/records/demo.ts'
import type { Project } from '../../src/core/stash/project.ts'
import type { Reservation } from '../../src/core/stash/reservation.ts'
import type { ClothRecords } from '../../src/core/stash/taken.ts'
import { allDrafts } from '../drafting/all.ts'
import { cutOut } from './cut-out.ts'
import { demoGarment } from './demo-garment.ts'
import { PLANS, type Plan, type Source } from './plans.ts'
import { rounded } from './rounding.ts'

type Made = Omit<Demo, 'garments' | 'notions'>

const NOTHING: ClothRecords = { reservations: [], cuts: [], offcuts: [] }

/** The demo projects, laid and cut by the same code as anybody's. */
export function makeProjects(): Made {
  let records = NOTHING
  const projects = PLANS.map((plan) => {
    const project = projectOf(plan)
    for (const source of plan.from) {
      const reservation = reserved(project, source, records)
      records = { ...records, reservations: [...records.reservations, reservation] }
    }
    if (plan.cut) records = cutOut(plan.cut, project, records)
    return project
  })
  return { projects, ...records }
}

function projectOf({ id, pattern: patternId, from: _from, cut: _cut, ...told }: Plan): Project {
  const pattern = allDrafts().find((draft) => draft.id === patternId)
  if (!pattern) throw new Error(`there is no pattern ${patternId}`)
  const { name, version, size, colours, newCloth, note } = told
  return {
    id: demoId(id),
    name,
    pattern,
    version,
    size,
    clearance: 0,
    colours,
    blocked: [],
    newCloth,
    taken: [],
    finished: false,
    note,
  }
}

function reserved(project: Project, { role, garment: file }: Source, records: ClothRecords): Reservation {
  const garment = demoGarment(demoId(file))
  const question = projectQuestion(project, garment, [role], records)
  if (!question) throw new Error(`${project.name}: its ${role} is cut`)
  const answer = checkQuestion(question, control())
  if (!answer.ok || answer.value.lay.verdict !== 'fits')
    throw new Error(`${project.name}: no lay of its ${role} on ${garment.name}`)
  const ids = { id: `${project.id}-${role}`, project: project.id, garment: garment.id }
  const { pieces, ...rest } = reservationFrom(answer.value, ids, question)
  return { ...rest, pieces: pieces.map((laid) => ({ ...laid, outline: rounded(laid.outline) })) }
}

/** More than these lays need. */
const STEPS = 100_000

/** Time is counted by how often it is asked for, so that every machine finds the same lay. */
function control(): SolveControl {
  let asked = 0
  const clock = () => asked++
  return { seed: 1, clock, deadline: deadlineAfter(STEPS, clock) }
}
