import type { Mm } from '../../base/units.ts'

/** A garment that a project is cut from, and how much of it each project takes. */
export interface UsedDonor {
  /** In the user's money; null: unknown. */
  readonly price: number | null
  /** Area of this project's pieces on it, mm². */
  readonly area: number
  /** Area of all projects' pieces on it, this one's included, mm². */
  readonly areaOfAll: number
  readonly gramsPerSquareMetre: number | null
}

export interface Savings {
  /** What the donors cost: a garment that serves several projects is paid by each for its share of what is cut. null: a price is unknown. */
  readonly spent: number | null
  /** What the same pieces would have cost in new cloth; null: not asked, or not to be cut from cloth of that width. */
  readonly newCloth: number | null
  /** Cloth kept in use, mm²: the area of the pieces. */
  readonly area: number
  /** And by weight, of the donors whose weight is known; null: of none. */
  readonly grams: number | null
  /** True if the weight leaves out a donor. */
  readonly gramsPartly: boolean
}

const SQUARE_MM_PER_SQUARE_METRE = 1e6
const MM_PER_METRE = 1000

/** What a project saves. `newLengths`: of new cloth, one a role; null where a piece is too wide for it. */
export function savings(
  donors: readonly UsedDonor[],
  newLengths: readonly (Mm | null)[],
  pricePerMetre: number | null,
): Savings {
  const weighed = donors.filter(({ gramsPerSquareMetre }) => gramsPerSquareMetre !== null)
  return {
    spent: sumOrUnknown(donors.map(({ price, area, areaOfAll }) => price && (price * area) / areaOfAll)),
    newCloth:
      pricePerMetre === null
        ? null
        : sumOrUnknown(newLengths.map((length) => length && (length / MM_PER_METRE) * pricePerMetre)),
    area: donors.reduce((sum, { area }) => sum + area, 0),
    grams: weighed.length === 0 ? null : weighed.reduce((sum, donor) => sum + gramsOf(donor), 0),
    gramsPartly: weighed.length < donors.length,
  }
}

function gramsOf({ area, gramsPerSquareMetre }: UsedDonor): number {
  return (area / SQUARE_MM_PER_SQUARE_METRE) * (gramsPerSquareMetre ?? 0)
}

function sumOrUnknown(amounts: readonly (number | null)[]): number | null {
  let sum = 0
  for (const amount of amounts) {
    if (amount === null) return null
    sum += amount
  }
  return sum
}
