import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import type { Garment } from '../../../core/garments/index.ts'
import { GarmentDrawing } from '../../drawing/garment-drawing.tsx'
import { Button, ButtonLink } from '../../parts/button.tsx'
import { CardLink } from '../../parts/card.tsx'
import { Screen } from '../../parts/screen.tsx'
import { TextField } from '../../parts/text-field.tsx'
import { settings } from '../../state/settings-state.ts'
import {
  garments,
  isDemo,
  loadDemo,
  openStash,
  removeDemo,
  stashOpen,
  unreadableGarments,
} from '../../state/stash-state.ts'
import { writeNumber } from '../../words/format.ts'
import { clothInShort, garmentMatches, measuresInShort } from '../../words/garment-words.ts'
import { words } from '../../words/words.ts'
import './stash.css'

/** From this many garments on a search is worth its room. */
const SEARCH_FROM = 5

/** What she typed into the search; it stays while she looks at a garment. */
let lastSearch = ''

/** Everything she owns to cut up. */
export function StashScreen() {
  useEffect(() => void openStash(), [])
  if (!stashOpen.value) return <p class="loading soft">{words.shell.loading}</p>
  const unreadable = unreadableGarments.value.length
  return (
    <Screen title={words.stash.title}>
      {garments.value.length === 0 ? <Empty /> : <List />}
      <ButtonLink to="/notions">{words.notions.toNotions}</ButtonLink>
      <Demo />
      {unreadable > 0 && <p class="soft">{words.stash.unreadable(unreadable)}</p>}
    </Screen>
  )
}

function Empty() {
  return (
    <section class="stack" aria-labelledby="stash-empty">
      <h2 id="stash-empty">{words.stash.empty}</h2>
      <p>{words.stash.emptyHow}</p>
      <ButtonLink look="main" icon="check" to="/">
        {words.stash.toCheck}
      </ButtonLink>
    </section>
  )
}

function List() {
  const typed = useSignal(lastSearch)
  const all = garments.value
  const searched = all.length >= SEARCH_FROM ? typed.value : ''
  const found = all.filter((garment) => garmentMatches(garment, searched))
  return (
    <section class="stack" aria-label={words.stash.title}>
      {all.length >= SEARCH_FROM && (
        <TextField
          id="stash-search"
          label={words.stash.search}
          hint={words.stash.searchHint}
          value={typed.value}
          onValue={(text) => {
            typed.value = text
            lastSearch = text
          }}
        />
      )}
      <p class="soft" role="status">
        {searched.trim() === ''
          ? words.stash.count(all.length)
          : words.stash.found(writeNumber(found.length), words.stash.count(all.length))}
      </p>
      {found.length === 0 && <p>{words.stash.noneFound}</p>}
      <ul class="stack">
        {found.map((garment) => (
          <li key={garment.id}>
            <GarmentCard garment={garment} />
          </li>
        ))}
      </ul>
    </section>
  )
}

function GarmentCard({ garment }: { garment: Garment }) {
  const { id, name, kind, price, washed } = garment
  const kindName = words.garments.kinds[kind]
  const title = name.trim() || kindName
  return (
    <CardLink
      to={`/stash/${id}`}
      title={title}
      picture={
        <span class="garment-small">
          <GarmentDrawing garment={garment} />
        </span>
      }
    >
      <span class="card-text">
        {joined(title === kindName ? '' : kindName, measuresInShort(garment, settings.value))}
      </span>
      <span class="card-text">{clothInShort(garment)}</span>
      {isDemo(garment) && <span class="tag">{words.stash.demoMark}</span>}
      {!washed && <span class="tag tag-open">{words.stash.unwashed}</span>}
      {price !== null && <span class="card-text card-inline">{words.stash.cost(writeNumber(price))}</span>}
    </CardLink>
  )
}

function joined(...facts: readonly string[]): string {
  return facts.filter((fact) => fact !== '').join(' · ')
}

/** Garments to try things with, which come and go with one tap. */
function Demo() {
  const failed = useSignal(false)
  const load = () => {
    failed.value = false
    loadDemo().catch(() => (failed.value = true))
  }
  if (garments.value.some(isDemo)) {
    return <Button onPress={removeDemo}>{words.stash.demoRemove}</Button>
  }
  return (
    <section class="stack" aria-labelledby="demo-title">
      <h2 id="demo-title">{words.stash.demo}</h2>
      <p>{words.stash.demoHow}</p>
      <Button onPress={load}>{words.stash.demoLoad}</Button>
      {failed.value && (
        <p class="field-error" role="alert">
          {words.stash.demoFailed}
        </p>
      )}
    </section>
  )
}
