import type { PieceInSize } from '../patterns/pieces-of.ts'
import type { LaidPiece } from '../stash/reservation.ts'

/** Copies still to be laid, by the piece's id, counted from 1: of a project that has cut some already. A piece that is not named: none. */
export type WantedCopies = Readonly<Record<string, readonly number[]>>

/** Copies of a piece that the solver takes as one piece of its own. */
export interface CopyGroup {
  /** Id in the lay problem: the piece's own, with a sign after it for the rest of pairs that are not halves any more. */
  readonly id: string
  readonly piece: string
  /** Numbers in the pattern, in the order in which the lay problem counts them. */
  readonly copies: readonly number[]
  readonly mirror: PieceInSize['piece']['mirror']
  /** True: all of them are the turned-over half of pairs, drawn turned over. */
  readonly turned: boolean
}

/** After a piece's id: the copies of it that have no other half. */
const REST = '+'

/** The pattern's piece that a group of this id may be of. */
export function pieceOfGroup(id: string): string {
  return id.endsWith(REST) ? id.slice(0, -REST.length) : id
}

/**
 * The wanted copies of a piece as groups. The first half of a pair's copies lies as drawn and the second turned over; when
 * unlike numbers of both are left, the rest is a group of its own.
 */
export function copyGroups(
  { piece }: Pick<PieceInSize, 'piece'>,
  wanted: WantedCopies | undefined,
): readonly CopyGroup[] {
  const { id, copies: count, mirror } = piece
  const all = Array.from({ length: count }, (_, i) => i + 1)
  const left = wanted ? all.filter((copy) => wanted[id]?.includes(copy)) : all
  const group = (copies: readonly number[], change: Partial<CopyGroup> = {}): readonly CopyGroup[] =>
    copies.length > 0 ? [{ id, piece: id, copies, mirror, turned: false, ...change }] : []
  if (mirror !== 'pairs') return group(left)
  const drawn = left.filter((copy) => copy <= count / 2)
  const turned = left.filter((copy) => copy > count / 2)
  const pairs = Math.min(drawn.length, turned.length)
  const rest = { id: pairs > 0 ? `${id}${REST}` : id, mirror: 'none' } as const
  return [
    ...group([...drawn.slice(0, pairs), ...turned.slice(0, pairs)]),
    ...group(drawn.slice(pairs), rest),
    ...group(turned.slice(pairs), { ...rest, turned: true }),
  ]
}

/** Which copy of the pattern a copy of the lay problem is. */
export function patternCopy(
  groups: readonly CopyGroup[],
  { piece, copy, mirrored }: Pick<LaidPiece, 'piece' | 'copy' | 'mirrored'>,
): Pick<LaidPiece, 'piece' | 'copy' | 'mirrored'> | null {
  const group = groups.find(({ id }) => id === piece)
  const number = group?.copies[copy - 1]
  if (!group || number === undefined) return null
  return { piece: group.piece, copy: number, mirrored: group.turned ? !mirrored : mirrored }
}
