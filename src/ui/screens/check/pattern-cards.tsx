import { useLocation } from 'wouter-preact'
import { Icon } from '../../parts/icon.tsx'
import { chooseMake } from '../../state/choose-make.ts'
import { allPatterns } from '../../state/patterns-state.ts'
import { words } from '../../words/words.ts'

/** For the first time: every pattern there is, to choose what to make. */
export function PatternCards() {
  const [, go] = useLocation()
  const patterns = allPatterns()
  return (
    <section class="stack" aria-labelledby="make-title">
      <h2 id="make-title">{words.check.chooseMake}</h2>
      {patterns.length === 0 && <p class="soft">{words.check.noPatterns}</p>}
      <ul class="stack">
        {patterns.map((pattern) => (
          <li key={pattern.id}>
            <button
              type="button"
              class="pattern-card"
              onClick={() => {
                chooseMake(pattern)
                go('/check/make')
              }}
            >
              <span class="grow">
                <span class="pattern-name">{pattern.name}</span>
                <span class="pattern-about">{pattern.about}</span>
              </span>
              <Icon name="onward" />
            </button>
          </li>
        ))}
      </ul>
    </section>
  )
}
