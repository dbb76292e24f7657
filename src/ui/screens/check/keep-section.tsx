import type { PanelShape } from '../../../core/garments/index.ts'
import type { Pattern } from '../../../core/patterns/pattern.ts'
import { boxOf } from '../../drawing/paths.ts'
import { Button } from '../../parts/button.tsx'
import { Tick } from '../../parts/tick.tsx'
import { draft, pattern, tell } from '../../state/check-state.ts'
import { hemPieces, newPrint, PRINT, piecesHere } from '../../state/keep-wishes.ts'
import { words } from '../../words/words.ts'
import { PrintFigures } from './print-figures.tsx'

interface KeepSectionProps {
  readonly panels: readonly PanelShape[]
  /** The panel in view. */
  readonly panel: PanelShape
  readonly chosen: string | null
  readonly onChoose: (id: string | null) => void
}

/** What is worth keeping: hems of the garment for hems of the pieces, and a print for one of them to show. */
export function KeepSection(props: KeepSectionProps) {
  const making = pattern.value
  if (!making) return null
  return (
    <section class="stack" aria-labelledby="keep">
      <h2 id="keep">{words.flaws.keep}</h2>
      <OwnHems making={making} />
      <Print making={making} {...props} />
    </section>
  )
}

function OwnHems({ making }: { readonly making: Pattern }) {
  const { ownHem, size } = draft.value
  const pieces = hemPieces(making, draft.value)
  if (pieces.length === 0) return null
  return (
    <fieldset class="stack">
      <legend class="field-label">{words.flaws.ownHem}</legend>
      <p class="field-hint">{words.flaws.ownHemHint}</p>
      {pieces.some(({ shapes }) => shapes[size]?.form !== 'outline') && (
        <p class="field-hint">{words.flaws.ownHemPlain}</p>
      )}
      {pieces.map(({ id, name }) => (
        <Tick
          key={id}
          label={name}
          checked={ownHem.includes(id)}
          onChange={(checked) =>
            tell({ ownHem: checked ? [...ownHem, id] : ownHem.filter((other) => other !== id) })
          }
        />
      ))}
    </fieldset>
  )
}

function Print({ making, panels, panel, chosen, onChoose }: KeepSectionProps & { readonly making: Pattern }) {
  const { print } = draft.value
  const pieces = piecesHere(making, draft.value)
  const [first] = pieces
  if (!first) return null
  if (!print) {
    const { minX, minY, maxX, maxY } = boxOf([panel.outline])
    const add = () => {
      tell({ print: newPrint(panel.id, [(minX + maxX) / 2, (minY + maxY) / 2], first.id) })
      onChoose(PRINT)
    }
    return (
      <>
        <p class="field-hint">{words.flaws.printHint}</p>
        <Button icon="box" onPress={add}>
          {words.flaws.addPrint}
        </Button>
      </>
    )
  }
  return (
    <PrintFigures
      print={print}
      panel={panels.find(({ id }) => id === print.panel)}
      pieces={pieces}
      open={chosen === PRINT}
      onChoose={onChoose}
    />
  )
}
