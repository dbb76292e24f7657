import { useMemo } from 'preact/hooks'
import { flawOutlines, type Garment } from '../../../core/garments/index.ts'
import { panelsOf } from '../../../core/garments/panels-of.ts'
import { ALONE, BESIDE, layScale, PanelLay } from '../../drawing/lay-drawing.tsx'
import { boxOf } from '../../drawing/paths.ts'
import { NOTHING_KEPT, type PanelView } from '../../state/lay-view.ts'
import { settings } from '../../state/settings-state.ts'
import { sizeWords } from '../../words/garment-words.ts'
import { words } from '../../words/words.ts'
import './stash.css'

/** The panels that the garment opens into, all to one scale, with what cannot be used of them. */
export function PanelFigures({ garment }: { garment: Garment }) {
  const panels = useMemo(
    () => panelViews(garment),
    [garment.kind, garment.measures, garment.traits, garment.opening, garment.outline, garment.flaws],
  )
  const scale = layScale(
    panels.map(({ outline }) => outline),
    panels.length > 1 ? BESIDE : ALONE,
  )
  return (
    <section class="stack" aria-labelledby="panels">
      <h2 id="panels">{words.stash.panels}</h2>
      {panels.length === 0 && <p>{words.stash.panelsNone}</p>}
      <ul class="lay">
        {panels.map((panel) => (
          <li key={panel.id} class="panel-figure">
            <PanelLay panel={panel} scale={scale} nameOf={() => []} />
            <PanelCaption panel={panel} />
          </li>
        ))}
      </ul>
      <p class="field-hint">{words.stash.panelsHint}</p>
    </section>
  )
}

function PanelCaption({ panel }: { panel: PanelView }) {
  const { minX, minY, maxX, maxY } = boxOf([panel.outline])
  return (
    <span>
      {words.garments.panels[panel.id] ?? panel.id}
      <br />
      <span class="soft">{sizeWords(maxX - minX, maxY - minY, settings.value)}</span>
    </span>
  )
}

function panelViews(garment: Garment): readonly PanelView[] {
  return panelsOf(garment).map(({ id, outline }) => ({
    id,
    outline,
    flaws: flawOutlines(garment, id),
    kept: NOTHING_KEPT,
    pieces: [],
  }))
}
