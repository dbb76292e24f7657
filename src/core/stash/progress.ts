import type { ClothRole } from '../base/terms.ts'
import type { PatternPiece } from '../patterns/pattern.ts'
import type { Project } from './project.ts'
import type { ClothRecords } from './taken.ts'

/** Where one copy of a piece stands on its way from pattern to cut cloth. */
export interface CopyProgress {
  readonly piece: PatternPiece
  /** Counts from 1. */
  readonly copy: number
  readonly state: 'missing' | 'reserved' | 'cut'
  /** Id of the garment it is reserved on or was cut from; null while missing. */
  readonly garment: string | null
}

type Records = Pick<ClothRecords, 'reservations' | 'cuts'>

/** Every copy that the project's version needs, in the pattern's order. A piece that is cut counts as cut even if it is reserved again. */
export function projectProgress(project: Project, { reservations, cuts }: Records): readonly CopyProgress[] {
  const mine = (record: { readonly project: string }) => record.project === project.id
  const reserved = garmentsByCopy(reservations.filter(mine))
  const cut = garmentsByCopy(cuts.filter(mine))
  return neededPieces(project).flatMap((piece) =>
    Array.from({ length: piece.copies }, (_, i): CopyProgress => {
      const copy = i + 1
      const key = keyOf(piece.id, copy)
      const [from, on] = [cut.get(key), reserved.get(key)]
      if (from !== undefined) return { piece, copy, state: 'cut', garment: from }
      if (on !== undefined) return { piece, copy, state: 'reserved', garment: on }
      return { piece, copy, state: 'missing', garment: null }
    }),
  )
}

/** The pieces of the project's version. */
export function neededPieces({ pattern, version }: Project): readonly PatternPiece[] {
  const ids = pattern.versions.find(({ id }) => id === version)?.pieces ?? []
  return ids.flatMap((id) => pattern.pieces.find((piece) => piece.id === id) ?? [])
}

/** The cloth roles of the project, in the order of their first piece. */
export function projectRoles(project: Project): readonly ClothRole[] {
  return [...new Set(neededPieces(project).map(({ role }) => role))]
}

/** Roles of which a needed copy has no cloth yet. */
export function rolesWithout(project: Project, records: Records): readonly ClothRole[] {
  const missing = projectProgress(project, records).filter(
    ({ state, piece }) => state === 'missing' && !piece.optional,
  )
  return [...new Set(missing.map(({ piece }) => piece.role))]
}

/** How far a project is. Optional pieces hold nothing up. */
export type Stage = 'planned' | 'partly' | 'reserved' | 'cutting' | 'cut' | 'finished'

export function projectStage(project: Project, records: Records): Stage {
  if (project.finished) return 'finished'
  const copies = projectProgress(project, records)
  const needed = copies.filter(({ piece }) => !piece.optional)
  const isAt = (state: CopyProgress['state']) => needed.every((copy) => copy.state === state)
  if (isAt('cut')) return 'cut'
  if (copies.some(({ state }) => state === 'cut')) return 'cutting'
  if (needed.every(({ state }) => state === 'reserved')) return 'reserved'
  return copies.some(({ state }) => state === 'reserved') ? 'partly' : 'planned'
}

function garmentsByCopy(
  records: readonly {
    readonly garment: string
    readonly pieces: readonly { readonly piece: string; readonly copy: number }[]
  }[],
): ReadonlyMap<string, string> {
  return new Map(
    records.flatMap(({ garment, pieces }) =>
      pieces.map(({ piece, copy }) => [keyOf(piece, copy), garment] as const),
    ),
  )
}

function keyOf(piece: string, copy: number): string {
  return `${piece}#${copy}`
}
