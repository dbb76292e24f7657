import { MM_PER_INCH, type Mm } from '../base/units.ts'
import { elasticCasing } from './casing.ts'

/**
 * Ways to finish an edge, and what each uses up outside the seam line: `parts` from the seam line outward, whose sum is
 * the allowance. Names are in ui/words under the same id. Values are common practice unless a source is given; a
 * pattern may ask for others.
 */
export interface SeamType {
  readonly id: string
  readonly use: 'seam' | 'hem' | 'casing'
  readonly parts: readonly Mm[]
}

/** 5/8 in, the usual allowance of patterns in inches; 0.875 mm an edge more than the metric 15 mm. */
const FIVE_EIGHTHS = (5 / 8) * MM_PER_INCH

export const SEAM_TYPES = [
  /** Finished edge or raw edge of a cloth that does not fray. */
  { id: 'none', use: 'seam', parts: [0] },
  /** Knits, sewn and trimmed in one pass: 6 mm (1/4 in). */
  { id: 'overlocked', use: 'seam', parts: [6] },
  /** Necks, collars, linings: 10 mm (3/8 in). */
  { id: 'lining', use: 'seam', parts: [10] },
  /** Bags, toys, cushions: 12 mm (1/2 in). */
  { id: 'craft', use: 'seam', parts: [12] },
  { id: 'woven', use: 'seam', parts: [15] },
  { id: 'woven-inch', use: 'seam', parts: [FIVE_EIGHTHS] },
  /**
   * Two passes: wrong sides together 3/8 in from the raw edge, then 1/4 in from the fold; the first is trimmed to less
   * than the second. Oklahoma Cooperative Extension Service, 4-H Fabrics & Fashions Construction Cards, Intermediate:
   * 3/8 + 1/4 = 5/8 in. In metric 6 + 9 = 15.
   */
  { id: 'french', use: 'seam', parts: [6, 9] },
  { id: 'french-inch', use: 'seam', parts: [MM_PER_INCH / 4, (3 / 8) * MM_PER_INCH] },
  /** Sewn at 15 mm, the under layer trimmed, the upper folded over it. */
  { id: 'flat-felled', use: 'seam', parts: [15] },
  /** Curved or circular hems, turned twice: 2 × 6 mm. */
  { id: 'narrow-hem', use: 'hem', parts: [6, 6] },
  /** Knits, turned once and cover- or twin-stitched: 20 to 25 mm. */
  { id: 'knit-hem', use: 'hem', parts: [20] },
  /** Wovens, depth and turn: 25 + 6 = 31 mm. */
  { id: 'woven-hem', use: 'hem', parts: [25, 6] },
  /** Children's clothes, to let down: 50 to 75 mm and the turn. */
  { id: 'growing-hem', use: 'hem', parts: [50, 6] },
  { id: 'casing-10', use: 'casing', parts: [elasticCasing(10)] },
  { id: 'casing-25', use: 'casing', parts: [elasticCasing(25)] },
] as const satisfies readonly SeamType[]

export type SeamTypeId = (typeof SEAM_TYPES)[number]['id']

/** What the seam type uses up outside the seam line. */
export function seamAllowance(id: SeamTypeId): Mm {
  const type: SeamType | undefined = SEAM_TYPES.find((one) => one.id === id)
  if (!type) throw new Error(`no seam type ${id}`)
  return type.parts.reduce((sum, part) => sum + part, 0)
}
