import type { ComponentChildren } from 'preact'
import { words } from '../words/words.ts'
import { enterNext } from './enter-next.ts'
import { describedBy, Field } from './field.tsx'
import { Icon } from './icon.tsx'
import type { Typing } from './use-typed.ts'

export interface FigureFieldProps {
  readonly id: string
  readonly label: string
  readonly typing: Typing
  /** Shown in place of the field's own text. */
  readonly shown?: string | undefined
  /** Shown after the figure: `cm`, `%`. */
  readonly unit: string
  readonly hint?: string | undefined
  readonly error?: string | null | undefined
  readonly query?: string | null | undefined
  /** The figure stands there as a start and has not been measured. */
  readonly started?: boolean | undefined
  readonly onStep: (direction: 1 | -1) => void
  readonly onFocus?: (() => void) | undefined
  /** Keys that belong to the figure, such as fractions. */
  readonly children?: ComponentChildren
}

/** A typed figure with its unit between a minus and a plus. */
export function FigureField(props: FigureFieldProps) {
  const { id, label, typing, unit } = props
  return (
    <Field id={id} label={label} hint={props.hint} error={props.error} query={props.query}>
      <div class={props.started ? 'figure-row figure-started' : 'figure-row'}>
        <Step icon="minus" label={words.parts.less(label)} onPress={() => props.onStep(-1)} />
        <input
          id={id}
          class="field-input"
          data-figure
          type="text"
          inputMode="decimal"
          enterKeyHint="next"
          autoComplete="off"
          value={props.shown ?? typing.text}
          aria-invalid={props.error ? 'true' : 'false'}
          aria-describedby={describedBy(id)}
          onInput={(event) => typing.type(event.currentTarget.value)}
          onKeyDown={enterNext}
          onFocus={(event) => {
            event.currentTarget.select()
            typing.enter()
            props.onFocus?.()
          }}
          onBlur={typing.leave}
        />
        <span class="field-unit">{unit}</span>
        <Step icon="plus" label={words.parts.more(label)} onPress={() => props.onStep(1)} />
      </div>
      {props.children}
    </Field>
  )
}

function Step({ icon, label, onPress }: { icon: 'minus' | 'plus'; label: string; onPress: () => void }) {
  return (
    <button
      type="button"
      class="figure-step"
      aria-label={label}
      // Keeps the cursor in the figure, so that the phone's keyboard stays as it is.
      onPointerDown={(event) => event.preventDefault()}
      onClick={onPress}
    >
      <Icon name={icon} />
    </button>
  )
}
