import type { ComponentChildren } from 'preact'
import './field.css'
import { Icon } from './icon.tsx'

interface FieldProps {
  readonly id: string
  readonly label: string
  readonly hint?: string | undefined
  /** What is wrong with the value, and what would be right. */
  readonly error?: string | null | undefined
  /** The value is possible but odd: worth a second look. */
  readonly query?: string | null | undefined
  /** The label is said but not shown. */
  readonly labelUnseen?: boolean
  readonly children: ComponentChildren
}

/** Label above, the control, and under it what is wrong, odd or helpful. The control is described by `describedBy(id)`. */
export function Field({ id, label, hint, error, query, labelUnseen = false, children }: FieldProps) {
  return (
    <div class="field">
      <label class={labelUnseen ? 'unseen' : 'field-label'} for={id}>
        {label}
      </label>
      {children}
      <div id={describedBy(id)}>
        {error && (
          <p class="field-error" role="alert">
            <Icon name="cannot" size={18} />
            <span>{error}</span>
          </p>
        )}
        {!error && query && (
          <p class="field-query">
            <Icon name="doubt" size={18} />
            <span>{query}</span>
          </p>
        )}
        {!error && !query && hint && <p class="field-hint">{hint}</p>}
      </div>
    </div>
  )
}

export function describedBy(id: string): string {
  return `${id}-notes`
}
