import type { PanelShape } from '../../../core/garments/index.ts'
import type { PatternPiece } from '../../../core/patterns/pattern.ts'
import { MOTIF_PLACES } from '../../../core/planning/motif-places.ts'
import { boxOf } from '../../drawing/paths.ts'
import { IconButton } from '../../parts/button.tsx'
import { LengthField } from '../../parts/length-field.tsx'
import { Picker } from '../../parts/picker.tsx'
import { tell } from '../../state/check-state.ts'
import { figuresOf } from '../../state/flaws.ts'
import { type Frame, type FramedPrint, PRINT } from '../../state/keep-wishes.ts'
import { settings } from '../../state/settings-state.ts'
import { words } from '../../words/words.ts'

interface PrintFiguresProps {
  readonly print: FramedPrint
  /** The panel it is on; undefined: there is no such panel any more. */
  readonly panel: PanelShape | undefined
  readonly pieces: readonly PatternPiece[]
  readonly open: boolean
  readonly onChoose: (id: string | null) => void
}

/** The print that is to show: which piece shows it, where, and its frame in figures. */
export function PrintFigures({ print, panel, pieces, open, onChoose }: PrintFiguresProps) {
  const change = (part: Partial<FramedPrint>) => tell({ print: { ...print, ...part } })
  const gone = !pieces.some(({ id }) => id === print.piece)
  return (
    <div class="flaw-item">
      <div class="row">
        <button
          type="button"
          class="flaw-name grow"
          aria-expanded={open}
          onClick={() => onChoose(open ? null : PRINT)}
        >
          {words.flaws.printOn(words.garments.panels[print.panel] ?? print.panel)}
        </button>
        <IconButton icon="remove" label={words.flaws.removePrint} onPress={() => tell({ print: null })} />
      </div>
      {!panel && <p class="field-query">{words.flaws.orphaned}</p>}
      <form class="stack" onSubmit={(event) => event.preventDefault()}>
        <Picker
          id="print-piece"
          label={words.flaws.printPiece}
          options={[
            ...(gone ? [{ value: print.piece, label: words.flaws.printPieceGone }] : []),
            ...pieces.map(({ id, name }) => ({ value: id, label: name })),
          ]}
          value={print.piece}
          onPick={(piece) => change({ piece })}
        />
        <Picker
          id="print-place"
          label={words.flaws.printPlace}
          options={MOTIF_PLACES.map((value) => ({ value, label: words.flaws.printPlaces[value] }))}
          value={print.place}
          onPick={(place) => change({ place })}
        />
        <Picker
          id="print-up"
          label={words.flaws.printUp}
          options={[
            { value: 'worn', label: words.flaws.printUps.worn },
            { value: 'any', label: words.flaws.printUps.any },
          ]}
          value={print.anyWayUp ? 'any' : 'worn'}
          onPick={(up) => change({ anyWayUp: up === 'any' })}
        />
        {print.place !== 'anywhere' && (
          <LengthField
            id="print-within"
            label={words.flaws.printWithin}
            value={print.within}
            units={settings.value}
            onValue={(within) => {
              if (within !== null) change({ within })
            }}
          />
        )}
        {open &&
          panel &&
          figuresOf(print.frame, boxOf([panel.outline])).map((figure) => (
            <LengthField
              key={figure.id}
              id={`print-${figure.id}`}
              label={words.flaws[figure.id]}
              value={figure.value}
              units={settings.value}
              onValue={(value) => {
                if (value !== null) change({ frame: figure.with(value) as Frame })
              }}
            />
          ))}
      </form>
    </div>
  )
}
