import type { Polygon } from '../../src/core/geometry/types.ts'

/** To a thousandth of a millimetre: far finer than a checked lay may err. */
export function rounded(outline: Polygon): Polygon {
  return outline.map(([x, y]) => [thousandths(x), thousandths(y)] as const)
}

function thousandths(length: number): number {
  return Math.round(length * 1000) / 1000 + 0
}
