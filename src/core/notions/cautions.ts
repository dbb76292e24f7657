import type { Mm, Percent } from '../base/units.ts'
import { neededStretch } from '../cloth/stretch.ts'
import { cutLength } from './needs.ts'
import type { NotionKind, NotionNeed } from './notion.ts'

/** What a ring of elastic must do to let the wearer in. */
export interface RingStretch {
  /** Girth of the ring, joined and relaxed. */
  readonly ring: Mm
  /** Girth that must pass through it. */
  readonly passes: Mm
  readonly stretch: Percent
  /** More than most elastics give. */
  readonly doubtful: boolean
}

/** Most elastics give this much, firm ones little more (common practice). */
export const USUAL_ELASTIC_STRETCH: Percent = 80

/**
 * How far the elastic of a need must stretch in a size: ring × (1 + stretch) ≥ what passes. The ring is the cut length
 * less its overlap; a table does not say the overlap, so its whole length counts. null: nothing need pass, or no figure.
 */
export function ringStretch(need: NotionNeed, size: string): RingStretch | null {
  const passes = need.passes?.[size]
  const cut = cutLength(need.amount, size)
  if (need.kind !== 'elastic' || passes === undefined || cut === null) return null
  const ring = need.amount.form === 'formula' ? cut - need.amount.extra : cut
  if (ring <= 0) return null
  const stretch = neededStretch(passes, ring)
  return { ring, passes, stretch, doubtful: stretch > USUAL_ELASTIC_STRETCH }
}

const CORDS: readonly NotionKind[] = ['cord', 'ribbon']
const SMALL: readonly NotionKind[] = ['ring', 'slide', 'button', 'hook']

/**
 * Which of a pattern's cautions about children its notions bring up: cords and ribbons may catch (16 CFR 1120, EN 14682),
 * small parts may come off. Ids as in the pattern's cautions.
 */
export function notionCautions(
  needs: readonly Pick<NotionNeed, 'kind'>[],
  cautions: readonly string[],
): readonly string[] {
  const has = (kinds: readonly NotionKind[]) => needs.some(({ kind }) => kinds.includes(kind))
  return cautions.filter((id) => (id === 'child-cords' && has(CORDS)) || (id === 'small-parts' && has(SMALL)))
}
