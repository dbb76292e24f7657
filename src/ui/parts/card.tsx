import type { ComponentChildren } from 'preact'
import { Link } from 'wouter-preact'
import './card.css'
import { Icon } from './icon.tsx'

interface Face {
  readonly picture?: ComponentChildren
  readonly title: string
  /** Lines under the title. */
  readonly children?: ComponentChildren
}

/** A row of a list that leads to a screen of its own. */
export function CardLink({ to, ...face }: Face & { readonly to: string }) {
  return (
    <Link href={to} class="card">
      <CardFace {...face} />
    </Link>
  )
}

/** A row of a list that opens something here. */
export function CardButton({ onPress, ...face }: Face & { readonly onPress: () => void }) {
  return (
    <button type="button" class="card" onClick={onPress}>
      <CardFace {...face} />
    </button>
  )
}

function CardFace({ picture, title, children }: Face) {
  return (
    <>
      {picture}
      <span class="grow">
        <span class="card-title">{title}</span>
        {children}
      </span>
      <Icon name="onward" />
    </>
  )
}
