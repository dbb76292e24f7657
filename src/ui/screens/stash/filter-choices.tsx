import type { Said } from '../../../core/stash/said-of-cloth.ts'
import { Choice } from '../../parts/choice.tsx'
import { Picker } from '../../parts/picker.tsx'
import { stashWords } from '../../words/en/stash.ts'
import { writeNumber } from '../../words/format.ts'

const texts = stashWords

interface SaidProps {
  readonly id: string
  readonly label: string
  readonly said: readonly Said[]
  readonly value: string | null
  readonly onPick: (value: string | null) => void
}

/** One of the things said of her garments, or no matter which; nothing to choose from, nothing shown. */
export function SaidPicker({ id, label, said, value, onPick }: SaidProps) {
  if (said.length === 0) return null
  return (
    <Picker
      id={id}
      label={label}
      value={value ?? ''}
      options={[
        { value: '', label: texts.any },
        ...said.map(({ text, count }) => ({ value: text, label: texts.ofThem(text, writeNumber(count)) })),
      ]}
      onPick={(picked) => onPick(picked === '' ? null : picked)}
    />
  )
}

interface EitherProps<T extends string> {
  readonly name: string
  readonly label: string
  readonly options: Readonly<Record<T, string>>
  readonly value: T | null
  readonly onChoose: (value: T | null) => void
}

/** One of a few, or no matter which. */
export function Either<T extends string>({ name, label, options, value, onChoose }: EitherProps<T>) {
  const listed = Object.entries(options) as [T, string][]
  return (
    <Choice<T | 'any'>
      name={`filter-${name}`}
      label={label}
      options={[
        { value: 'any', label: texts.any },
        ...listed.map(([id, text]) => ({ value: id, label: text })),
      ]}
      value={value ?? 'any'}
      onChoose={(chosen) => onChoose(chosen === 'any' ? null : chosen)}
    />
  )
}
