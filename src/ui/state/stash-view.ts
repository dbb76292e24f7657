import { computed, effect, signal } from '@preact/signals'
import type { Garment } from '../../core/garments/index.ts'
import { colourWords, fibreNames, saidOf } from '../../core/stash/said-of-cloth.ts'
import {
  asksOf,
  type ClothFacts,
  inOrder,
  NO_FILTER,
  passes,
  type StashFilter,
  type StashOrder,
} from '../../core/stash/stash-filter.ts'
import { inSlices } from '../../storage/in-slices.ts'
import { newPlace } from '../parts/list-place.ts'
import { stashWords } from '../words/en/stash.ts'
import { garmentMatches, knownWords, wordsOf } from '../words/garment-words.ts'
import { figuresCome, figuresNow, followFigures, hasClearNow } from './cloth-figures.ts'
import { garments } from './stash-state.ts'
import { yieldAsk, yieldParts } from './stash-yield.ts'
import { isReserved } from './taken-now.ts'

/** How she looks at the stash; it stays while she looks at a garment. */
export const searched = signal('')
export const stashFilter = signal<StashFilter>(NO_FILTER)
export const stashOrder = signal<StashOrder>('newest')
export const listPlace = newPlace()

/** The garments that pass the search and the filter as far as is known, and how many are not known yet. */
const sifted = computed(() => {
  const filter = stashFilter.value
  const words = wordsOf(searched.value)
  if (asksOfCloth(filter)) void figuresCome.value
  const found: Garment[] = []
  const unknown: Garment[] = []
  for (const garment of garments.value) {
    if (!garmentMatches(garment, words)) continue
    const passed = passes(garment, factsOf(garment), filter)
    if (passed !== false) (passed ? found : unknown).push(garment)
  }
  return { found, unknown }
})

/** In order. By free cloth they are once that of all is known: a list that moves under the finger is no help. */
export const foundGarments = computed(() => {
  const { found } = sifted.value
  return inOrder(found, missing.value > 0 ? 'newest' : stashOrder.value, (garment) => areaOf(garment))
})

/** Of how many garments it must still be worked out what cloth is free, before the list is whole and in order. */
export const missing = computed(() => {
  const { found, unknown } = sifted.value
  if (stashOrder.value !== 'area') return unknown.length
  void figuresCome.value
  return unknown.length + found.filter((garment) => figuresNow(garment) === null).length
})

/** Garments whose cards stand on the screen. */
export const shownGarments = signal<readonly Garment[]>([])

/** What the list hangs on before the rest. */
const toWorkOut = computed(() => [...sifted.value.unknown, ...sifted.value.found])

/** Has the cloth of all that is asked for worked out, of what is seen first, and makes ready for a search. */
export function followCloth(): () => void {
  const ends = [
    followFigures(() => ({
      first: shownGarments.value,
      others: toWorkOut.value,
      clear: stashFilter.value.clear,
    })),
    effect(() => void inSlices(garments.value, knownWords)),
  ]
  return () => {
    for (const end of ends) end()
  }
}

function factsOf(garment: Garment): ClothFacts {
  return {
    isReserved: isReserved(garment),
    freeArea: () => areaOf(garment),
    hasClear: (sides) => hasClearNow(garment, sides),
  }
}

function areaOf(garment: Garment): number | null {
  return figuresNow(garment)?.area ?? null
}

function asksOfCloth({ area, clear }: StashFilter): boolean {
  return area !== null || clear !== null
}

/** What that comes to with the filter by yield. */
export const parts = computed(() => (yieldAsk.value ? yieldParts(foundGarments.value) : null))

export const listedGarments = computed(() => parts.value?.yields ?? foundGarments.value)

/** How many things the filter asks. */
export const asks = computed(() => asksOf(stashFilter.value) + (yieldAsk.value ? 1 : 0))

export function askNothing(): void {
  look({ filter: NO_FILTER })
  yieldAsk.value = null
}

export function look(part: { text?: string; filter?: Partial<StashFilter>; order?: StashOrder }): void {
  listPlace.top = 0
  if (part.text !== undefined) searched.value = part.text
  if (part.filter) stashFilter.value = { ...stashFilter.value, ...part.filter }
  if (part.order) stashOrder.value = part.order
}

/** What can be chosen of places, fibres and colours: what some garment has, with how many there are. */
export const placesInUse = computed(() =>
  [...saidOf(garments.value.map(({ place }) => namesOf(place)))].sort((a, b) => a.text.localeCompare(b.text)),
)
export const fibresInUse = computed(() => saidOf(garments.value.map(({ cloth }) => fibreNames(cloth.fibres))))
export const coloursInUse = computed(() =>
  saidOf(garments.value.map(({ cloth }) => colourWords(cloth.colour).filter((word) => !isJoining(word)))),
)

function namesOf(place: string): readonly string[] {
  return place.trim() === '' ? [] : [place.trim()]
}

function isJoining(word: string): boolean {
  return (stashWords.joining as readonly string[]).includes(word)
}
