import { useSignal } from '@preact/signals'
import type { Garment } from '../../../core/garments/index.ts'
import { asksOf, NO_FILTER, STASH_ORDERS } from '../../../core/stash/stash-filter.ts'
import { ClothSmall } from '../../drawing/cloth-small.tsx'
import { Button } from '../../parts/button.tsx'
import { CardLink } from '../../parts/card.tsx'
import { Picker } from '../../parts/picker.tsx'
import { TextField } from '../../parts/text-field.tsx'
import { clothNow } from '../../state/cloth-now.ts'
import { clothRecords } from '../../state/cloth-state.ts'
import { settings } from '../../state/settings-state.ts'
import { garments, isDemo } from '../../state/stash-state.ts'
import {
  foundGarments,
  look,
  pages,
  searched,
  shownGarments,
  stashFilter,
  stashOrder,
} from '../../state/stash-view.ts'
import { stashWords } from '../../words/en/stash.ts'
import { writeNumber } from '../../words/format.ts'
import { clothInShort, garmentTitle, measuresInShort } from '../../words/garment-words.ts'
import { words } from '../../words/words.ts'
import { FilterSheet } from './filter-sheet.tsx'
import { FirstPhoto } from './photo-strip.tsx'

/** From this many garments on a search is worth its room. */
const SEARCH_FROM = 5

/** The garments she owns: searched, filtered, ordered, a page at a time. */
export function StashList() {
  const filtering = useSignal(false)
  const [all, found, shown] = [garments.value, foundGarments.value, shownGarments.value]
  const asks = asksOf(stashFilter.value)
  const isNarrowed = searched.value.trim() !== '' || asks > 0
  return (
    <section class="stack" aria-label={stashWords.title}>
      {all.length >= SEARCH_FROM && (
        <>
          <TextField
            id="stash-search"
            label={stashWords.search}
            hint={stashWords.searchHint}
            value={searched.value}
            onValue={(text) => look({ text })}
          />
          <div class="stash-tools">
            <Button icon="list" onPress={() => (filtering.value = true)}>
              {asks === 0 ? stashWords.filter : stashWords.filterOn(asks)}
            </Button>
            <Picker
              id="stash-order"
              label={stashWords.order}
              value={stashOrder.value}
              options={STASH_ORDERS.map((order) => ({ value: order, label: stashWords.orders[order] }))}
              onPick={(order) => look({ order })}
            />
          </div>
        </>
      )}
      <p class="soft" role="status">
        {isNarrowed
          ? stashWords.found(writeNumber(found.length), stashWords.count(all.length))
          : stashWords.count(found.length)}
      </p>
      {found.length === 0 && (
        <>
          <p>{stashWords.noneFound}</p>
          <Button onPress={() => look({ text: '', filter: NO_FILTER })}>{stashWords.showAll}</Button>
        </>
      )}
      <ul class="stack">
        {shown.map((garment) => (
          <li key={garment.id}>
            <GarmentCard garment={garment} />
          </li>
        ))}
      </ul>
      {shown.length < found.length && (
        <Button wide onPress={() => (pages.value += 1)}>
          {stashWords.more(found.length - shown.length)}
        </Button>
      )}
      {filtering.value && <FilterSheet onClose={() => (filtering.value = false)} />}
    </section>
  )
}

function GarmentCard({ garment }: { garment: Garment }) {
  const { id, kind, price, washed, place, usedUp } = garment
  const kindName = words.garments.kinds[kind]
  const title = garmentTitle(garment)
  const reserved = clothRecords.value.reservations.filter((reservation) => reservation.garment === id).length
  return (
    <CardLink
      to={`/stash/${id}`}
      title={title}
      picture={
        <span class="garment-pictures">
          <FirstPhoto garment={garment} />
          <span class="garment-small">
            <ClothSmall cloth={clothNow(garment)} />
          </span>
        </span>
      }
    >
      <span class="card-text">
        {joined(title === kindName ? '' : kindName, measuresInShort(garment, settings.value))}
      </span>
      <span class="card-text">{joined(clothInShort(garment), place.trim())}</span>
      {isDemo(garment) && <span class="tag">{stashWords.demoMark}</span>}
      {reserved > 0 && <span class="tag tag-open">{stashWords.reservedTag}</span>}
      {usedUp && <span class="tag">{stashWords.usedUpTag}</span>}
      {!washed && <span class="tag tag-open">{stashWords.unwashed}</span>}
      {price !== null && <span class="card-text card-inline">{stashWords.cost(writeNumber(price))}</span>}
    </CardLink>
  )
}

function joined(...facts: readonly string[]): string {
  return facts.filter((fact) => fact !== '').join(' · ')
}
