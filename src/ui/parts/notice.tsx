import type { ComponentChildren } from 'preact'
import { words } from '../words/words.ts'
import { Icon, type IconName } from './icon.tsx'
import './notice.css'

interface NoticeProps {
  readonly icon: IconName
  readonly children: ComponentChildren
  /** A button or two at its end. */
  readonly actions?: ComponentChildren
}

/** Something the app has to say, without getting in the way. */
export function Notice({ icon, children, actions }: NoticeProps) {
  return (
    <div class="notice" role="status">
      <Icon name={icon} />
      <p class="grow">{children}</p>
      {actions}
    </div>
  )
}

/** Cautions of the trade by their ids, each once: short, and deferring to local rules and qualified advice. */
export function Cautions({ ids }: { ids: readonly string[] }) {
  const texts = [...new Set(ids)].flatMap((id) => words.cautions[id] ?? [])
  if (texts.length === 0) return null
  return (
    <div class="cautions">
      <Icon name="care" size={22} />
      <ul>
        {texts.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </div>
  )
}
