import { useSignal } from '@preact/signals'
import { useRef } from 'preact/hooks'
import { DragLine } from '../../drawing/drag-line.tsx'
import { ScreenRuler } from '../../drawing/screen-ruler.tsx'
import { Button, IconButton } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { Sheet } from '../../parts/sheet.tsx'
import { useHeight } from '../../parts/use-height.ts'
import { stretchAsked } from '../../state/check-draft.ts'
import { draft, pattern, tell } from '../../state/check-state.ts'
import { dotsPerMm, relaxedLength, stretchAt } from '../../state/screen-scale.ts'
import { settings } from '../../state/settings-state.ts'
import { writePercent, writeWithUnit } from '../../words/format.ts'
import { words } from '../../words/words.ts'
import { CardRuler } from './card-ruler.tsx'

type Axis = 'across' | 'along'

/** Stretch by two marks: cloth pinched over a known length on the screen, and the line dragged to where it reaches. */
export function StretchRuler({ onClose }: { onClose: () => void }) {
  const axis = useSignal<Axis>('across')
  const byCard = useSignal(false)
  const reached = useSignal<Readonly<Record<Axis, number | null>>>({ across: null, along: null })
  if (byCard.value) return <CardRuler onClose={() => (byCard.value = false)} />
  const use = (percent: number) => {
    tell({ stretch: { ...draft.value.stretch, [axis.value]: percent } })
    if (axis.value === 'across' && draft.value.stretch.along === null) axis.value = 'along'
    else onClose()
  }
  return (
    <Sheet full title={words.check.rulerTitle} onClose={onClose}>
      <Choice<Axis>
        name="ruler-axis"
        label={words.check.rulerAxis}
        labelUnseen
        options={[
          { value: 'across', label: words.check.rulerAcross },
          { value: 'along', label: words.check.rulerAlong },
        ]}
        value={axis.value}
        onChoose={(value) => (axis.value = value)}
      />
      <Marks
        axis={axis.value}
        dragged={reached.value[axis.value]}
        onDrag={(mm) => (reached.value = { ...reached.value, [axis.value]: mm })}
        onUse={use}
        onCard={() => (byCard.value = true)}
      />
    </Sheet>
  )
}

interface MarksProps {
  readonly axis: Axis
  /** Where the line has been dragged to, mm from the top line; null: not yet. */
  readonly dragged: number | null
  readonly onDrag: (mm: number) => void
  readonly onUse: (percent: number) => void
  readonly onCard: () => void
}

function Marks({ axis, dragged, onDrag, onUse, onCard }: MarksProps) {
  const area = useRef<HTMLDivElement>(null)
  const height = useHeight(area)
  const scale = dotsPerMm.value
  const need = pattern.value
    ? stretchAsked(pattern.value, draft.value.version, draft.value.otherRoles)[axis]
    : 0
  const length = height / scale
  const relaxed = relaxedLength(length, need)
  const told = draft.value.stretch[axis]
  const reached = dragged ?? relaxed * (1 + (told ?? 0) / 100)
  const percent = stretchAt(relaxed, reached)
  const inUnits = (mm: number) => writeWithUnit(mm, settings.value)
  const needed = relaxed * (1 + need / 100)
  return (
    <>
      <p class="ruler-how">{words.check.rulerHow(inUnits(relaxed))}</p>
      <div ref={area} class="ruler-area">
        {length > 0 && (
          <>
            <ScreenRuler
              dotsPerMm={scale}
              length={length}
              marks={[
                { at: 0, look: 'hold', label: words.check.rulerTop },
                { at: relaxed, look: 'relaxed', label: words.check.rulerRelaxed(inUnits(relaxed)) },
                ...(need > 0
                  ? [
                      {
                        at: needed,
                        look: 'needed' as const,
                        label: words.check.rulerNeed(writePercent(need)),
                      },
                    ]
                  : []),
              ]}
            />
            <DragLine
              at={reached * scale}
              most={height}
              label={words.check.rulerHandle}
              text={words.check.rulerReach(inUnits(reached), writePercent(percent))}
              onMove={(at) => onDrag(Math.max(relaxed, at / scale))}
            />
          </>
        )}
      </div>
      <div class="row">
        <IconButton icon="card" label={words.check.rulerAdjust} onPress={onCard} />
        <Button look="main" wide disabled={dragged === null && told === null} onPress={() => onUse(percent)}>
          {dragged === null && told === null
            ? words.check.rulerFirst
            : words.check.rulerUse(writePercent(percent))}
        </Button>
      </div>
    </>
  )
}
