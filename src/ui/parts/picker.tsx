import { describedBy, Field } from './field.tsx'

interface PickerProps<T extends string> {
  readonly id: string
  readonly label: string
  readonly options: readonly { readonly value: T; readonly label: string }[]
  readonly value: T
  readonly onPick: (value: T) => void
  readonly hint?: string | undefined
}

/** One of many, by the phone's own list. */
export function Picker<T extends string>({ id, label, options, value, onPick, hint }: PickerProps<T>) {
  return (
    <Field id={id} label={label} hint={hint}>
      <select
        id={id}
        class="field-select"
        value={value}
        aria-describedby={describedBy(id)}
        onChange={(event) => onPick(event.currentTarget.value as T)}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </Field>
  )
}
