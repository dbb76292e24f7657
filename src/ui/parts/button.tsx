import type { ComponentChildren } from 'preact'
import { Link } from 'wouter-preact'
import './button.css'
import { Icon, type IconName } from './icon.tsx'

/** `main`: the one thing to do here; `plain`: beside it; `quiet`: text only; `danger`: takes something away. */
export type ButtonLook = 'main' | 'plain' | 'quiet' | 'danger'

interface Looks {
  readonly look?: ButtonLook
  readonly icon?: IconName
  readonly wide?: boolean
  readonly children: ComponentChildren
}

interface ButtonProps extends Looks {
  readonly onPress?: () => void
  readonly type?: 'button' | 'submit'
  readonly disabled?: boolean
}

export function Button({ look = 'plain', icon, wide = false, children, ...rest }: ButtonProps) {
  return (
    <button
      type={rest.type ?? 'button'}
      class={looks(look, wide)}
      disabled={rest.disabled ?? false}
      onClick={rest.onPress}
    >
      {icon && <Icon name={icon} />}
      <span>{children}</span>
    </button>
  )
}

/** Looks like a button, goes to another screen. */
export function ButtonLink({ look = 'plain', icon, wide = false, to, children }: Looks & { to: string }) {
  return (
    <Link href={to} class={looks(look, wide)}>
      {icon && <Icon name={icon} />}
      <span>{children}</span>
    </Link>
  )
}

interface IconButtonProps {
  readonly icon: IconName
  /** Said by screen readers, and shown on hovering. */
  readonly label: string
  readonly onPress: () => void
  readonly pressed?: boolean
}

export function IconButton({ icon, label, onPress, pressed }: IconButtonProps) {
  return (
    <button
      type="button"
      class="icon-button"
      aria-label={label}
      title={label}
      aria-pressed={pressed}
      onClick={onPress}
    >
      <Icon name={icon} />
    </button>
  )
}

function looks(look: ButtonLook, wide: boolean): string {
  return `button button-${look}${wide ? ' button-wide' : ''}`
}
