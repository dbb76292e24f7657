import { computed, signal } from '@preact/signals'
import { kindOf } from '../../core/garments/index.ts'
import type { GarmentKind } from '../../core/garments/kind.ts'
import { type CheckDraft, EMPTY_DRAFT, nextGarment } from './check-draft.ts'
import { type CheckQuery, queryOf } from './check-query.ts'
import { patternById } from './patterns-state.ts'
import { settings } from './settings-state.ts'

/** What she has told the check so far. */
export const draft = signal<CheckDraft>(EMPTY_DRAFT)

/** The draft she walked away from last: one tap brings it back. */
export const leftDraft = signal<CheckDraft | null>(null)

export const kind = computed<GarmentKind | null>(() =>
  draft.value.kind === null ? null : kindOf(draft.value.kind),
)

export const pattern = computed(() => patternById(draft.value.pattern))

export const query = computed<CheckQuery>(() =>
  queryOf(draft.value, pattern.value, kind.value, settings.value),
)

/** Changes the draft. Nothing else writes it while a check is under way. */
export function tell(change: Partial<CheckDraft>): void {
  draft.value = { ...draft.value, ...change }
}

/** Puts the draft aside and begins the next garment, with what to make kept. */
export function setAside(): void {
  leftDraft.value = draft.value
  draft.value = nextGarment(draft.value)
}

/** Begins the next garment, with what to make kept; this one is in the stash. */
export function beginNext(): void {
  leftDraft.value = null
  draft.value = nextGarment(draft.value)
}

export function bringBack(): void {
  if (leftDraft.value === null) return
  draft.value = leftDraft.value
  leftDraft.value = null
}
