import { fieldPath } from '../base/field-path.ts'
import type { Fault } from '../base/result.ts'

/** The fault, if any, of a number that must lie from `least` (or strictly above it) to `most`. */
export function numberFault(
  path: readonly (string | number)[],
  value: number,
  least: number,
  most: number,
  bound: 'from' | 'above' = 'from',
): readonly Fault[] {
  const right = value <= most && (bound === 'above' ? value > least : value >= least)
  if (right) return []
  const message =
    bound === 'above' ? `must be more than ${least}, at most ${most}` : `must be from ${least} to ${most}`
  return [{ field: fieldPath(path), message }]
}
