import { useSignal } from '@preact/signals'
import { PATTERN_LIMITS, type PieceShape, type StripShape } from '../../../core/patterns/index.ts'
import { LengthField } from '../../parts/length-field.tsx'
import { NumberField } from '../../parts/number-field.tsx'
import { Tick } from '../../parts/tick.tsx'
import { figuresOfShape, type ShapeFigure } from '../../state/piece-shapes.ts'
import { settings } from '../../state/settings-state.ts'
import { writeWithUnit } from '../../words/format.ts'
import { words } from '../../words/words.ts'

interface ShapeFieldsProps {
  readonly shape: PieceShape
  readonly onShape: (shape: PieceShape) => void
}

/** The figures of a shape, each in a field of its own. */
export function ShapeFields({ shape, onShape }: ShapeFieldsProps) {
  return (
    <>
      {shape.form === 'outline' && <p class="field-hint">{words.patterns.drawnHint}</p>}
      {figuresOfShape(shape).map((figure) => (
        <Figure key={figure.id} figure={figure} onShape={onShape} />
      ))}
      {shape.form === 'strip' && <StripFields strip={shape} onShape={onShape} />}
    </>
  )
}

function Figure({ figure, onShape }: { figure: ShapeFigure } & Pick<ShapeFieldsProps, 'onShape'>) {
  const tooLong = useSignal(false)
  return (
    <LengthField
      id={`figure-${figure.id}`}
      label={words.patterns.figures[figure.id]}
      value={figure.value > 0 ? figure.value : null}
      units={settings.value}
      most={PATTERN_LIMITS.length}
      query={
        tooLong.value
          ? words.patterns.tooLong(writeWithUnit(PATTERN_LIMITS.length, settings.value, 'down'))
          : null
      }
      onValue={(value) => {
        // What is too long would not be read back, so the figure before it stays.
        tooLong.value = value !== null && value > PATTERN_LIMITS.length
        if (!tooLong.value) onShape(figure.with(value ?? 0))
      }}
    />
  )
}

function StripFields({ strip, onShape }: { strip: StripShape } & Pick<ShapeFieldsProps, 'onShape'>) {
  return (
    <>
      <NumberField
        id="strip-ratio"
        label={words.patterns.ratio}
        hint={words.patterns.ratioHint}
        value={Math.round(strip.ratio * 1000) / 10}
        unit={words.parts.percent}
        least={10}
        most={PATTERN_LIMITS.ratio * 100}
        step={5}
        onValue={(percent) => {
          if (percent !== null) onShape({ ...strip, ratio: percent / 100 })
        }}
      />
      <Tick
        label={words.patterns.folded}
        checked={strip.folded}
        onChange={(folded) => onShape({ ...strip, folded })}
      />
    </>
  )
}
