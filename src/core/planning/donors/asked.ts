import { failed, ok, type Result } from '../../base/result.ts'
import type { ClothMake, ClothRole } from '../../base/terms.ts'
import type { Mm, Percent } from '../../base/units.ts'
import { polygonArea } from '../../geometry/index.ts'
import type { Pattern } from '../../patterns/pattern.ts'
import { type PieceInSize, piecesOf } from '../../patterns/pieces-of.ts'
import type { Heads } from '../check.ts'
import type { LayPiece, LayProblem } from '../lay-problem.ts'
import type { WantedCopies } from '../wanted-copies.ts'
import { wantedPieces } from '../wanted-pieces.ts'
import { type Donor, panelsHeld } from './donor.ts'

/** What donors are looked for; a `Project` with roles is one. */
export interface DonorQuestion {
  readonly pattern: Pattern
  /** Id of the version. */
  readonly version: string
  readonly size: string
  /** Cloth roles that one donor shall yield together; null: every piece of the version. */
  readonly roles: readonly ClothRole[] | null
  /** Id of the only piece wanted, in all its copies, even where it is optional; absent: every piece of the roles. */
  readonly piece?: string
  /** Copies still to be laid, of a project that has cut some; absent: all. */
  readonly copies?: WantedCopies
  /** The user's own gap between pieces; the larger of this and the pattern's counts. */
  readonly clearance: Mm
  /** Colours wanted, by role, in her own words. A role without any takes every colour. */
  readonly colours: Readonly<Record<ClothRole, string>>
  /** As in a check. */
  readonly stretchDoubt?: Percent
}

/** A question with its pieces cut out once, for all donors. */
export interface Asked {
  readonly name: string
  readonly clearance: Mm
  readonly pieces: readonly LayPiece[]
  readonly roles: readonly ClothRole[]
  /** Colours wanted by the roles asked. */
  readonly colours: readonly string[]
  /** Area of all needed copies, mm². */
  readonly area: number
  /** How cloth is made that the pattern is for; empty: not said. */
  readonly cloths: readonly ClothMake[]
  readonly stretchDoubt?: Percent
}

/** Faults name what the pattern lacks: a version or size that does not exist, a role with no pieces, the piece; or that no copy is wanted. */
export function askedOf(question: DonorQuestion): Result<Asked> {
  const { pattern, size } = question
  const wanted = wantedOf(question)
  if (!wanted.ok) return wanted
  const more = question.piece === undefined ? {} : { optional: false }
  const pieces = wanted.value.flatMap((inSize) =>
    wantedPieces(inSize, question.copies).map(
      (piece): LayPiece => ({ ...piece, cloth: inSize.piece.role, ...more }),
    ),
  )
  if (pieces.length === 0)
    return failed([{ field: 'copies', message: 'must name a copy of some piece that is asked' }])
  const asked = [...new Set(wanted.value.map(({ piece }) => piece.role))]
  return ok({
    name: `${pattern.name}, ${size}`,
    clearance: Math.max(pattern.clearance, question.clearance),
    pieces,
    roles: asked,
    colours: asked.map((role) => question.colours[role] ?? ''),
    area: pieces.reduce((sum, piece) => sum + (piece.optional ? 0 : piece.count * areaOf(piece)), 0),
    cloths: pattern.cloths ?? [],
    ...(question.stretchDoubt === undefined ? {} : { stretchDoubt: question.stretchDoubt }),
  })
}

function wantedOf({
  pattern,
  version,
  size,
  roles,
  piece: only,
}: DonorQuestion): Result<readonly PieceInSize[]> {
  const found = piecesOf(pattern, version, size)
  if (!found.ok) return found
  const inRoles = found.value.filter(({ piece }) => roles === null || roles.includes(piece.role))
  if (inRoles.length === 0)
    return failed([{ field: 'roles', message: 'no piece of this version has the role asked' }])
  if (only === undefined) return ok(inRoles)
  const wanted = inRoles.filter(({ piece }) => piece.id === only)
  return wanted.length > 0
    ? ok(wanted)
    : failed([{ field: 'piece', message: `this version and role need no piece “${only}”` }])
}

/** Area of one copy, mm². */
export function areaOf({ outline }: Pick<LayPiece, 'outline'>): number {
  return Math.abs(polygonArea(outline))
}

/** Seconds that a shared problem file asks for. */
const FILE_SECONDS = 10

/** The lay problem that a row's lay answers. */
export function donorProblem({ name, clearance, pieces }: Asked, donor: Donor, heads: Heads): LayProblem {
  const panels = panelsHeld(donor.panels, heads)
  return { name: `${name}: ${donor.id}`, clearance, seconds: FILE_SECONDS, panels, pieces }
}
