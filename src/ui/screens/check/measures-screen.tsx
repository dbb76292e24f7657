import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { Redirect, useLocation, useParams } from 'wouter-preact'
import { measuresShown } from '../../../core/garments/index.ts'
import type { GarmentKind, KindId, Measures } from '../../../core/garments/kind.ts'
import { LABEL_SIZES, type LabelSize } from '../../../core/garments/kind.ts'
import { FigureDrawing } from '../../drawing/figure-drawing.tsx'
import { Choice } from '../../parts/choice.tsx'
import { Picker } from '../../parts/picker.tsx'
import { Tick } from '../../parts/tick.tsx'
import { measuresToDraw, traitsOf } from '../../state/check-draft.ts'
import { draft, kind, tell } from '../../state/check-state.ts'
import { words } from '../../words/words.ts'
import { MeasureFields } from './measure-fields.tsx'
import './measures-screen.css'
import { OutlineFields } from './outline-fields.tsx'
import { StepFrame } from './step-frame.tsx'

/** The tape: each figure typed beside a drawing to scale that shows where it is taken. */
export function MeasuresScreen() {
  const [, go] = useLocation()
  const active = useSignal<string | null>(null)
  // An implausible figure, as one half typed is, leaves the drawing as it was.
  const drawn = useRef<{ readonly kind: KindId; readonly measures: Measures } | null>(null)
  const { measure } = useParams<{ measure?: string }>()
  // After the title took the focus: whoever comes for one measure has its field under the thumb.
  useEffect(() => {
    if (measure) document.getElementById(`measure-${measure}`)?.focus()
  }, [measure])
  const garment = kind.value
  if (!garment) return <Redirect to="/" />
  const name = words.garments.kinds[garment.id]
  if (garment.id === 'free-outline') {
    return (
      <StepFrame step="measures" title={name}>
        <OutlineFields />
      </StepFrame>
    )
  }
  const { labelSize } = draft.value
  const made = traitsOf(draft.value, garment)
  const last = drawn.current?.kind === garment.id ? drawn.current.measures : {}
  const shown = measuresShown(garment, measuresToDraw(draft.value, garment), made, last, labelSize)
  drawn.current = { kind: garment.id, measures: shown }
  return (
    <StepFrame step="measures" title={name}>
      <div class="tape-drawing">
        <FigureDrawing
          figure={garment.figure(shown, made)}
          label={drawingLabel(name, active.value)}
          active={active.value}
          tapes
        />
      </div>
      <form
        class="stack"
        onSubmit={(event) => {
          event.preventDefault()
          go('/check/cloth')
        }}
      >
        <Picker<LabelSize | ''>
          id="label-size"
          label={words.check.label}
          hint={labelSize ? words.check.labelStart : words.check.measuresHint}
          options={[
            { value: '', label: words.check.labelNone },
            ...LABEL_SIZES.map((size) => ({ value: size, label: size })),
          ]}
          value={labelSize ?? ''}
          onPick={(size) => tell({ labelSize: size === '' ? null : size })}
        />
        <MeasureFields kind={garment} onActive={(id) => (active.value = id)} />
        <button type="submit" class="unseen" tabIndex={-1}>
          {words.check.next}
        </button>
      </form>
      <HowMade kind={garment} />
    </StepFrame>
  )
}

function drawingLabel(name: string, active: string | null): string {
  const measure = active === null ? undefined : words.garments.measures[active]
  return measure ? words.check.drawingTape(name, measure.name) : words.check.drawingOf(name)
}

/** Facts that change what the garment opens into. */
function HowMade({ kind: { traits } }: { kind: GarmentKind }) {
  const { opening, traits: told } = draft.value
  return (
    <section class="stack" aria-labelledby="made-title">
      <h2 id="made-title">{words.check.made}</h2>
      {traits.map(({ id, usual }) => (
        <Tick
          key={id}
          label={words.garments.traits[id]?.name ?? id}
          hint={words.garments.traits[id]?.hint}
          checked={told[id] ?? usual}
          onChange={(checked) => tell({ traits: { ...told, [id]: checked } })}
        />
      ))}
      <Choice
        name="opening"
        label={words.check.opening}
        options={(['cut', 'unpicked'] as const).map((value) => ({
          value,
          label: words.check.openings[value],
        }))}
        value={opening}
        onChoose={(value) => tell({ opening: value })}
        hint={words.check.openingHint[opening]}
      />
    </section>
  )
}
