import type { Garment } from '../garments/garment.ts'
import { projectProgress } from '../stash/progress.ts'
import type { Project } from '../stash/project.ts'
import { type ClothRecords, takenBeside } from '../stash/taken.ts'
import type { CheckQuestion } from './check.ts'

/**
 * What a project asks of one garment: the copies of these roles that are not cut yet, laid round everything that is
 * reserved there for others and for its own other pieces. Copies reserved already are laid anew. null: all is cut.
 */
export function projectQuestion(
  project: Project,
  garment: Garment,
  roles: CheckQuestion['roles'],
  records: ClothRecords,
): CheckQuestion | null {
  const { pattern, version, size, clearance } = project
  const open = projectProgress(project, records).filter(
    ({ piece, state }) => state !== 'cut' && (roles === null || roles.includes(piece.role)),
  )
  if (open.length === 0) return null
  const copies: Record<string, number[]> = {}
  for (const { piece, copy } of open) copies[piece.id] = [...(copies[piece.id] ?? []), copy]
  const taken = takenBeside(garment.id, records, project.id, Object.keys(copies))
  return { pattern, version, size, garment, roles, clearance, taken, copies }
}
