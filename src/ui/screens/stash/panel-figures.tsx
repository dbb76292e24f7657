import { useEffect } from 'preact/hooks'
import type { Garment } from '../../../core/garments/index.ts'
import type { ClothFigures } from '../../../core/stash/cloth-figures.ts'
import type { PanelBody } from '../../../core/stash/cloth-of.ts'
import type { ReservedPlace } from '../../../core/stash/taken.ts'
import { ALONE, BESIDE, layScale, PanelLay } from '../../drawing/lay-drawing.tsx'
import { boxOf } from '../../drawing/paths.ts'
import { Button } from '../../parts/button.tsx'
import { figuresFailed, figuresOf, followFiguresOf, tryFiguresAgain } from '../../state/cloth-figures.ts'
import { keepOffcut } from '../../state/cloth-state.ts'
import { NOTHING_KEPT, type PanelView, type PlacedPiece } from '../../state/lay-view.ts'
import { projectById } from '../../state/projects-state.ts'
import { settings } from '../../state/settings-state.ts'
import { panelTitle } from '../../words/cloth-words.ts'
import { stashWords } from '../../words/en/stash.ts'
import { writeArea } from '../../words/format.ts'
import { sizeWords } from '../../words/garment-words.ts'
import { words } from '../../words/words.ts'
import './stash.css'

/** The cloth there is of the garment, all to one scale: panels and offcuts, what is spoilt and what is promised. */
export function PanelFigures({ garment }: { garment: Garment }) {
  useEffect(() => followFiguresOf(garment), [garment])
  const figures = figuresOf(garment)
  if (figuresFailed.value)
    return (
      <div class="stack" role="alert">
        <p>{stashWords.clothFailed}</p>
        <Button onPress={tryFiguresAgain}>{words.shell.retry}</Button>
      </div>
    )
  return (
    <section class="stack" aria-labelledby="panels">
      <h2 id="panels">{stashWords.panels}</h2>
      {figures && <Panels {...figures} />}
    </section>
  )
}

function Panels({ panels, area }: ClothFigures) {
  const scale = layScale(
    panels.map(({ outline }) => outline),
    panels.length > 1 ? BESIDE : ALONE,
  )
  return (
    <>
      {panels.length === 0 ? (
        <p>{stashWords.panelsNone}</p>
      ) : (
        <p class="soft">{stashWords.free(writeArea(area, settings.value))}</p>
      )}
      <ul class="lay">
        {panels.map((panel) => (
          <li key={panel.id} class="panel-figure">
            <PanelLay panel={viewOf(panel)} scale={scale} nameOf={({ piece }) => ['', piece]} />
            <Caption panel={panel} />
          </li>
        ))}
      </ul>
      <p class="field-hint">{stashWords.panelsHint}</p>
    </>
  )
}

function Caption({ panel }: { panel: PanelBody }) {
  const { minX, minY, maxX, maxY } = boxOf([panel.outline])
  return (
    <span>
      {panelTitle(panel)}
      <br />
      <span class="soft">{sizeWords(maxX - minX, maxY - minY, settings.value)}</span>
      {panel.from === 'offcut' && panel.reserved.length === 0 && (
        <Button look="quiet" onPress={() => void keepOffcut(panel.id, false, stashWords.offcutDropped)}>
          {stashWords.offcutDrop}
        </Button>
      )}
    </span>
  )
}

/** Numbered through, as two projects may have pieces of one name here. */
function viewOf({ id, outline, flaws, reserved }: PanelBody): PanelView {
  const pieces = reserved.map((place, k): PlacedPiece => {
    return { piece: nameOf(place), copy: k, of: 1, outline: place.outline, head: null, turnedOver: false }
  })
  return { id, outline, flaws, kept: NOTHING_KEPT, pieces }
}

function nameOf({ project, piece }: ReservedPlace): string {
  return projectById(project)?.pattern.pieces.find(({ id }) => id === piece)?.name ?? piece
}
