import { useEffect } from 'preact/hooks'
import { useLocation } from 'wouter-preact'
import type { Garment } from '../../../core/garments/index.ts'
import type { Pattern } from '../../../core/patterns/index.ts'
import type { YieldRow } from '../../../core/planning/donors/yields.ts'
import { Button } from '../../parts/button.tsx'
import { CardButton } from '../../parts/card.tsx'
import { checkAgain } from '../../state/check-again.ts'
import { tell } from '../../state/check-state.ts'
import { chooseMake } from '../../state/choose-make.ts'
import { allPatterns } from '../../state/patterns-state.ts'
import { searchYields, stopYields, yieldSearch } from '../../state/yields.ts'
import { stashWords } from '../../words/en/stash.ts'
import { writeList } from '../../words/format.ts'
import { meantWords } from '../../words/match-words.ts'
import { patternName } from '../../words/pattern-words.ts'
import { words } from '../../words/words.ts'

const texts = stashWords.yields

/** The size, and what it hangs on. */
function sizeWords(size: string, rows: readonly YieldRow[] | undefined): string {
  const stretch = rows?.find((row) => row.size === size)?.stretch
  return stretch && stretch !== 'sure' ? texts.hanging[stretch](size) : size
}

/** What the garment would yield of all her patterns, sizes and versions. */
export function YieldsSection({ garment }: { garment: Garment }) {
  const [, go] = useLocation()
  // Shipped patterns come as they are asked for.
  const patterns = allPatterns()
  useEffect(() => stopYields, [garment.id])
  const search = yieldSearch.value?.garment === garment.id ? yieldSearch.value : null
  const check = (pattern: Pattern, version: string, size: string) => {
    chooseMake(pattern)
    tell({ version, size })
    go(checkAgain(garment))
  }
  return (
    <section class="stack" aria-labelledby="yields">
      <h2 id="yields">{texts.title}</h2>
      {search === null && (
        <Button icon="patterns" onPress={() => void searchYields(garment)}>
          {texts.look}
        </Button>
      )}
      {search && (
        <p class="soft" role="status">
          {search.state === 'running' ? texts.looking(search.rows.length) : texts[search.state]}
        </p>
      )}
      {search?.state === 'running' && (
        <Button icon="stop" onPress={stopYields}>
          {words.verdict.stop}
        </Button>
      )}
      <ul class="stack">
        {patterns.flatMap((pattern) =>
          pattern.versions.flatMap((version) => {
            const rows = search?.rows.filter(
              (row) => row.pattern === pattern.id && row.version === version.id && row.verdict === 'fits',
            )
            const sizes = pattern.sizes.filter((size) => rows?.some((row) => row.size === size))
            const largest = sizes.at(-1)
            if (largest === undefined) return []
            return [
              <li key={`${pattern.id} ${version.id}`}>
                <CardButton title={patternName(pattern)} onPress={() => check(pattern, version.id, largest)}>
                  <span class="card-text">
                    {texts.sizes(
                      pattern.versions.length > 1 ? version.name : null,
                      writeList(sizes.map((size) => sizeWords(size, rows))),
                    )}
                  </span>
                  {rows?.some(({ match }) => match?.as === 'other') && (
                    <span class="card-text">{texts.otherCloth(meantWords(pattern.cloths ?? []))}</span>
                  )}
                </CardButton>
              </li>,
            ]
          }),
        )}
      </ul>
      {search?.state === 'ended' && !search.rows.some(({ verdict }) => verdict === 'fits') && (
        <p>{texts.none}</p>
      )}
    </section>
  )
}
