import { useEffect } from 'preact/hooks'
import { ClothTaken, LayNoLongerHolds, NoLongerThere } from '../../../storage/cloth/refusals.ts'
import { Notice } from '../../parts/notice.tsx'
import { clothRefusal } from '../../state/cloth-state.ts'
import { projectWords } from '../../words/en/projects.ts'

/** Why what was asked of this screen a moment ago could not be reserved. */
export function Refused() {
  // What another screen was refused is no news here.
  useEffect(() => {
    clothRefusal.value = null
  }, [])
  const refusal = clothRefusal.value
  if (refusal === null) return null
  return (
    <Notice icon="doubt">
      {refusal instanceof ClothTaken
        ? projectWords.refused.taken
        : refusal instanceof LayNoLongerHolds
          ? projectWords.refused.holds
          : refusal instanceof NoLongerThere
            ? projectWords.refused.gone
            : refusal.message}
    </Notice>
  )
}
