import type { Garment } from '../../core/garments/index.ts'
import { type CheckDraft, EMPTY_DRAFT, isUnderWay, nextGarment } from './check-draft.ts'
import { draft, pattern, setAside } from './check-state.ts'

/** The draft of a check of a kept garment, for what is being made now. */
export function draftOf(garment: Garment, making: CheckDraft): CheckDraft {
  const { kind, labelSize, measures, traits, opening, outline, flaws, id } = garment
  const { stretch, ...cloth } = garment.cloth
  return {
    ...nextGarment(making),
    ...{ kind, labelSize, measures, traits, opening, outline, flaws, cloth },
    stretch: stretch ?? EMPTY_DRAFT.stretch,
    garment: id,
    step: 'verdict',
  }
}

/** Begins a check of a kept garment; one that is under way is put aside. Gives where to go on. */
export function checkAgain(garment: Garment): string {
  if (isUnderWay(draft.value)) setAside()
  draft.value = draftOf(garment, draft.value)
  return pattern.value ? '/check/verdict' : '/'
}
