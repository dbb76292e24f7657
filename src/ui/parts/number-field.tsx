import { useEffect, useState } from 'preact/hooks'
import { readNumber, writeNumber } from '../words/format.ts'
import { words } from '../words/words.ts'
import { FigureField } from './figure-field.tsx'

interface NumberFieldProps {
  readonly id: string
  readonly label: string
  readonly value: number | null
  readonly unit: string
  readonly least: number
  readonly most: number
  readonly step: number
  readonly hint?: string | undefined
  /** How the figure is written; to one decimal if nothing else is said. */
  readonly write?: (value: number) => string
  /** null once the field is emptied; figures outside the range are kept back. */
  readonly onValue: (value: number | null) => void
  readonly onFocus?: (() => void) | undefined
}

/** A plain number, such as a stretch in per cent. */
export function NumberField(props: NumberFieldProps) {
  const { value, least, most, step, write = writeNumber, onValue } = props
  const written = () => (value === null ? '' : write(value))
  const [text, setText] = useState(written)
  useEffect(() => setText((held) => (readNumber(held) === value ? held : written())), [value])

  const take = (typed: string) => {
    setText(typed)
    if (typed.trim() === '') return onValue(null)
    const read = readNumber(typed)
    if (read !== null && read >= least && read <= most) onValue(read)
  }
  const stepBy = (direction: 1 | -1) =>
    onValue(Math.min(most, Math.max(least, (value ?? 0) + direction * step)))

  const read = readNumber(text)
  const wrong = text.trim() !== '' && (read === null || read < least || read > most)
  return (
    <FigureField
      id={props.id}
      label={props.label}
      unit={props.unit}
      text={text}
      hint={props.hint}
      error={wrong ? words.parts.numberWrong(write(least), write(most)) : null}
      onText={take}
      onStep={stepBy}
      onFocus={props.onFocus}
    />
  )
}
