import { computed, signal } from '@preact/signals'
import type { Garment } from '../../core/garments/garment.ts'
import { clothMatch } from '../../core/planning/cloth-match.ts'
import type { DonorQuestion } from '../../core/planning/donors/asked.ts'
import type { DonorVerdict } from '../../core/planning/donors/row.ts'
import { threeWays } from '../../core/planning/donors/three-ways.ts'
import { patternById } from './patterns-state.ts'
import { settings } from './settings-state.ts'
import { garmentKey } from './stash-yield-key.ts'
import { recordsOf } from './taken-now.ts'

/** What a garment shall yield. */
export interface YieldAsk {
  /** Id. */
  readonly pattern: string
  readonly version: string
  readonly size: string
  /** Id of the one piece wanted; null: all that the version takes. */
  readonly piece: string | null
}

/** null: the stash is not filtered by what it yields. */
export const yieldAsk = signal<YieldAsk | null>(null)

/** `waiting`: the pattern is on its way. */
export type LookState = 'waiting' | 'running' | 'stopped' | 'ended' | 'failed'
export const lookState = signal<LookState>('ended')

/** What is known, by `garmentKey`, of the question in hand. */
export const verdicts = signal<ReadonlyMap<string, DonorVerdict>>(new Map())

/** Garments, by `garmentKey`, that yield it only if their stretch was measured right, or too low. */
export const hangOnStretch = signal<ReadonlySet<string>>(new Set())

// Each by itself, so that the question stays the same when other patterns come or other settings change.
const pattern = computed(() => patternById(yieldAsk.value?.pattern ?? null))
const clearance = computed(() => settings.value.clearance)
const stretchDoubt = computed(() => settings.value.stretchDoubt)

export const yieldQuestion = computed((): DonorQuestion | null => {
  if (!yieldAsk.value || !pattern.value) return null
  const { version, size, piece } = yieldAsk.value
  const only = piece === null ? {} : { piece }
  return {
    pattern: pattern.value,
    version,
    size,
    roles: null,
    clearance: clearance.value,
    stretchDoubt: stretchDoubt.value,
    colours: {},
    ...only,
  }
})

/** Garments parted by what they yield, as far as is known; those whose cloth is made otherwise than it is for come after the others. */
export function yieldParts(garments: readonly Garment[]) {
  const state = lookState.value
  const others = garments.filter(isOtherCloth)
  const ordered =
    others.length > 0 ? [...garments.filter((each) => !isOtherCloth(each)), ...others] : garments
  return threeWays(ordered, verdictOf, state !== 'running' && state !== 'waiting')
}

/** True if the stash is filtered by a pattern that is for cloth made otherwise. */
export function isOtherCloth(garment: Garment): boolean {
  const asked = yieldQuestion.value
  return asked !== null && clothMatch(asked.pattern, garment)?.as === 'other'
}

/** True if what the stash is filtered by hangs on how far this garment stretches. */
export function hangsOnStretch(garment: Garment): boolean {
  return yieldAsk.value !== null && hangOnStretch.value.has(garmentKey(garment, recordsOf(garment)))
}

function verdictOf(garment: Garment): DonorVerdict | null {
  return verdicts.value.get(garmentKey(garment, recordsOf(garment))) ?? null
}
