import type { ClothMake } from '../../core/base/terms.ts'
import type { ClothMatch } from '../../core/planning/cloth-match.ts'
import { writeAny } from './format.ts'
import { words } from './words.ts'

/** How cloth is made as the pattern has it, and as it is. */
export interface MatchWords {
  /** Only where it is not as the pattern has it. */
  readonly headline: string | null
  readonly detail: string
}

/** null: the pattern does not say, or the cloth is said to be as it is meant. */
export function matchWords(match: ClothMatch | null | undefined): MatchWords | null {
  if (!match || (match.as === 'meant' && !match.assumed)) return null
  const texts = words.verdict.match
  const meant = meantWords(match.meant)
  const made = match.makes[0]
  if (match.as === 'not-said' || made === undefined) return { headline: null, detail: texts.notSaid(meant) }
  if (match.as === 'meant') return { headline: null, detail: texts.assumed(texts.made[made]) }
  const detail = match.assumed
    ? texts.otherAssumed(meant, texts.madeSome[made])
    : texts.other(meant, texts.made[made])
  return { headline: texts.headline(meant), detail }
}

/** “wovens or stretch wovens”. */
export function meantWords(meant: readonly ClothMake[]): string {
  return writeAny(meant.map((make) => words.verdict.match.madeSome[make]))
}
