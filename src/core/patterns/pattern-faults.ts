import { fieldPath } from '../base/field-path.ts'
import type { Fault } from '../base/result.ts'
import { shortText } from '../base/short-text.ts'
import { PATTERN_LIMITS } from './limits.ts'
import { numberFault } from './number-fault.ts'
import type { Pattern, PatternPiece, Version } from './pattern.ts'
import { shapeFaults } from './shape-faults.ts'

/**
 * Everything wrong with a pattern whose fields have the right types: what is missing, twice there, contradictory or
 * out of range. A pattern without faults has a cut outline for every piece in every size.
 */
export function patternFaults(pattern: Pattern): readonly Fault[] {
  const { sizes, versions, pieces } = pattern
  return [
    ...nameFaults(['name'], pattern.name),
    ...listFaults('sizes', sizes, 'size', PATTERN_LIMITS.sizes),
    ...sizes.flatMap((size, k) => nameFaults(['sizes', k], size)),
    ...listFaults(
      'pieces',
      pieces.map(({ id }) => id),
      'piece',
      PATTERN_LIMITS.pieces,
    ),
    ...pieces.flatMap((piece, k) => pieceFaults(pattern, piece, k)),
    ...listFaults(
      'versions',
      versions.map(({ id }) => id),
      'version',
      PATTERN_LIMITS.versions,
    ),
    ...versions.flatMap((version, k) => versionFaults(pattern, version, k)),
    ...numberFault(['clearance'], pattern.clearance, 0, PATTERN_LIMITS.clearance),
    ...fallbackFaults(pattern),
  ]
}

/** Faults of what the maker falls back on; what is absent is no fault. */
function fallbackFaults({ leastAllowance, leastHem, mostTilt }: Pattern): readonly Fault[] {
  const fault = (field: string, value: number | undefined, most: number) =>
    value === undefined ? [] : numberFault([field], value, 0, most)
  return [
    ...fault('leastAllowance', leastAllowance, PATTERN_LIMITS.allowance),
    ...fault('leastHem', leastHem, PATTERN_LIMITS.allowance),
    ...fault('mostTilt', mostTilt, PATTERN_LIMITS.tilt),
  ]
}

function nameFaults(path: readonly (string | number)[], name: string): readonly Fault[] {
  return name.trim() === '' ? [{ field: fieldPath(path), message: 'must not be empty' }] : []
}

/** Faults of a list that needs at least one entry, not too many, and none of them twice. */
function listFaults(field: string, ids: readonly string[], noun: string, most: number): readonly Fault[] {
  if (ids.length === 0) return [{ field, message: `needs at least one ${noun}` }]
  if (ids.length > most) return [{ field, message: `must have at most ${most} entries` }]
  return repeated(ids).map((k) => ({
    field: fieldPath([field, k]),
    message: `“${shortText(ids[k] as string)}” is there twice`,
  }))
}

/** Indices of entries that stood earlier in the list. */
function repeated(ids: readonly string[]): readonly number[] {
  return [...ids.keys()].filter((k) => ids.indexOf(ids[k] as string) < k)
}

function pieceFaults({ sizes }: Pattern, piece: PatternPiece, at: number): readonly Fault[] {
  const path = ['pieces', at]
  return [
    ...nameFaults([...path, 'name'], piece.name),
    ...nameFaults([...path, 'role'], piece.role),
    ...copyFaults(piece, [...path, 'copies']),
    ...numberFault([...path, 'tilt'], piece.tilt, 0, PATTERN_LIMITS.tilt),
    ...numberFault([...path, 'needs', 'across'], piece.needs.across, 0, PATTERN_LIMITS.stretch),
    ...numberFault([...path, 'needs', 'along'], piece.needs.along, 0, PATTERN_LIMITS.stretch),
    ...sizes
      .filter((size) => !Object.hasOwn(piece.shapes, size))
      .map((size) => missing([...path, 'shapes', size])),
    ...Object.keys(piece.shapes)
      .filter((size) => !sizes.includes(size))
      .map((size) => foreign([...path, 'shapes', size])),
    ...Object.entries(piece.shapes).flatMap(([size, shape]) => shapeFaults(shape, [...path, 'shapes', size])),
  ]
}

function missing(path: readonly (string | number)[]): Fault {
  return { field: fieldPath(path), message: 'is missing; every size of the pattern needs a shape' }
}

function foreign(path: readonly (string | number)[]): Fault {
  return {
    field: fieldPath(path),
    message: 'is no size of this pattern; add the size or leave the shape out',
  }
}

function copyFaults({ copies, mirror }: PatternPiece, path: readonly (string | number)[]): readonly Fault[] {
  const field = fieldPath(path)
  if (!Number.isInteger(copies)) return [{ field, message: 'must be a whole number' }]
  if (mirror === 'pairs' && copies % 2 === 1)
    return [{ field, message: 'must be even, for the copies are cut in pairs' }]
  return numberFault(path, copies, 1, PATTERN_LIMITS.copies)
}

function versionFaults({ pieces }: Pattern, version: Version, at: number): readonly Fault[] {
  const path = ['versions', at]
  const needed = version.pieces
  if (needed.length === 0)
    return [{ field: fieldPath([...path, 'pieces']), message: 'needs at least one piece' }]
  const unknown = [...needed.keys()].filter((k) => !pieces.some(({ id }) => id === needed[k]))
  return [
    ...nameFaults([...path, 'name'], version.name),
    ...unknown.map((k) => ({
      field: fieldPath([...path, 'pieces', k]),
      message: `there is no piece “${shortText(needed[k] as string)}” in this pattern`,
    })),
    ...repeated(needed).map((k) => ({
      field: fieldPath([...path, 'pieces', k]),
      message: `“${shortText(needed[k] as string)}” is there twice; set its copies instead`,
    })),
  ]
}
