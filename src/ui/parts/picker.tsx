import { describedBy, Field } from './field.tsx'

interface PickerProps<T extends string> {
  readonly id: string
  readonly label: string
  readonly options: readonly { readonly value: T; readonly label: string }[]
  readonly value: T
  readonly onPick: (value: T) => void
  readonly hint?: string | undefined
  /** The label is said but not shown: what is picked says enough. */
  readonly labelUnseen?: boolean
}

/** One of many, by the phone's own list. */
export function Picker<T extends string>(props: PickerProps<T>) {
  const { id, label, options, value, onPick, hint, labelUnseen = false } = props
  return (
    <Field id={id} label={label} hint={hint} labelUnseen={labelUnseen}>
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
