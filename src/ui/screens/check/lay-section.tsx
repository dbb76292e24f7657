import { useId, useMemo, useState } from 'preact/hooks'
import type { CheckAnswer } from '../../../core/planning/check.ts'
import { pieceOfGroup } from '../../../core/planning/wanted-copies.ts'
import { ALONE, BESIDE, LoosePiece, layScale, PanelLay } from '../../drawing/lay-drawing.tsx'
import { type LayView, layView, type PanelView, type PlacedPiece } from '../../state/lay-view.ts'
import { stashWords } from '../../words/en/stash.ts'
import { writeList, writeNumber } from '../../words/format.ts'
import { words } from '../../words/words.ts'
import '../../parts/field.css'

interface LaySectionProps {
  readonly answer: CheckAnswer
  /** What each piece is called. */
  readonly pattern: { readonly pieces: readonly { readonly id: string; readonly name: string }[] }
}

/** The lay drawn on the garment's panels to scale, in pictures and in words. Nothing is drawn where nothing could be laid. */
export function LaySection({ answer, pattern }: LaySectionProps) {
  const view = useMemo(() => layView(answer), [answer])
  const titleId = useId()
  const [large, setLarge] = useState<string | null>(null)
  const used = view.panels.filter(({ pieces }) => pieces.length > 0)
  if (used.length === 0) return null
  const ids = answer.problem.pieces.map(({ id }) => id)
  const nameOf = (id: string) =>
    pattern.pieces.find((piece) => piece.id === id || piece.id === pieceOfGroup(id))?.name ?? id
  const numberOf = (id: string) => writeNumber(ids.indexOf(id) + 1)
  const onPiece = ({ piece }: PlacedPiece) => [numberOf(piece), nameOf(piece)]
  const outlines = [...used.map(({ outline }) => outline), ...view.leftOut.map(({ outline }) => outline)]
  const scale = layScale(outlines, outlines.length > 1 ? BESIDE : ALONE)
  const { verdict } = answer.lay
  return (
    <section class="stack" aria-labelledby={titleId}>
      <h2 id={titleId}>{verdict === 'fits' ? words.verdict.layTitle : words.verdict.layBest}</h2>
      <div class="lay">
        {used.map((panel) => (
          <PanelButton
            key={panel.id}
            panel={panel}
            scale={panel.id === large ? layScale([panel.outline], ALONE) : scale}
            large={panel.id === large}
            nameOf={onPiece}
            label={words.verdict.layOf(panelName(panel.id), piecesInWords(panel.pieces, nameOf))}
            onPress={() => setLarge(panel.id === large ? null : panel.id)}
          />
        ))}
      </div>
      {outlines.length > 1 && <p class="field-hint">{words.verdict.layEnlarge}</p>}
      {view.leftOut.length > 0 && (
        <div class="lay-loose stack">
          <p>{words.verdict.leftOut(piecesInWords(view.leftOut, nameOf))}</p>
          <div class="lay">
            {view.leftOut.map((piece) => (
              <LoosePiece key={`${piece.piece}#${piece.copy}`} piece={piece} scale={scale} nameOf={onPiece} />
            ))}
          </div>
        </div>
      )}
      <Key view={view} ids={ids} nameOf={nameOf} numberOf={numberOf} />
    </section>
  )
}

interface PanelButtonProps {
  readonly panel: PanelView
  readonly scale: number
  readonly large: boolean
  readonly label: string
  readonly nameOf: (piece: PlacedPiece) => readonly string[]
  readonly onPress: () => void
}

/** A panel's lay; tapping it enlarges it and makes it small again. */
function PanelButton({ panel, scale, large, label, nameOf, onPress }: PanelButtonProps) {
  return (
    <button
      type="button"
      class={large ? 'panel-button panel-large' : 'panel-button'}
      aria-pressed={large}
      aria-label={label}
      onClick={onPress}
    >
      <PanelLay panel={panel} scale={scale} nameOf={nameOf} />
      <span>{panelName(panel.id)}</span>
    </button>
  )
}

interface KeyProps {
  readonly view: LayView
  readonly ids: readonly string[]
  readonly nameOf: (id: string) => string
  readonly numberOf: (id: string) => string
}

/** What the numbers, the arrows and the looks mean. */
function Key({ view, ids, nameOf, numberOf }: KeyProps) {
  const kept = view.panels.map((panel) => panel.kept)
  const turned = view.panels.some(({ pieces }) => pieces.some(({ turnedOver }) => turnedOver))
  return (
    <div class="stack">
      <dl class="lay-key">
        {ids.map((id) => (
          <div key={id}>
            <dt>{numberOf(id)}</dt>
            <dd>{nameOf(id)}</dd>
          </div>
        ))}
      </dl>
      <p class="field-hint">
        {words.verdict.head} {turned && words.verdict.turnedKey}
        {kept.some(({ hems }) => hems.length > 0) && ` ${words.verdict.hemKey}`}
        {kept.some(({ prints }) => prints.length > 0) && ` ${words.verdict.printKey}`}
      </p>
    </div>
  )
}

/** Panels of the garment as it opens have names; whatever else it has was left over from cutting. */
function panelName(id: string): string {
  return words.garments.panels[id] ?? stashWords.offcut
}

function piecesInWords(pieces: readonly PlacedPiece[], nameOf: (id: string) => string): string {
  return writeList(
    pieces.map(({ piece, copy, of, turnedOver }) => {
      const name = of > 1 ? words.verdict.piece(nameOf(piece), writeNumber(copy)) : nameOf(piece)
      return turnedOver ? words.verdict.pieceTurned(name) : name
    }),
  )
}
