import { MM_PER_INCH, type Mm } from '../../core/base/units.ts'
import { type Units, writeSmall } from '../words/format.ts'
import { words } from '../words/words.ts'
import { Picker } from './picker.tsx'

const METRIC: readonly Mm[] = [0, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20]
const INCHES: readonly Mm[] = [0, 1, 2, 3, 4, 5, 6, 8, 12].map(
  (sixteenths) => (sixteenths * MM_PER_INCH) / 16,
)

interface GapPickerProps {
  readonly id: string
  readonly label: string
  readonly hint: string
  readonly value: Mm
  readonly units: Units
  readonly onPick: (value: Mm) => void
}

/** A small length that is chosen rather than typed. A value that is none of the usual ones is offered too. */
export function GapPicker({ id, label, hint, value, units, onPick }: GapPickerProps) {
  const usual = units.units === 'cm' ? METRIC : INCHES
  const gaps = usual.some((gap) => Math.abs(gap - value) < 0.01)
    ? usual
    : [...usual, value].sort((a, b) => a - b)
  const chosen = gaps.find((gap) => Math.abs(gap - value) < 0.01) ?? value
  return (
    <Picker
      id={id}
      label={label}
      hint={hint}
      options={gaps.map((gap) => ({
        value: String(gap),
        label: gap === 0 ? words.parts.none : writeSmall(gap, sixteenths(units)),
      }))}
      value={String(chosen)}
      onPick={(picked) => onPick(Number(picked))}
    />
  )
}

/** Sixteenths are shown as such even to her who measures in eighths. */
function sixteenths({ units }: Units): Units {
  return { units, inchFraction: 16 }
}
