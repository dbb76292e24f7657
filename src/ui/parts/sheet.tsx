import type { ComponentChildren } from 'preact'
import { useEffect, useId, useRef } from 'preact/hooks'
import { words } from '../words/words.ts'
import { IconButton } from './button.tsx'
import './sheet.css'

interface SheetProps {
  readonly title: string
  readonly onClose: () => void
  /** Takes the whole screen, for work that needs the room. */
  readonly full?: boolean
  readonly children: ComponentChildren
}

/** A dialog that rises from the thumb's edge. Mounted means open; Escape, the cross and the shade behind it close it. */
export function Sheet({ title, onClose, full = false, children }: SheetProps) {
  const dialog = useRef<HTMLDialogElement>(null)
  const titleId = useId()
  const leaving = useRef(false)
  useEffect(() => {
    const shown = dialog.current
    const before = document.activeElement
    shown?.showModal()
    return () => {
      leaving.current = true
      shown?.close()
      if (before instanceof HTMLElement && before.isConnected) before.focus()
    }
  }, [])
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: Escape closes it, which the browser reports as `cancel`.
    <dialog
      ref={dialog}
      class={full ? 'sheet sheet-full' : 'sheet'}
      aria-labelledby={titleId}
      onCancel={(event) => {
        event.preventDefault()
        onClose()
      }}
      // Some browsers close it without asking at a second Escape.
      onClose={() => {
        if (!leaving.current) onClose()
      }}
      onClick={(event) => {
        if (event.target === dialog.current) onClose()
      }}
    >
      <div class="sheet-body">
        <header class="row sheet-head">
          <h2 id={titleId} class="grow">
            {title}
          </h2>
          <IconButton icon="close" label={words.parts.close} onPress={onClose} />
        </header>
        {children}
      </div>
    </dialog>
  )
}
