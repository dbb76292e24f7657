import type { Remedy, RemedyStep } from '../../core/planning/remedies/remedy.ts'
import type { CheckDraft } from './check-draft.ts'

/** The steps that cost something: one whose cost fell away in the lay is no change. */
export function stepsOf({ steps }: Remedy): readonly RemedyStep[] {
  return steps.filter((step) => !('pieces' in step) || step.pieces.length > 0)
}

/** What the remedy changes in the check; null where the check has no place for it, such as a narrower seam. */
export function changeFor(before: CheckDraft, remedy: Remedy): Partial<CheckDraft> | null {
  const steps = stepsOf(remedy)
  if (steps.length === 0) return null
  let after = before
  for (const step of steps) {
    const change = changeOf(after, step)
    if (change === null) return null
    after = { ...after, ...change }
  }
  const keys = Object.keys(after) as (keyof CheckDraft)[]
  return Object.fromEntries(keys.filter((key) => after[key] !== before[key]).map((key) => [key, after[key]]))
}

function changeOf(
  { flaws, ownHem, traits, otherRoles }: CheckDraft,
  step: RemedyStep,
): Partial<CheckDraft> | null {
  switch (step.kind) {
    case 'smaller-size':
      return { size: step.size }
    case 'other-version':
      return { version: step.version }
    case 'unpick':
      return { opening: 'unpicked' }
    case 'own-hem':
      return { ownHem: [...ownHem, ...step.pieces] }
    case 'mend-flaw':
      return { flaws: flaws.filter(({ id }) => id !== step.flaw) }
    case 'take-off':
      return { traits: { ...traits, [step.trait]: false } }
    case 'other-garment':
      return step.role === null ? null : { otherRoles: [...otherRoles, step.role] }
    default:
      return null
  }
}
