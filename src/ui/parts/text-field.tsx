import { enterNext } from './enter-next.ts'
import { describedBy, Field } from './field.tsx'

interface TextFieldProps {
  readonly id: string
  readonly label: string
  readonly value: string
  readonly onValue: (value: string) => void
  readonly hint?: string | undefined
  readonly error?: string | null | undefined
  readonly lines?: number
  /** What may be typed, shown while nothing is. */
  readonly placeholder?: string
  /** The keyboard's “next” leads to the first figure of the same form. */
  readonly leads?: boolean
}

export function TextField({
  id,
  label,
  value,
  onValue,
  hint,
  error,
  lines = 1,
  placeholder,
  leads = false,
}: TextFieldProps) {
  const shared = {
    id,
    value,
    class: 'field-input',
    autoComplete: 'off',
    ...(placeholder !== undefined && { placeholder }),
    'aria-describedby': describedBy(id),
    'aria-invalid': error ? 'true' : 'false',
  } as const
  return (
    <Field id={id} label={label} hint={hint} error={error}>
      {lines > 1 ? (
        <textarea {...shared} rows={lines} onInput={(event) => onValue(event.currentTarget.value)} />
      ) : (
        <input
          {...shared}
          {...(leads && { enterKeyHint: 'next' as const, onKeyDown: enterNext })}
          type="text"
          onInput={(event) => onValue(event.currentTarget.value)}
        />
      )}
    </Field>
  )
}
