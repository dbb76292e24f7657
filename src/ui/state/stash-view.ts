import { computed, signal } from '@preact/signals'
import { colourWords, fibreNames, saidOf } from '../../core/stash/said-of-cloth.ts'
import {
  asksOf,
  inOrder,
  NO_FILTER,
  passes,
  type StashFilter,
  type StashOrder,
} from '../../core/stash/stash-filter.ts'
import { stashWords } from '../words/en/stash.ts'
import { garmentMatches } from '../words/garment-words.ts'
import { clothFacts, freeAreaNow } from './cloth-now.ts'
import { garments } from './stash-state.ts'
import { yieldAsk, yieldParts } from './stash-yield.ts'

/** How she looks at the stash; it stays while she looks at a garment. */
export const searched = signal('')
export const stashFilter = signal<StashFilter>(NO_FILTER)
export const stashOrder = signal<StashOrder>('newest')

/** Garments shown at a time: more than a thumb scrolls past, fewer than a phone draws at once. */
const PAGE = 24
export const pages = signal(1)

/** The garments that pass the search and the filter, in order. */
export const foundGarments = computed(() => {
  const filter = stashFilter.value
  const found = garments.value.filter(
    (garment) => passes(garment, clothFacts(garment), filter) && garmentMatches(garment, searched.value),
  )
  return inOrder(found, stashOrder.value, freeAreaNow)
})

/** What that comes to with the filter by yield. */
export const parts = computed(() => (yieldAsk.value ? yieldParts(foundGarments.value) : null))

/** Those to list, and so many of them as are shown. */
export const listedGarments = computed(() => parts.value?.yields ?? foundGarments.value)
export const shownGarments = computed(() => listedGarments.value.slice(0, pages.value * PAGE))

/** How many things the filter asks. */
export const asks = computed(() => asksOf(stashFilter.value) + (yieldAsk.value ? 1 : 0))

export function askNothing(): void {
  look({ filter: NO_FILTER })
  yieldAsk.value = null
}

export function look(part: { text?: string; filter?: Partial<StashFilter>; order?: StashOrder }): void {
  pages.value = 1
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
