import { useMemo } from 'preact/hooks'
import { readNumber, writeNumber } from '../words/format.ts'
import { words } from '../words/words.ts'
import { FigureField } from './figure-field.tsx'
import type { Spelling } from './typed-text.ts'
import { useTyped } from './use-typed.ts'

interface NumberFieldProps {
  readonly id: string
  readonly label: string
  readonly value: number | null
  readonly unit: string
  readonly least: number
  readonly most: number
  readonly step: number
  /** True: halves are refused. */
  readonly whole?: boolean
  readonly hint?: string | undefined
  /** How the figure is written; to one decimal if nothing else is said. */
  readonly write?: (value: number) => string
  /** null once the field is emptied; figures outside the range are kept back. */
  readonly onValue: (value: number | null) => void
  readonly onFocus?: (() => void) | undefined
}

/** A plain number, such as a stretch in per cent. */
export function NumberField(props: NumberFieldProps) {
  const { id, value, least, most, step, whole = false, write = writeNumber } = props
  const spelling = useMemo(() => spellingOf(least, most, whole, write), [least, most, whole, write])
  const typing = useTyped<number | null>({
    id,
    value,
    spelling,
    isStored: (text) => spelling.read(text) !== undefined,
    onValue: props.onValue,
  })
  const { text, type } = typing
  const stepBy = (direction: 1 | -1) => {
    const from = (spelling.read(text) ?? value ?? 0) + direction * step
    type(write(Math.min(most, Math.max(least, from))))
  }
  const isWrong = spelling.read(text) === undefined
  return (
    <FigureField
      id={id}
      label={props.label}
      unit={props.unit}
      typing={typing}
      hint={props.hint}
      error={isWrong ? numberWrong(whole, write(least), write(most)) : null}
      onStep={stepBy}
      onFocus={props.onFocus}
    />
  )
}

function numberWrong(whole: boolean, least: string, most: string): string {
  return whole ? words.parts.wholeWrong(least, most) : words.parts.numberWrong(least, most)
}

/** null stands for an empty field; what is no such number stands for nothing. */
function spellingOf(
  least: number,
  most: number,
  whole: boolean,
  write: (value: number) => string,
): Spelling<number | null> {
  return {
    read: (text) => {
      if (text.trim() === '') return null
      const read = readNumber(text)
      const fits = read !== null && read >= least && read <= most && !(whole && !Number.isInteger(read))
      return fits ? read : undefined
    },
    write: (value) => (value === null ? '' : write(value)),
    same: (a, b) => (a === null || b === null ? a === b : Math.abs(a - b) < 1e-9 * Math.max(1, Math.abs(a))),
  }
}
