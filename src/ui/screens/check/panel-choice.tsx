import type { PanelShape } from '../../../core/garments/index.ts'
import { boxOf, closedPath, viewBox } from '../../drawing/paths.ts'
import { words } from '../../words/words.ts'

interface PanelChoiceProps {
  readonly panels: readonly PanelShape[]
  readonly chosen: string
  /** How many marks each panel carries. */
  readonly marks: (panel: string) => number
  readonly onChoose: (panel: string) => void
}

/** The garment's panels as small pictures, all to one scale. */
export function PanelChoice({ panels, chosen, marks, onChoose }: PanelChoiceProps) {
  const boxes = panels.map(({ outline }) => boxOf([outline]))
  const tallest = Math.max(...boxes.map(({ minY, maxY }) => maxY - minY))
  const widest = Math.max(...boxes.map(({ minX, maxX }) => maxX - minX))
  return (
    <fieldset>
      <legend class="unseen">{words.flaws.panel}</legend>
      <div class="panel-row">
        {panels.map(({ id, outline }) => {
          const { minX, minY, maxX, maxY } = boxOf([outline])
          const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2]
          const count = marks(id)
          return (
            <label key={id} class="choice-option">
              <input
                type="radio"
                class="unseen"
                name="panel"
                checked={id === chosen}
                onChange={() => onChoose(id)}
              />
              <span class="choice-face panel-face">
                <svg
                  class="drawing"
                  aria-hidden="true"
                  viewBox={viewBox({
                    minX: x - widest / 2,
                    maxX: x + widest / 2,
                    minY: y - tallest / 2,
                    maxY: y + tallest / 2,
                  })}
                >
                  <path class="cloth" d={closedPath(outline)} />
                </svg>
                <span>
                  {words.garments.panels[id] ?? id}
                  {count > 0 && ` · ${words.flaws.marks(count)}`}
                </span>
              </span>
            </label>
          )
        })}
      </div>
    </fieldset>
  )
}
