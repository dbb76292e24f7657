import type { ComponentChildren } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { words } from '../words/words.ts'
import { Icon } from './icon.tsx'
import './screen.css'

interface ScreenProps {
  readonly title: string
  /** Where the arrow before the title leads; absent on the first screen of a place. */
  readonly back?: string
  /** Beside the title. */
  readonly beside?: ComponentChildren
  /** Stays in reach of the thumb, above the keyboard. */
  readonly foot?: ComponentChildren
  readonly children: ComponentChildren
}

/** One screen: title, what scrolls, what stays at the thumb. The title takes the focus so that a screen reader says where one is. */
export function Screen({ title, back, beside, foot, children }: ScreenProps) {
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => {
    document.title = `${title} · ${words.shell.appName}`
  }, [title])
  // Once only: a title may follow what is being typed into a field of the screen.
  useEffect(() => heading.current?.focus({ preventScroll: true }), [])
  return (
    <main class="screen">
      <div class="screen-scroll">
        <header class="screen-head">
          {back !== undefined && (
            <Link href={back} class="icon-button" aria-label={words.shell.back}>
              <Icon name="back" />
            </Link>
          )}
          <h1 ref={heading} tabIndex={-1} class="grow">
            {title}
          </h1>
          {beside}
        </header>
        <div class="screen-body">{children}</div>
      </div>
      {foot && <div class="screen-foot">{foot}</div>}
    </main>
  )
}
