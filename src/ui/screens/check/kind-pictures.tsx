import { kindOf, startingMeasures } from '../../../core/garments/index.ts'
import { KIND_IDS, type KindId } from '../../../core/garments/kind.ts'
import { FigureDrawing } from '../../drawing/figure-drawing.tsx'
import { words } from '../../words/words.ts'

/** A grid of garments to tap, each drawn with the measures usual for a middling size. */
export function KindPictures({ onPick }: { onPick: (kind: KindId) => void }) {
  return (
    <ul class="pictures">
      {KIND_IDS.map((id) => (
        <li key={id}>
          <button type="button" class="picture" onClick={() => onPick(id)}>
            <span class="picture-drawing">
              <FigureDrawing figure={figureOf(id)} />
            </span>
            {words.garments.kinds[id]}
          </button>
        </li>
      ))}
    </ul>
  )
}

function figureOf(id: KindId) {
  const kind = kindOf(id)
  const traits = Object.fromEntries(kind.traits.map((trait) => [trait.id, trait.usual]))
  return kind.figure(startingMeasures(kind, 'M'), traits)
}
