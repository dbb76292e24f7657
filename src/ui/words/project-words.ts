import { type CopyProgress, projectProgress, projectStage } from '../../core/stash/progress.ts'
import type { Project } from '../../core/stash/project.ts'
import type { ReservationFault } from '../../core/stash/reservation-faults.ts'
import type { ClothRecords } from '../../core/stash/taken.ts'
import { projectWords } from './en/projects.ts'
import { writeList, writeNumber } from './format.ts'

/** How far a project is, in a few words. */
export function stageWords(project: Project, records: ClothRecords): string {
  const stage = projectStage(project, records)
  const needed = projectProgress(project, records).filter(({ piece }) => !piece.optional)
  const of = writeNumber(needed.length)
  const at = (state: CopyProgress['state']) => needed.filter((copy) => copy.state === state).length
  switch (stage) {
    case 'partly':
      return projectWords.state.partly(writeNumber(at('reserved')), of)
    case 'cutting':
      return projectWords.state.cutting(writeNumber(at('cut')), of)
    default:
      return projectWords.state[stage]
  }
}

/** Why a reserved piece has its place no longer. */
export function faultWords(
  { pattern }: Project,
  fault: ReservationFault,
  projectName: (id: string) => string,
): string {
  const name = pattern.pieces.find(({ id }) => id === fault.piece)?.name ?? fault.piece
  switch (fault.kind) {
    case 'panel-gone':
      return projectWords.broken.panelGone(name)
    case 'outside':
      return projectWords.broken.outside(name)
    case 'flaw':
      return projectWords.broken.flaw(name)
    case 'taken':
      return projectWords.broken.overlap(name, projectName(fault.by.project))
  }
}

/** “front, sleeve (2)”: pieces with how many copies. */
export function copiesInWords(copies: readonly CopyProgress[]): string {
  const counts = new Map<string, number>()
  for (const { piece } of copies) counts.set(piece.name, (counts.get(piece.name) ?? 0) + 1)
  return writeList(
    [...counts].map(([name, count]) => (count === 1 ? name : projectWords.several(name, writeNumber(count)))),
  )
}

export function roleName(role: string): string {
  return projectWords.roles[role] ?? role
}
