import { useMemo } from 'preact/hooks'
import { readLength } from '../../core/base/length.ts'
import { MM_PER_INCH, type Mm } from '../../core/base/units.ts'
import { type Units, unitName, writeBare } from '../words/format.ts'
import { words } from '../words/words.ts'
import { FigureField } from './figure-field.tsx'
import { FractionKeys, withFraction } from './fraction-keys.tsx'
import type { Spelling } from './typed-text.ts'
import { useTyped } from './use-typed.ts'

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
  /** False: the length is no part of anything until a button adds it. */
  readonly isPart?: boolean
  /** What is longer is left in the field and is part of nothing either. */
  readonly most?: Mm
  readonly hint?: string | undefined
  readonly query?: string | null | undefined
  /** A length, or null with the text that is not one (empty when the field was emptied). */
  readonly onValue: (value: Mm | null, unread: string) => void
  readonly onFocus?: (() => void) | undefined
}

/** A length typed in her unit: decimals, fractions or both, with steppers for one thumb. */
export function LengthField(props: LengthFieldProps) {
  const { id, value, units, start = null, isPart = true, most = Number.POSITIVE_INFINITY, onValue } = props
  const spelling = useMemo(() => spellingIn(units), [units.units, units.inchFraction])
  const typing = useTyped<Mm | null>({
    id,
    value,
    spelling,
    unread: props.unread,
    isStored: (text) => {
      const read = spelling.read(text) ?? null
      return text.trim() === '' || (isPart && read !== null && read <= most)
    },
    onValue: (read, text) => onValue(read, read === null ? text.trim() && text : ''),
  })
  const { text, focused, type } = typing
  const step = units.units === 'cm' ? 5 : MM_PER_INCH / 4
  const stepBy = (direction: 1 | -1) => {
    const from = spelling.read(text) ?? value ?? props.stepFrom ?? 0
    type(written(Math.max(step, Math.round(from / step + direction) * step), units))
  }
  const isStart = text === '' && start !== null
  return (
    <FigureField
      id={id}
      label={props.label}
      unit={unitName(units)}
      typing={typing}
      shown={isStart && !focused ? written(start, units) : undefined}
      started={isStart}
      hint={props.hint}
      error={focused ? null : faultIn(text, units)}
      query={props.query}
      onStep={stepBy}
      onFocus={props.onFocus}
    >
      {units.units === 'in' && focused && (
        <FractionKeys inchFraction={units.inchFraction} onKey={(key) => type(withFraction(text, key))} />
      )}
    </FigureField>
  )
}

/** null stands for an empty field and for text that is no length. */
function spellingIn(units: Units): Spelling<Mm | null> {
  return {
    read: (text) => {
      const read = readLength(text, units.units)
      return read.ok && read.value > 0 ? read.value : null
    },
    write: (value) => written(value, units),
    same: (a, b) => (a === null || b === null ? a === b : Math.abs(a - b) < 0.005),
  }
}

function written(value: Mm | null, units: Units): string {
  return value === null ? '' : writeBare(value, units)
}

function faultIn(text: string, units: Units): string | null {
  if (text.trim() === '') return null
  const read = readLength(text, units.units)
  if (!read.ok) return words.parts.lengthWrong(units.units === 'cm' ? written(365, units) : '14 3/8')
  return read.value > 0 ? null : words.parts.lengthNone
}
