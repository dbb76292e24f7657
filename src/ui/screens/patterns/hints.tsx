import type { Pattern } from '../../../core/patterns/index.ts'
import { Icon } from '../../parts/icon.tsx'
import { faultsOf } from '../../state/patterns-state.ts'
import { hintsOf } from '../../words/pattern-words.ts'
import { words } from '../../words/words.ts'
import './patterns.css'

/** What is still missing before a garment can be checked for the pattern. Nothing when nothing is. */
export function Hints({ pattern }: { pattern: Pattern }) {
  const hints = hintsOf(pattern, faultsOf(pattern))
  if (hints.length === 0) return null
  return (
    <section class="hints" aria-labelledby="hints-title">
      <Icon name="doubt" size={22} />
      <div>
        <h2 id="hints-title">{words.patterns.hints}</h2>
        <ul>
          {hints.map((hint) => (
            <li key={hint}>{hint}</li>
          ))}
        </ul>
      </div>
    </section>
  )
}
