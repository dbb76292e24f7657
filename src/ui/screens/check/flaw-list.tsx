import { FLAW_KINDS, type MarkedFlaw, type PanelShape } from '../../../core/garments/index.ts'
import { boxOf } from '../../drawing/paths.ts'
import { IconButton } from '../../parts/button.tsx'
import { LengthField } from '../../parts/length-field.tsx'
import { Picker } from '../../parts/picker.tsx'
import { draft, tell } from '../../state/check-state.ts'
import { figuresOf } from '../../state/flaws.ts'
import { settings } from '../../state/settings-state.ts'
import { words } from '../../words/words.ts'

interface FlawListProps {
  readonly panels: readonly PanelShape[]
  readonly chosen: string | null
  readonly onChoose: (id: string | null) => void
}

/** Every marked flaw, with its figures to type: the keyboard's way to do what the drawing does by touch. */
export function FlawList({ panels, chosen, onChoose }: FlawListProps) {
  const { flaws } = draft.value
  return (
    <section class="stack" aria-labelledby="flaw-list">
      <h2 id="flaw-list">{words.flaws.list}</h2>
      {flaws.length === 0 && <p class="soft">{words.flaws.none}</p>}
      <ul class="stack">
        {flaws.map((flaw) => (
          <li key={flaw.id} class="flaw-item">
            <FlawRow flaw={flaw} open={flaw.id === chosen} onChoose={onChoose} />
            {flaw.id === chosen && (
              <FlawFigures flaw={flaw} panel={panels.find(({ id }) => id === flaw.panel)} />
            )}
          </li>
        ))}
      </ul>
    </section>
  )
}

interface FlawRowProps {
  readonly flaw: MarkedFlaw
  readonly open: boolean
  readonly onChoose: (id: string | null) => void
}

function FlawRow({ flaw, open, onChoose }: FlawRowProps) {
  const kindName = words.flaws.kinds[flaw.kind]
  const panelName = words.garments.panels[flaw.panel] ?? flaw.panel
  return (
    <div class="row">
      <button
        type="button"
        class="flaw-name grow"
        aria-expanded={open}
        onClick={() => onChoose(open ? null : flaw.id)}
      >
        {words.flaws.edit(kindName, panelName)}
      </button>
      <IconButton
        icon="remove"
        label={words.flaws.removeOne(kindName, panelName)}
        onPress={() => {
          onChoose(null)
          tell({ flaws: draft.value.flaws.filter(({ id }) => id !== flaw.id) })
        }}
      />
    </div>
  )
}

function FlawFigures({ flaw, panel }: { flaw: MarkedFlaw; panel: PanelShape | undefined }) {
  const change = (part: Partial<MarkedFlaw>) =>
    tell({ flaws: draft.value.flaws.map((each) => (each.id === flaw.id ? { ...each, ...part } : each)) })
  if (!panel) return <p class="field-query">{words.flaws.orphaned}</p>
  return (
    <form class="stack" onSubmit={(event) => event.preventDefault()}>
      <Picker
        id={`${flaw.id}-kind`}
        label={words.flaws.kind}
        options={FLAW_KINDS.map((value) => ({ value, label: words.flaws.kinds[value] }))}
        value={flaw.kind}
        onPick={(kind) => change({ kind })}
      />
      {figuresOf(flaw.shape, boxOf([panel.outline])).map((figure) => (
        <LengthField
          key={figure.id}
          id={`${flaw.id}-${figure.id}`}
          label={words.flaws[figure.id]}
          value={figure.value}
          units={settings.value}
          onValue={(value) => {
            if (value !== null) change({ shape: figure.with(value) })
          }}
        />
      ))}
    </form>
  )
}
