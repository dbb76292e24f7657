import { useId } from 'preact/hooks'
import { Icon } from './icon.tsx'
import './tick.css'
import './field.css'

interface TickProps {
  readonly label: string
  readonly checked: boolean
  readonly onChange: (checked: boolean) => void
  readonly hint?: string | undefined
}

/** A yes/no fact; the whole row is the target. */
export function Tick({ label, checked, onChange, hint }: TickProps) {
  const id = useId()
  return (
    <label class="tick">
      <input
        type="checkbox"
        class="unseen"
        checked={checked}
        aria-describedby={hint ? id : undefined}
        onChange={(event) => onChange(event.currentTarget.checked)}
      />
      <span class="tick-box">{checked && <Icon name="tick" size={22} />}</span>
      <span class="grow">
        <span>{label}</span>
        {hint && (
          <span id={id} class="field-hint tick-hint">
            {hint}
          </span>
        )}
      </span>
    </label>
  )
}
