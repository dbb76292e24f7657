import { enterNext } from './enter-next.ts'
import { describedBy, Field } from './field.tsx'
import type { Spelling } from './typed-text.ts'
import { useTyped } from './use-typed.ts'

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
  /** False: the text is no part of anything until a button adds it. */
  readonly isPart?: boolean
}

const ITSELF: Spelling<string> = { read: (text) => text, write: (value) => value, same: Object.is }

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
  isPart = true,
}: TextFieldProps) {
  const isStored = (text: string) => isPart || text === ''
  const typing = useTyped({ id, value, spelling: ITSELF, isStored, onValue })
  const shared = {
    id,
    value: typing.text,
    onFocus: typing.enter,
    onBlur: typing.leave,
    class: 'field-input',
    autoComplete: 'off',
    ...(placeholder !== undefined && { placeholder }),
    'aria-describedby': describedBy(id),
    'aria-invalid': error ? 'true' : 'false',
  } as const
  return (
    <Field id={id} label={label} hint={hint} error={error}>
      {lines > 1 ? (
        <textarea {...shared} rows={lines} onInput={(event) => typing.type(event.currentTarget.value)} />
      ) : (
        <input
          {...shared}
          {...(leads && { enterKeyHint: 'next' as const, onKeyDown: enterNext })}
          type="text"
          onInput={(event) => typing.type(event.currentTarget.value)}
        />
      )}
    </Field>
  )
}
