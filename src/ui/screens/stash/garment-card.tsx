import type { Garment } from '../../../core/garments/index.ts'
import { ClothSmall } from '../../drawing/cloth-small.tsx'
import { CardLink } from '../../parts/card.tsx'
import { clothNow } from '../../state/cloth-now.ts'
import { clothRecords } from '../../state/cloth-state.ts'
import { settings } from '../../state/settings-state.ts'
import { isDemo } from '../../state/stash-state.ts'
import { stashWords } from '../../words/en/stash.ts'
import { writeNumber } from '../../words/format.ts'
import { clothInShort, garmentTitle, measuresInShort } from '../../words/garment-words.ts'
import { words } from '../../words/words.ts'
import { FirstPhoto } from './photo-strip.tsx'

/** A garment in a list: what it is, its cloth and where it lies. */
export function GarmentCard({ garment }: { garment: Garment }) {
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
