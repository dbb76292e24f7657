import { computed, signal } from '@preact/signals'
import {
  inOrder,
  NO_FILTER,
  passes,
  type StashFilter,
  type StashOrder,
} from '../../core/stash/stash-filter.ts'
import { garmentMatches } from '../words/garment-words.ts'
import { clothFacts, freeAreaNow } from './cloth-now.ts'
import { garments } from './stash-state.ts'

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

export const shownGarments = computed(() => foundGarments.value.slice(0, pages.value * PAGE))

export function look(part: { text?: string; filter?: Partial<StashFilter>; order?: StashOrder }): void {
  pages.value = 1
  if (part.text !== undefined) searched.value = part.text
  if (part.filter) stashFilter.value = { ...stashFilter.value, ...part.filter }
  if (part.order) stashOrder.value = part.order
}

/** Every place that some garment lies in, by the alphabet. */
export const placesInUse = computed(() => {
  const named = garments.value.map(({ place }) => place.trim()).filter((place) => place !== '')
  return [...new Set(named)].sort((a, b) => a.localeCompare(b))
})
