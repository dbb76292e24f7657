import type { ClothMake } from '../base/terms.ts'
import type { Garment } from '../garments/garment.ts'
import { type MadeAs, madeAs } from '../garments/usual-make.ts'
import type { Pattern } from '../patterns/pattern.ts'

/**
 * Whether a cloth is made as the pattern's maker means it to be. `other` decides nothing about the lay: whether a knit will do for
 * what is meant for wovens is hers to say, but she must be told.
 */
export interface ClothMatch {
  readonly as: 'meant' | 'not-said' | 'other'
  readonly meant: readonly ClothMake[]
  readonly makes: readonly ClothMake[]
  /** `makes` is what such garments usually are; nobody said it of this one. */
  readonly assumed: boolean
}

/** null: the pattern does not say what it is for. */
export function clothMatch(
  { cloths: meant = [] }: Pick<Pattern, 'cloths'>,
  garment: Pick<Garment, 'kind' | 'cloth'>,
): ClothMatch | null {
  return matchOf(meant, madeAs(garment))
}

/** The same of a cloth that is known by how it is made only. */
export function matchOf(meant: readonly ClothMake[], { makes, assumed }: MadeAs): ClothMatch | null {
  if (meant.length === 0) return null
  const as = makes.length === 0 ? 'not-said' : makes.some((make) => meant.includes(make)) ? 'meant' : 'other'
  return { as, meant, makes, assumed }
}
