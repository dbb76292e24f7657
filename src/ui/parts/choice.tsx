import './choice.css'
import { Icon, type IconName } from './icon.tsx'
import './field.css'

export interface ChoiceOption<T extends string> {
  readonly value: T
  readonly label: string
  readonly icon?: IconName
}

interface ChoiceProps<T extends string> {
  readonly name: string
  readonly label: string
  readonly options: readonly ChoiceOption<T>[]
  readonly value: T | null
  readonly onChoose: (value: T) => void
  readonly hint?: string | undefined
  /** The label is said but not shown. */
  readonly labelUnseen?: boolean
}

/** One of a few, all in view. */
export function Choice<T extends string>(props: ChoiceProps<T>) {
  return (
    <fieldset class="choice">
      <legend class={props.labelUnseen ? 'unseen' : 'field-label'}>{props.label}</legend>
      <div class="choice-row">
        {props.options.map((option) => (
          <label key={option.value} class="choice-option">
            <input
              type="radio"
              class="unseen"
              name={props.name}
              value={option.value}
              checked={option.value === props.value}
              onChange={() => props.onChoose(option.value)}
            />
            <span class="choice-face">
              {option.icon && <Icon name={option.icon} size={20} />}
              {option.label}
            </span>
          </label>
        ))}
      </div>
      {props.hint && <p class="field-hint">{props.hint}</p>}
    </fieldset>
  )
}
