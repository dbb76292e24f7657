import { describedBy, Field } from './field.tsx'

interface TextFieldProps {
  readonly id: string
  readonly label: string
  readonly value: string
  readonly onValue: (value: string) => void
  readonly hint?: string | undefined
  readonly lines?: number
}

export function TextField({ id, label, value, onValue, hint, lines = 1 }: TextFieldProps) {
  const shared = { id, value, class: 'field-input', autoComplete: 'off', 'aria-describedby': describedBy(id) }
  return (
    <Field id={id} label={label} hint={hint}>
      {lines > 1 ? (
        <textarea {...shared} rows={lines} onInput={(event) => onValue(event.currentTarget.value)} />
      ) : (
        <input {...shared} type="text" onInput={(event) => onValue(event.currentTarget.value)} />
      )}
    </Field>
  )
}
