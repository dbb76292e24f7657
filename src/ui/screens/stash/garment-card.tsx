import type { Garment } from '../../../core/garments/index.ts'
import { ClothSmall } from '../../drawing/cloth-small.tsx'
import { CardLink } from '../../parts/card.tsx'
import { figuresOf } from '../../state/cloth-figures.ts'
import { settings } from '../../state/settings-state.ts'
import { isDemo } from '../../state/stash-state.ts'
import { hangsOnStretch, isOtherCloth } from '../../state/stash-yield.ts'
import { isReserved } from '../../state/taken-now.ts'
import { stashWords } from '../../words/en/stash.ts'
import { joinFacts, writeArea, writePrice } from '../../words/format.ts'
import { clothInShort, garmentTitle, measuresInShort } from '../../words/garment-words.ts'
import { words } from '../../words/words.ts'
import { isFlatCloth } from './flat-cloth.ts'
import { FirstPhoto } from './photo-strip.tsx'

/** For lists that draw the same garment once. */
export const garmentCard = (garment: Garment) => <GarmentCard garment={garment} />

/** A garment in a list: what it is, its cloth and where it lies. */
function GarmentCard({ garment }: { garment: Garment }) {
  const { id, price, washed, place, usedUp } = garment
  const figures = figuresOf(garment)
  const free = figures?.area ?? 0
  return (
    <CardLink
      to={`/stash/${id}`}
      title={garmentTitle(garment)}
      picture={
        <span class="garment-pictures">
          <FirstPhoto garment={garment} />
          <span class="garment-small">{figures && <ClothSmall panels={figures.panels} />}</span>
        </span>
      }
    >
      <span class="card-text">
        {joinFacts([
          kindInShort(garment),
          measuresInShort(garment, settings.value),
          clothInShort(garment),
          place,
        ])}
      </span>
      <span class="card-text">
        {free > 0 && <b class="card-amount">{stashWords.free(writeArea(free, settings.value))}</b>}
        {free > 0 && price !== null && '\u00a0· '}
        {price !== null && stashWords.cost(writePrice(price))}
      </span>
      <span class="card-tags">
        {isDemo(garment) && <span class="tag">{stashWords.demoMark}</span>}
        {isReserved(garment) && <span class="tag tag-open">{stashWords.reservedTag}</span>}
        {isOtherCloth(garment) && <span class="tag tag-open">{words.verdict.match.tag}</span>}
        {hangsOnStretch(garment) && <span class="tag tag-open">{stashWords.wouldYield.hanging}</span>}
        {usedUp && <span class="tag">{stashWords.usedUpTag}</span>}
        {!washed && <span class="tag tag-open">{stashWords.unwashed}</span>}
      </span>
    </CardLink>
  )
}

/** What says no more than its name and its picture is left out. */
function kindInShort(garment: Garment): string {
  const name = words.garments.kinds[garment.kind]
  return isFlatCloth(garment) || garmentTitle(garment) === name ? '' : name
}
