import { useSignal } from '@preact/signals'
import { PATTERN_LIMITS, type PieceShape } from '../../../core/patterns/index.ts'
import { LengthField } from '../../parts/length-field.tsx'
import { Picker } from '../../parts/picker.tsx'
import { allowanceOf, withAllowance } from '../../state/piece-shapes.ts'
import { settings } from '../../state/settings-state.ts'
import { allowanceChoices } from '../../words/pattern-words.ts'
import { words } from '../../words/words.ts'

/** Values that are no width. */
const OTHER = 'other'
const MIXED = 'mixed'

interface AllowancePickerProps {
  readonly shape: PieceShape
  /** Changes the shape in every size: a seam is the same in all of them. */
  readonly onShape: (to: (shape: PieceShape) => PieceShape) => void
}

/** Whether the figures are cut figures, or which seam adds its allowance to them. */
export function AllowancePicker({ shape, onShape }: AllowancePickerProps) {
  const typing = useSignal(false)
  const allowance = allowanceOf(shape)
  const choices = allowanceChoices(settings.value)
  const known = allowance === 0 || choices.some(({ width }) => width === allowance)
  const value =
    allowance === null && !typing.value ? MIXED : typing.value || !known ? OTHER : String(allowance)
  const set = (width: number) => onShape((now) => withAllowance(now, width))
  return (
    <>
      <Picker
        id="allowance"
        label={words.patterns.allowance}
        hint={value === '0' || value === MIXED ? undefined : words.patterns.allowanceHint}
        options={[
          ...(allowance === null ? [{ value: MIXED, label: words.patterns.allowanceMixed }] : []),
          { value: '0', label: words.patterns.allowanceNone },
          ...choices.map(({ width, label }) => ({ value: String(width), label })),
          { value: OTHER, label: words.patterns.allowanceOther },
        ]}
        value={value}
        onPick={(picked) => {
          typing.value = picked === OTHER
          if (picked !== OTHER && picked !== MIXED) set(Number(picked))
        }}
      />
      {value === OTHER && (
        <LengthField
          id="allowance-width"
          label={words.patterns.allowanceWidth}
          value={allowance || null}
          units={settings.value}
          most={PATTERN_LIMITS.allowance}
          onValue={(width) => {
            if (width !== null && width <= PATTERN_LIMITS.allowance) set(width)
          }}
        />
      )}
    </>
  )
}
