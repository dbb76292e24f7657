import { computed } from '@preact/signals'
import type { Mm, Percent } from '../../core/base/units.ts'
import { settings } from './settings-state.ts'

/** Short side of a bank card, mm: ISO/IEC 7810, ID-1. */
export const CARD_HEIGHT: Mm = 53.98

/** Phones show about 160 CSS dots an inch, whatever CSS says; a guess until a card has been held to the screen. */
const GUESSED_DOTS_PER_MM = 160 / 25.4

export const dotsPerMm = computed(() => settings.value.dotsPerMm ?? GUESSED_DOTS_PER_MM)

/** Lengths of relaxed cloth that are easy to pinch, longest first. */
const RELAXED: readonly Mm[] = [100, 80, 60, 50, 40, 30, 20]

/** The longest relaxed length whose stretch, with room beyond what is needed, still fits the ruler. */
export function relaxedLength(ruler: Mm, need: Percent): Mm {
  const reach = 1 + Math.max(60, need * 1.25) / 100
  return RELAXED.find((relaxed) => relaxed * reach <= ruler) ?? 20
}

/** Stretch in whole per cent, rounded down: (stretched − relaxed) / relaxed × 100. */
export function stretchAt(relaxed: Mm, reached: Mm): Percent {
  return Math.max(0, Math.floor(((reached - relaxed) / relaxed) * 100 + 1e-9))
}
