import type { Percent } from '../base/units.ts'
import type { Garment } from '../garments/garment.ts'
import { projectProgress } from '../stash/progress.ts'
import type { Project } from '../stash/project.ts'
import { type ClothRecords, takenBeside } from '../stash/taken.ts'
import type { CheckQuestion } from './check.ts'
import type { WantedCopies } from './wanted-copies.ts'

/**
 * What a project asks of one garment: the copies of these roles that are not cut yet, laid round everything that is
 * reserved there for others and for its own other pieces. Copies reserved already are laid anew. null: all is cut.
 */
export function projectQuestion(
  project: Project,
  garment: Garment,
  roles: CheckQuestion['roles'],
  records: ClothRecords,
  stretchDoubt?: Percent,
): CheckQuestion | null {
  const { pattern, version, size, clearance } = project
  const copies = uncutCopies(project, roles, records)
  if (copies === null) return null
  const taken = takenBeside(garment.id, records, project.id, Object.keys(copies))
  const doubted = stretchDoubt === undefined ? {} : { stretchDoubt }
  return { pattern, version, size, garment, roles, clearance, taken, copies, ...doubted }
}

/** The copies of these roles that are not cut yet, reserved or not. null: all are cut. */
export function uncutCopies(
  project: Project,
  roles: CheckQuestion['roles'],
  records: ClothRecords,
): WantedCopies | null {
  const copies: Record<string, number[]> = {}
  for (const { piece, copy, state } of projectProgress(project, records)) {
    if (state === 'cut' || (roles !== null && !roles.includes(piece.role))) continue
    copies[piece.id] = [...(copies[piece.id] ?? []), copy]
  }
  return Object.keys(copies).length > 0 ? copies : null
}
