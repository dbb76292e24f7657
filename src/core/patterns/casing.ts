import type { Mm } from '../base/units.ts'

/**
 * Allowance of a casing folded down over flat elastic: its inner width (elastic + room to thread it + header above it)
 * and the raw edge turned under. 25 mm elastic with 3 mm of room and 6 mm turned under takes 34 mm (common practice).
 */
export function elasticCasing(elastic: Mm, room: Mm = 3, turnUnder: Mm = 6, header: Mm = 0): Mm {
  return elastic + room + header + turnUnder
}
