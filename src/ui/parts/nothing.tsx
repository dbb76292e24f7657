import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'
import { words } from '../words/words.ts'

interface NothingProps {
  readonly title: string
  /** How something gets here. */
  readonly how: string
  /** True: what is stored could not be read, so nobody knows whether there is nothing. */
  readonly unread: boolean
  readonly children?: ComponentChildren
}

/** What a list says while it has nothing to show. */
export function Nothing({ title, how, unread, children }: NothingProps) {
  const id = useId()
  if (unread) return <p>{words.shell.unread}</p>
  return (
    <section class="stack" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      <p>{how}</p>
      {children}
    </section>
  )
}
