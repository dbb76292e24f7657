import type { Pattern } from '../../../core/patterns/pattern.ts'
import { ButtonLink } from '../../parts/button.tsx'
import type { CheckDraft } from '../../state/check-draft.ts'
import { words } from '../../words/words.ts'

/** What she is making, the last one first, with the way to change it. */
export function MakeCard({ pattern, draft }: { pattern: Pattern; draft: CheckDraft }) {
  const version = pattern.versions.find(({ id }) => id === draft.version)
  return (
    <section class="make-card" aria-label={words.check.make}>
      <div class="grow">
        <p class="soft">{words.check.make}</p>
        <p class="make-name">{pattern.name}</p>
        <p>
          {words.check.sizeIs(draft.size)}
          {version && pattern.versions.length > 1 && `, ${version.name}`}
        </p>
      </div>
      <ButtonLink to="/check/make">{words.check.change}</ButtonLink>
    </section>
  )
}
