import { ButtonLink } from '../../parts/button.tsx'
import { Screen } from '../../parts/screen.tsx'
import { isShipped } from '../../state/patterns-state.ts'
import { words } from '../../words/words.ts'

/** In place of a pattern that is not there, or not there yet. */
export function PatternGone({ id }: { id: string }) {
  if (isShipped(id)) return <p class="loading soft">{words.shell.loading}</p>
  return (
    <Screen title={words.patterns.gone} back="/patterns">
      <ButtonLink look="main" to="/patterns">
        {words.patterns.toAll}
      </ButtonLink>
    </Screen>
  )
}
