import type { Stretch, Surface } from '../base/terms.ts'
import type { Cloth, Garment } from '../garments/garment.ts'
import type { ClearSides } from './cloth-figures.ts'
import { colourWords, fibreNames } from './said-of-cloth.ts'

/** What a garment must be to be shown. Everything absent or null asks nothing. */
export interface StashFilter {
  /** Least stretch; what was never measured does not pass. */
  readonly stretch: Stretch
  readonly structure: Exclude<Cloth['structure'], 'unknown'> | null
  readonly surface: Surface | null
  /** A word of its colour, as `colourWords` gives it. */
  readonly colour: string | null
  /** A fibre in it, as `fibreNames` gives it. */
  readonly fibre: string | null
  readonly washed: boolean | null
  /** Where it lies, word for word. */
  readonly place: string | null
  readonly state: 'free' | 'reserved' | 'used-up' | null
  /** Least free cloth, mm². */
  readonly area: number | null
  /** A free rectangle of at least this, along the grain. */
  readonly clear: ClearSides | null
}

/** Asks nothing, but that a garment is still on the shelf. */
export const NO_FILTER: StashFilter = {
  stretch: { across: 0, along: 0 },
  structure: null,
  surface: null,
  colour: null,
  fibre: null,
  washed: null,
  place: null,
  state: null,
  area: null,
  clear: null,
}

/** What the filter must know of a garment's cloth as it is now; asked for only when it matters. null: not known yet. */
export interface ClothFacts {
  readonly isReserved: boolean
  /** mm² on which nothing is reserved and no flaw lies. */
  freeArea(): number | null
  /** True if some panel has a free rectangle so large. */
  hasClear(sides: ClearSides): boolean | null
}

/** True if the garment is what the filter asks for; null: that hangs on what is not known yet. Cheap questions come first. */
export function passes(garment: Garment, facts: ClothFacts, filter: StashFilter): boolean | null {
  const { cloth, washed, place } = garment
  if (!isInState(garment, facts, filter.state)) return false
  if (filter.structure !== null && cloth.structure !== filter.structure) return false
  if (filter.surface !== null && cloth.surface !== filter.surface) return false
  if (filter.colour !== null && !colourWords(cloth.colour).includes(filter.colour)) return false
  if (filter.fibre !== null && !fibreNames(cloth.fibres).includes(filter.fibre)) return false
  if (filter.washed !== null && washed !== filter.washed) return false
  if (filter.place !== null && place.trim() !== filter.place) return false
  if (!stretchesEnough(cloth.stretch, filter.stretch)) return false
  const area = filter.area === null ? null : facts.freeArea()
  const isLarge = filter.area === null || (area === null ? null : area >= filter.area)
  const isClear = filter.clear === null || facts.hasClear(filter.clear)
  if (isLarge === false || isClear === false) return false
  return isLarge === null || isClear === null ? null : true
}

/** Used-up garments show only when they are asked for. */
function isInState({ usedUp }: Garment, { isReserved }: ClothFacts, state: StashFilter['state']): boolean {
  if (state === 'used-up' || usedUp) return state === 'used-up' && usedUp
  return state === null || isReserved === (state === 'reserved')
}

function stretchesEnough(stretch: Stretch | null, least: Stretch): boolean {
  if (least.across === 0 && least.along === 0) return true
  return stretch !== null && stretch.across >= least.across && stretch.along >= least.along
}

/** How many things the filter asks. */
export function asksOf(filter: StashFilter): number {
  const { stretch, ...others } = filter
  const asked = Object.values(others).filter((value) => value !== null).length
  return asked + (stretch.across > 0 || stretch.along > 0 ? 1 : 0)
}

export const STASH_ORDERS = ['newest', 'name', 'area', 'price', 'stretch', 'place'] as const
export type StashOrder = (typeof STASH_ORDERS)[number]

/**
 * The garments in order: the largest free area, the stretchiest and the cheapest first; names and places by the alphabet, and
 * whatever is unknown last. `newest` leaves them as they come.
 */
export function inOrder(
  garments: readonly Garment[],
  order: StashOrder,
  freeArea: (garment: Garment) => number | null,
): readonly Garment[] {
  switch (order) {
    case 'newest':
      return garments
    case 'name':
      return byText(garments, ({ name }) => name)
    case 'place':
      return byText(garments, ({ place }) => place)
    case 'area':
      return byNumber(garments, (garment) => negated(freeArea(garment)))
    case 'price':
      return byNumber(garments, ({ price }) => price)
    case 'stretch':
      return byNumber(garments, ({ cloth }) => negated(cloth.stretch?.across ?? null))
  }
}

function byNumber(
  garments: readonly Garment[],
  value: (garment: Garment) => number | null,
): readonly Garment[] {
  const known = new Map(garments.map((garment) => [garment, value(garment) ?? Number.POSITIVE_INFINITY]))
  return [...garments].sort((a, b) => compare(known.get(a) as number, known.get(b) as number))
}

function negated(value: number | null): number | null {
  return value === null ? null : -value
}

/** Infinities do not subtract. */
function compare(a: number, b: number): number {
  return a === b ? 0 : a < b ? -1 : 1
}

/** Many times as fast as comparing each two texts anew by the language's rules. */
const alphabet = new Intl.Collator()

function byText(garments: readonly Garment[], text: (garment: Garment) => string): readonly Garment[] {
  const known = new Map(garments.map((garment) => [garment, text(garment).trim()]))
  return [...garments].sort((a, b) => {
    const [one, other] = [known.get(a) as string, known.get(b) as string]
    if (one === '' || other === '') return Number(one === '') - Number(other === '')
    return alphabet.compare(one, other)
  })
}
