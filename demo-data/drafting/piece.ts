import type { Stretch } from '../../src/core/base/terms.ts'
import type { Pattern, PatternPiece, PieceShape } from '../../src/core/patterns/pattern.ts'
import { seamAllowance } from '../../src/core/patterns/seams.ts'

export const RIGID: Stretch = { across: 0, along: 0 }

/** Allowances by what is sewn there. */
export const KNIT_SEAM = seamAllowance('overlocked')
export const KNIT_HEM = seamAllowance('knit-hem')
export const LINING_SEAM = seamAllowance('lining')
export const NARROW_HEM = seamAllowance('narrow-hem')

/** What most pieces are: one copy of the main cloth, along the grain, needed. */
export function piece(
  id: string,
  name: string,
  shapes: Readonly<Record<string, PieceShape>>,
  unlike: Partial<PatternPiece> = {},
): PatternPiece {
  return {
    id,
    name,
    role: 'main',
    copies: 1,
    mirror: 'none',
    grain: 'along',
    tilt: 2,
    needs: RIGID,
    surface: 'as-panel',
    optional: false,
    ...unlike,
    shapes,
  }
}

/** Draws one shape a size. */
export function inSizes<Size extends string>(
  sizes: readonly Size[],
  draw: (size: Size) => PieceShape,
): Readonly<Record<string, PieceShape>> {
  return Object.fromEntries(sizes.map((size) => [size, draw(size)]))
}

/**
 * What makers fall back on when cloth is short (common practice): a narrow overlocked seam, a trimmed plain one, a hem
 * turned once on knits and twice on wovens, and a lean off the grain that does not twist a loose garment yet.
 */
export const LEAST_KNIT_SEAM = 5
export const LEAST_WOVEN_SEAM = 6
export const LEAST_HEM = 12
export const MOST_TILT = 5

/** Cautions of every pattern cut from second-hand clothes with blades and an iron. */
export const WORKSHOP = ['unwashed', 'blades'] as const

/** Clearance by hand shears: 3 to 5 mm, more on knits that curl (common practice). */
export const WOVEN_GAP: Pattern['clearance'] = 3
export const KNIT_GAP: Pattern['clearance'] = 5
