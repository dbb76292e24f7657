import type { ClothMake } from '../../../core/base/terms.ts'
import type { MeasuredKind } from '../../../core/garments/index.ts'
import { IconButton } from '../../parts/button.tsx'
import { givenNow, removeThing, underWay, workKey } from '../../state/look-for.ts'
import type { Figures, LookedFor } from '../../state/look-for-list.ts'
import { patternById } from '../../state/patterns-state.ts'
import { settings } from '../../state/settings-state.ts'
import { lookForWords } from '../../words/en/look-for.ts'
import { writeList } from '../../words/format.ts'
import { figuresWords, stretchWords } from '../../words/look-for-words.ts'
import { meantWords } from '../../words/match-words.ts'
import { words } from '../../words/words.ts'

interface ThingProps {
  readonly thing: LookedFor
  readonly kinds: readonly MeasuredKind[]
}

/** One thing to make, and what it takes of each kind of garment: small enough to be read at a glance, or cut out of the print. */
export function ThingCard({ thing, kinds }: ThingProps) {
  const { id, title, detail } = thing
  const given = givenNow(thing)
  const known = given === null || given === thing.given ? thing.figures : []
  const figuresFor = (kind: MeasuredKind) =>
    known.find((figures) => figures.kind === kind) ?? underWay.value.get(workKey(thing, kind)) ?? null
  const all = kinds.map((kind) => ({ kind, figures: figuresFor(kind) }))
  const none = all.filter(({ figures }) => figures?.none).map(({ kind }) => words.garments.kinds[kind])
  const cloths = patternById(thing.pattern)?.cloths ?? []
  const stretch = all.find(({ figures }) => figures)?.figures?.stretch
  return (
    <article class="look-for-card" aria-labelledby={`thing-${id}`}>
      <header>
        <div class="grow">
          <h2 id={`thing-${id}`}>{title}</h2>
          <p class="soft">{detail}</p>
        </div>
        <span class="unprinted">
          <IconButton
            icon="remove"
            label={lookForWords.remove(title)}
            onPress={() => removeThing(thing, lookForWords.removed(title))}
          />
        </span>
      </header>
      {given === null && <p class="soft unprinted">{lookForWords.gone}</p>}
      {cloths.length > 0 && <p class="look-for-stretch">{lookForWords.made(meantWords(cloths))}</p>}
      {stretch && <p class="look-for-stretch">{stretchWords(stretch)}</p>}
      <dl>
        {all.map(
          ({ kind, figures }) =>
            !figures?.none && <Line key={kind} kind={kind} figures={figures} known={known} cloths={cloths} />,
        )}
      </dl>
      {none.length > 0 && <p class="look-for-none">{lookForWords.noneOf(writeList(none))}</p>}
    </article>
  )
}

interface LineProps {
  readonly kind: MeasuredKind
  readonly figures: Figures | null
  readonly known: readonly Figures[]
  readonly cloths: readonly ClothMake[]
}

function Line({ kind, figures, known, cloths }: LineProps) {
  const found = figures && (figures.enough.length > 0 || known.includes(figures))
  const told = found ? figuresWords(figures, settings.value, cloths) : null
  return (
    <div class={told ? '' : 'look-for-waiting'}>
      <dt>
        {words.garments.kinds[kind]}
        {figures && !known.includes(figures) && <span class="soft"> {lookForWords.soFar}</span>}
      </dt>
      {!told && (
        <dd class="soft">{underWay.value.size > 0 ? lookForWords.waiting : lookForWords.notWorked}</dd>
      )}
      {told?.enough.map((line) => (
        <dd key={line} class={figures?.enough.length ? 'look-for-enough' : 'soft'}>
          {line}
        </dd>
      ))}
      {told?.beside.map((line) => (
        <dd key={line} class="look-for-beside">
          {line}
        </dd>
      ))}
    </div>
  )
}
