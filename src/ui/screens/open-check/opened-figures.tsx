import type { LayPiece, LayProblem } from '../../../core/planning/lay-problem.ts'
import { BESIDE, LoosePiece, layScale, PanelLay } from '../../drawing/lay-drawing.tsx'
import { keptOn } from '../../state/lay-view.ts'
import { writeNumber } from '../../words/format.ts'
import { words } from '../../words/words.ts'
import './open-check.css'

interface OpenedFiguresProps {
  readonly problem: LayProblem
  /** The panels too; false when a lay on them is drawn already. */
  readonly withPanels: boolean
}

/** What a shared check asks: its panels and its pieces, each to scale. */
export function OpenedFigures({ problem, withPanels }: OpenedFiguresProps) {
  const { panels, pieces } = problem
  const panelScale = layScale(
    panels.map(({ outline }) => outline),
    BESIDE,
  )
  const pieceScale = layScale(
    pieces.map(({ outline }) => outline),
    BESIDE,
  )
  return (
    <>
      {withPanels && (
        <section class="stack" aria-labelledby="opened-panels">
          <h2 id="opened-panels">{words.sharing.panels}</h2>
          <ul class="lay">
            {panels.map((panel) => (
              <li key={panel.id} class="piece-figure">
                <PanelLay
                  panel={{ ...panel, kept: keptOn(panel), pieces: [] }}
                  scale={panelScale}
                  nameOf={() => []}
                />
                {words.garments.panels[panel.id] ?? panel.id}
              </li>
            ))}
          </ul>
        </section>
      )}
      <section class="stack" aria-labelledby="opened-pieces">
        <h2 id="opened-pieces">{words.sharing.pieces}</h2>
        <ul class="lay">
          {pieces.map((piece) => (
            <li key={piece.id} class="piece-figure">
              <LoosePiece piece={asDrawn(piece)} scale={pieceScale} nameOf={() => ['']} />
              {words.sharing.count(piece.id, writeNumber(piece.count))}
            </li>
          ))}
        </ul>
      </section>
    </>
  )
}

function asDrawn({ id, count, outline }: LayPiece) {
  return { piece: id, copy: 1, of: count, outline, head: 0, turnedOver: false }
}
