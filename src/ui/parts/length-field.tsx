import { useEffect, useState } from 'preact/hooks'
import { readLength } from '../../core/base/length.ts'
import { MM_PER_INCH, type Mm } from '../../core/base/units.ts'
import { type Units, unitName, writeBare } from '../words/format.ts'
import { words } from '../words/words.ts'
import { FigureField } from './figure-field.tsx'
import { FractionKeys, withFraction } from './fraction-keys.tsx'

interface LengthFieldProps {
  readonly id: string
  readonly label: string
  readonly value: Mm | null
  readonly units: Units
  /** Shown, slanted, while `value` is null. */
  readonly start?: Mm | null
  /** Where the steppers start while `value` is null. */
  readonly stepFrom?: Mm
  /** Text that could not be read before, shown again. */
  readonly unread?: string | undefined
  readonly hint?: string | undefined
  readonly query?: string | null | undefined
  /** A length, or null with the text that is not one (empty when the field was emptied). */
  readonly onValue: (value: Mm | null, unread: string) => void
  readonly onFocus?: (() => void) | undefined
}

/** A length typed in her unit: decimals, fractions or both, with steppers for one thumb. */
export function LengthField(props: LengthFieldProps) {
  const { value, units, start = null, unread = '', onValue } = props
  const [text, setText] = useState(() => unread || written(value, units))
  const [focused, setFocused] = useState(false)
  useEffect(
    () => setText((held) => (means(held, value, units) ? held : unread || written(value, units))),
    [value, units.units, units.inchFraction],
  )

  const take = (typed: string) => {
    setText(typed)
    if (typed.trim() === '') return onValue(null, '')
    const read = readLength(typed, units.units)
    if (read.ok && read.value > 0) onValue(read.value, '')
    else onValue(null, typed)
  }
  const step = units.units === 'cm' ? 5 : MM_PER_INCH / 4
  const stepBy = (direction: 1 | -1) => {
    const from = value ?? props.stepFrom ?? 0
    const next = Math.max(step, Math.round(from / step + direction) * step)
    setText(written(next, units))
    onValue(next, '')
  }
  const shown = text === '' && start !== null && !focused ? written(start, units) : text
  return (
    <FigureField
      id={props.id}
      label={props.label}
      unit={unitName(units)}
      text={shown}
      started={text === '' && start !== null}
      hint={props.hint}
      error={focused ? null : faultIn(text, units)}
      query={props.query}
      onText={take}
      onStep={stepBy}
      onFocus={() => {
        setFocused(true)
        props.onFocus?.()
      }}
      onBlur={() => setFocused(false)}
    >
      {units.units === 'in' && focused && (
        <FractionKeys inchFraction={units.inchFraction} onKey={(key) => take(withFraction(text, key))} />
      )}
    </FigureField>
  )
}

function written(value: Mm | null, units: Units): string {
  return value === null ? '' : writeBare(value, units)
}

/** True if the text stands for the value already, so that typing "52," is not overwritten by "52". */
function means(text: string, value: Mm | null, units: Units): boolean {
  const read = readLength(text, units.units)
  if (!read.ok) return value === null
  return value !== null && Math.abs(read.value - value) < 0.005
}

function faultIn(text: string, units: Units): string | null {
  if (text.trim() === '') return null
  const read = readLength(text, units.units)
  if (!read.ok) return words.parts.lengthWrong(units.units === 'cm' ? written(365, units) : '14 3/8')
  return read.value > 0 ? null : words.parts.lengthNone
}
