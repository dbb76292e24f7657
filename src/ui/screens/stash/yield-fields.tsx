import type { Pattern } from '../../../core/patterns/index.ts'
import { Picker } from '../../parts/picker.tsx'
import { draft } from '../../state/check-state.ts'
import { allPatterns, patternById } from '../../state/patterns-state.ts'
import { type YieldAsk, yieldAsk } from '../../state/stash-yield.ts'
import { stashWords } from '../../words/en/stash.ts'
import { patternName } from '../../words/pattern-words.ts'
import { isChosen, yieldChoices } from '../../words/yield-words.ts'

const texts = stashWords.wouldYield

/** What a garment shall yield: of a pattern one piece, or all that a version takes, in a size. */
export function YieldFields() {
  const ask = yieldAsk.value
  const pattern = patternById(ask?.pattern ?? null)
  const pick = (id: string) => {
    const picked = allPatterns().find((each) => each.id === id)
    yieldAsk.value = picked ? firstAsk(picked) : null
  }
  return (
    <div class="field-pair">
      <Picker
        id="filter-pattern"
        label={texts.title}
        hint={texts.hint}
        value={ask?.pattern ?? ''}
        options={[
          { value: '', label: texts.noMatter },
          ...allPatterns().map((each) => ({ value: each.id, label: patternName(each) })),
        ]}
        onPick={pick}
      />
      {ask && pattern && <OfPattern ask={ask} pattern={pattern} />}
    </div>
  )
}

function OfPattern({ ask, pattern }: { ask: YieldAsk; pattern: Pattern }) {
  const choices = yieldChoices(pattern)
  const chosen = choices.findIndex((choice) => isChosen(choice, ask))
  const choose = (value: string) => {
    const choice = choices[Number(value)]
    if (choice) yieldAsk.value = { ...ask, version: choice.version, piece: choice.piece }
  }
  return (
    <>
      <Picker
        id="filter-piece"
        label={texts.piece}
        value={`${chosen}`}
        options={choices.map(({ label }, k) => ({ value: `${k}`, label }))}
        onPick={choose}
      />
      <Picker
        id="filter-size"
        label={texts.size}
        value={ask.size}
        options={pattern.sizes.map((size) => ({ value: size, label: size }))}
        onPick={(size) => (yieldAsk.value = { ...ask, size })}
      />
    </>
  )
}

/** All of it, in the size that she checks for if it is this pattern, else in the middle one. */
function firstAsk({ id, sizes, versions }: Pattern): YieldAsk {
  const { pattern, size } = draft.peek()
  const usual = pattern === id && sizes.includes(size) ? size : sizes[Math.floor(sizes.length / 2)]
  return { pattern: id, version: versions[0]?.id ?? '', size: usual ?? '', piece: null }
}
