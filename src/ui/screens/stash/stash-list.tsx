import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { STASH_ORDERS } from '../../../core/stash/stash-filter.ts'
import { Button } from '../../parts/button.tsx'
import { LongList } from '../../parts/long-list.tsx'
import { Picker } from '../../parts/picker.tsx'
import { TextField } from '../../parts/text-field.tsx'
import { figuresFailed, tryFiguresAgain } from '../../state/cloth-figures.ts'
import { followYields } from '../../state/follow-yields.ts'
import { garments } from '../../state/stash-state.ts'
import {
  askNothing,
  asks,
  followCloth,
  foundGarments,
  listedGarments,
  listPlace,
  look,
  missing,
  parts,
  searched,
  shownGarments,
  stashOrder,
} from '../../state/stash-view.ts'
import { stashWords } from '../../words/en/stash.ts'
import { writeNumber } from '../../words/format.ts'
import { words } from '../../words/words.ts'
import { FilterSheet } from './filter-sheet.tsx'
import { garmentCard } from './garment-card.tsx'
import { Asked, OpenGarments, YieldStatus } from './yield-status.tsx'

/** From this many garments on a search is worth its room. */
const SEARCH_FROM = 2

/** The garments she owns: searched, filtered, ordered. */
export function StashList() {
  useEffect(() => followYields(() => foundGarments.value), [])
  useEffect(() => followCloth(), [])
  const hasTools = garments.value.length >= SEARCH_FROM
  return (
    <section class="stack" aria-label={stashWords.title}>
      {hasTools && <Search />}
      <div class="stash-count">
        <div class="grow">{parts.value ? <Asked /> : <Count />}</div>
        {hasTools && <Order />}
      </div>
      {figuresFailed.value && <Failed />}
      {parts.value && <YieldStatus parts={parts.value} />}
      {isNone() && <NoneFound />}
      <LongList
        items={listedGarments.value}
        keyOf={({ id }) => id}
        draw={garmentCard}
        onShown={(shown) => (shownGarments.value = shown)}
        place={listPlace}
      />
      {parts.value && <OpenGarments garments={parts.value.open} />}
    </section>
  )
}

function Failed() {
  return (
    <div class="stack" role="alert">
      <p>{stashWords.clothFailed}</p>
      <Button onPress={tryFiguresAgain}>{words.shell.retry}</Button>
    </div>
  )
}

/** True if none passes for sure: not while one may yet. */
function isNone(): boolean {
  const now = parts.value
  if (!now) return foundGarments.value.length + missing.value === 0
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
      {missing.value > 0 && ` ${stashWords.clothWorking(writeNumber(missing.value))}`}
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
