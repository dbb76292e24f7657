import type { Pattern } from '../patterns/pattern.ts'

/** One cell of the table of sizes and versions. */
export interface TableCell {
  readonly version: string
  readonly size: string
}

/**
 * Every size and version of a pattern, the likeliest to interest her first: the chosen version outward from the
 * chosen size (smaller before larger at the same distance, since a smaller one may save the garment), then the
 * other versions likewise.
 */
export function tableOrder(pattern: Pattern, chosen: TableCell): readonly TableCell[] {
  const centre = Math.max(0, pattern.sizes.indexOf(chosen.size))
  const sizes = pattern.sizes
    .map((size, i) => ({ size, far: Math.abs(i - centre), i }))
    .sort((a, b) => a.far - b.far || a.i - b.i)
  const versions = [...pattern.versions].sort(
    (a, b) => Number(b.id === chosen.version) - Number(a.id === chosen.version),
  )
  return versions.flatMap((version) => sizes.map(({ size }) => ({ version: version.id, size })))
}
