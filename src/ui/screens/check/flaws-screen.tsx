import { useSignal } from '@preact/signals'
import { Redirect } from 'wouter-preact'
import { FLAW_KINDS, type FlawKind, type FlawShape, type PanelShape } from '../../../core/garments/index.ts'
import { panelsKeepingHems, panelsOf } from '../../../core/garments/panels-of.ts'
import type { Point } from '../../../core/geometry/types.ts'
import { FlawEditor } from '../../drawing/flaw-editor.tsx'
import { boxOf } from '../../drawing/paths.ts'
import { Button } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { Picker } from '../../parts/picker.tsx'
import { garmentToDraw } from '../../state/check-draft.ts'
import { draft, kind, tell } from '../../state/check-state.ts'
import { type FlawForm, newFlaw } from '../../state/flaws.ts'
import { PRINT } from '../../state/keep-wishes.ts'
import { newId } from '../../state/new-id.ts'
import { words } from '../../words/words.ts'
import { FlawList } from './flaw-list.tsx'
import './flaws-screen.css'
import { KeepSection } from './keep-section.tsx'
import { PanelChoice } from './panel-choice.tsx'
import { StepFrame } from './step-frame.tsx'

const FORMS = ['round', 'box', 'line'] as const

/** What cannot be used: marked on the panels by touch, or by figures. */
export function FlawsScreen() {
  const panelId = useSignal<string | null>(null)
  const chosen = useSignal<string | null>(null)
  if (!kind.value) return <Redirect to="/" />
  const opened = draft.value.ownHem.length > 0 ? panelsKeepingHems : panelsOf
  const panels: readonly PanelShape[] = opened(garmentToDraw(draft.value, kind.value))
  const panel = panels.find(({ id }) => id === panelId.value) ?? panels[0]
  const choose = (id: string | null) => {
    chosen.value = id
    const { flaws, print } = draft.value
    const on = id === PRINT ? print?.panel : flaws.find((flaw) => flaw.id === id)?.panel
    if (on) panelId.value = on
  }
  return (
    <StepFrame step="flaws" title={words.flaws.title}>
      {panel ? (
        <>
          {panels.length > 1 && (
            <PanelChoice
              panels={panels}
              chosen={panel.id}
              marks={(id) => draft.value.flaws.filter((flaw) => flaw.panel === id).length}
              onChoose={(id) => (panelId.value = id)}
            />
          )}
          <Marking key={panel.id} panel={panel} chosen={chosen.value} onChoose={choose} />
          <FlawList panels={panels} chosen={chosen.value} onChoose={choose} />
          <KeepSection panels={panels} panel={panel} chosen={chosen.value} onChoose={choose} />
        </>
      ) : (
        <p>{words.flaws.noPanels}</p>
      )}
    </StepFrame>
  )
}

interface MarkingProps {
  readonly panel: PanelShape
  readonly chosen: string | null
  readonly onChoose: (id: string | null) => void
}

function Marking({ panel, chosen, onChoose }: MarkingProps) {
  const form = useSignal<FlawForm>('round')
  const next = useSignal<FlawKind>('hole')
  const { flaws, print } = draft.value
  const add = (at: Point, shape?: FlawShape) => {
    const flaw = newFlaw(newId(), panel.id, next.value, form.value, at)
    tell({ flaws: [...draft.value.flaws, shape ? { ...flaw, shape } : flaw] })
    onChoose(flaw.id)
  }
  const reshape = (id: string, shape: FlawShape) => {
    if (id === PRINT && print && shape.form === 'box') tell({ print: { ...print, frame: shape } })
    else tell({ flaws: draft.value.flaws.map((flaw) => (flaw.id === id ? { ...flaw, shape } : flaw)) })
  }
  const name = words.garments.panels[panel.id] ?? panel.id
  const { minX, minY, maxX, maxY } = boxOf([panel.outline])
  return (
    <>
      <p class="soft">{words.flaws.hint}</p>
      <div class="flaw-drawing">
        <FlawEditor
          outline={panel.outline}
          builtIn={panel.flaws.map(({ outline }) => outline)}
          flaws={flaws.filter((flaw) => flaw.panel === panel.id)}
          chosen={chosen}
          form={form.value}
          label={words.flaws.drawing(name)}
          onAdd={(at) => add(at)}
          onDraw={(shape) => add([0, 0], shape)}
          onChoose={onChoose}
          print={print?.panel === panel.id ? { id: PRINT, shape: print.frame } : null}
          onShape={reshape}
        />
      </div>
      <Choice
        name="form"
        label={words.flaws.form}
        options={FORMS.map((value) => ({ value, icon: value, label: words.flaws.forms[value] }))}
        value={form.value}
        onChoose={(value) => (form.value = value)}
      />
      <Picker
        id="next-kind"
        label={words.flaws.kind}
        options={FLAW_KINDS.map((value) => ({ value, label: words.flaws.kinds[value] }))}
        value={next.value}
        onPick={(value) => (next.value = value)}
      />
      <Button icon="plus" onPress={() => add([(minX + maxX) / 2, (minY + maxY) / 2])}>
        {words.flaws.add}
      </Button>
    </>
  )
}
