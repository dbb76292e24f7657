import { fieldPath } from '../base/field-path.ts'
import { failed, ok, type Result } from '../base/result.ts'
import { shortText } from '../base/short-text.ts'
import type { Polygon } from '../geometry/types.ts'
import { cutOutline } from './cut-outline.ts'
import type { Pattern, PatternPiece, PieceShape } from './pattern.ts'

/** A piece in one size. */
export interface PieceInSize {
  readonly piece: PatternPiece
  readonly shape: PieceShape
  /** As cutOutline gives it. */
  readonly outline: Polygon
}

/**
 * The pieces that a version (by id) needs in a size (by name), in the version's order. Fails when the pattern has no such
 * version or size, or lacks one of the pieces or its shape in that size.
 */
export function piecesOf(pattern: Pattern, version: string, size: string): Result<readonly PieceInSize[]> {
  const needed = pattern.versions.find(({ id }) => id === version)
  if (!needed) {
    return failed([
      {
        field: 'version',
        message: `no version “${shortText(version)}” here; there is ${listed(pattern.versions.map(({ id }) => id))}`,
      },
    ])
  }
  if (!pattern.sizes.includes(size)) {
    return failed([
      { field: 'size', message: `no size “${shortText(size)}” here; there is ${listed(pattern.sizes)}` },
    ])
  }
  const found = needed.pieces.map((id) => inSize(pattern, id, size))
  const faults = found.flatMap((result) => (result.ok ? [] : result.faults))
  return faults.length > 0 ? failed(faults) : ok(found.flatMap((result) => (result.ok ? [result.value] : [])))
}

function inSize(pattern: Pattern, id: string, size: string): Result<PieceInSize> {
  const at = pattern.pieces.findIndex((piece) => piece.id === id)
  const piece = pattern.pieces[at]
  if (!piece)
    return failed([
      { field: 'pieces', message: `the version needs piece “${shortText(id)}”, which is missing` },
    ])
  const shape = piece.shapes[size]
  if (!shape)
    return failed([
      { field: fieldPath(['pieces', at, 'shapes', size]), message: 'is missing; give its shape' },
    ])
  return ok({ piece, shape, outline: cutOutline(shape) })
}

function listed(names: readonly string[]): string {
  return names.length > 0 ? names.map((name) => `“${shortText(name)}”`).join(', ') : 'none'
}
