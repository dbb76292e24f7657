import { useLocation } from 'wouter-preact'
import type { Pattern } from '../../../core/patterns/index.ts'
import { PiecesSmall } from '../../drawing/pieces-drawing.tsx'
import { Button } from '../../parts/button.tsx'
import { CardLink } from '../../parts/card.tsx'
import { Screen } from '../../parts/screen.tsx'
import { newPattern } from '../../state/edit-pattern.ts'
import { everyPattern, faultsOf, isOwn, patternShelf } from '../../state/patterns-state.ts'
import { patternName } from '../../words/pattern-words.ts'
import { words } from '../../words/words.ts'
import '../../parts/field.css'

/** Every pattern there is, and the way to type in one's own. */
export function PatternsScreen() {
  const [, go] = useLocation()
  const unreadable = patternShelf.unreadable.value.length
  return (
    <Screen title={words.patterns.title}>
      <section class="stack">
        <Button look="main" icon="plus" wide onPress={() => go(`/patterns/${newPattern()}/edit`)}>
          {words.patterns.add}
        </Button>
        <p class="field-hint">{words.patterns.addHint}</p>
      </section>
      <section aria-label={words.patterns.list}>
        <ul class="stack">
          {everyPattern().map((pattern) => (
            <li key={pattern.id}>
              <PatternCard pattern={pattern} />
            </li>
          ))}
        </ul>
      </section>
      {unreadable > 0 && <p class="soft">{words.patterns.unreadable(unreadable)}</p>}
    </Screen>
  )
}

function PatternCard({ pattern }: { pattern: Pattern }) {
  const unfinished = faultsOf(pattern).length > 0
  return (
    <CardLink
      to={unfinished ? `/patterns/${pattern.id}/edit` : `/patterns/${pattern.id}`}
      picture={<PiecesSmall pattern={pattern} />}
      title={patternName(pattern)}
    >
      {isOwn(pattern) && <span class="tag">{words.patterns.yours}</span>}
      {unfinished && <span class="tag tag-open">{words.patterns.unfinished}</span>}
      <span class="card-text">
        {words.patterns.sizes(pattern.sizes.length)}, {words.patterns.pieces(pattern.pieces.length)}
      </span>
    </CardLink>
  )
}
