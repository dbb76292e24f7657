import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { STASH_ORDERS } from '../../../core/stash/stash-filter.ts'
import { Button } from '../../parts/button.tsx'
import { Picker } from '../../parts/picker.tsx'
import { TextField } from '../../parts/text-field.tsx'
import { followYields } from '../../state/follow-yields.ts'
import { garments } from '../../state/stash-state.ts'
import {
  askNothing,
  asks,
  foundGarments,
  listedGarments,
  look,
  pages,
  parts,
  searched,
  shownGarments,
  stashOrder,
} from '../../state/stash-view.ts'
import { stashWords } from '../../words/en/stash.ts'
import { writeNumber } from '../../words/format.ts'
import { FilterSheet } from './filter-sheet.tsx'
import { GarmentCard } from './garment-card.tsx'
import { Asked, OpenGarments, YieldStatus } from './yield-status.tsx'

/** From this many garments on a search is worth its room. */
const SEARCH_FROM = 2

/** The garments she owns: searched, filtered, ordered, a page at a time. */
export function StashList() {
  useEffect(() => followYields(() => foundGarments.value), [])
  const hasTools = garments.value.length >= SEARCH_FROM
  const [listed, shown] = [listedGarments.value, shownGarments.value]
  return (
    <section class="stack" aria-label={stashWords.title}>
      {hasTools && <Search />}
      <div class="stash-count">
        <div class="grow">{parts.value ? <Asked /> : <Count />}</div>
        {hasTools && <Order />}
      </div>
      {parts.value && <YieldStatus parts={parts.value} />}
      {isNone() && <NoneFound />}
      <ul class="stack">
        {shown.map((garment) => (
          <li key={garment.id}>
            <GarmentCard garment={garment} />
          </li>
        ))}
      </ul>
      {shown.length < listed.length && (
        <Button wide onPress={() => (pages.value += 1)}>
          {stashWords.more(listed.length - shown.length)}
        </Button>
      )}
      {parts.value && <OpenGarments garments={parts.value.open} />}
    </section>
  )
}

/** True if none passes for sure: not while one may yet. */
function isNone(): boolean {
  const now = parts.value
  if (!now) return foundGarments.value.length === 0
  return now.yields.length + now.open.length + now.waiting.length === 0
}

function Search() {
  const filtering = useSignal(false)
  return (
    <div class="stash-search">
      <TextField
        id="stash-search"
        label={stashWords.search}
        placeholder={stashWords.searchFor}
        value={searched.value}
        onValue={(text) => look({ text })}
      />
      <Button icon="list" onPress={() => (filtering.value = true)}>
        {asks.value === 0 ? stashWords.filter : stashWords.filterOn(asks.value)}
      </Button>
      {filtering.value && <FilterSheet onClose={() => (filtering.value = false)} />}
    </div>
  )
}

function Order() {
  return (
    <Picker
      id="stash-order"
      label={stashWords.order}
      labelUnseen
      value={stashOrder.value}
      options={STASH_ORDERS.map((order) => ({ value: order, label: stashWords.orders[order] }))}
      onPick={(order) => look({ order })}
    />
  )
}

function Count() {
  const isNarrowed = searched.value.trim() !== '' || asks.value > 0
  const [all, found] = [garments.value.length, foundGarments.value.length]
  return (
    <p class="soft" role="status">
      {isNarrowed ? stashWords.found(writeNumber(found), stashWords.count(all)) : stashWords.count(found)}
    </p>
  )
}

function NoneFound() {
  const showAll = () => {
    look({ text: '' })
    askNothing()
  }
  return (
    <>
      <p>{stashWords.noneFound}</p>
      <Button onPress={showAll}>{stashWords.showAll}</Button>
    </>
  )
}
