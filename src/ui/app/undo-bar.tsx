import { useEffect, useRef } from 'preact/hooks'
import { Button, IconButton } from '../parts/button.tsx'
import { Notice } from '../parts/notice.tsx'
import { type UndoOffer, undoOffer } from '../state/undo.ts'
import { words } from '../words/words.ts'

/** What a tap or a key does something with. */
const DEEDS = 'a, button, input, select, textarea, label, summary'

/** Says what was removed or changed last, and takes it back, until she does something else or waves it away. */
export function UndoBar() {
  const bar = useRef<HTMLDivElement>(null)
  useEffect(() => followDeeds((at) => !bar.current?.contains(at)), [])
  return <div ref={bar}>{undoOffer.value && <Offer offer={undoOffer.value} />}</div>
}

/** The offer goes with the next thing done elsewhere, once that is done: what it brings may be the next offer. */
function followDeeds(isElsewhere: (at: Element) => boolean): () => void {
  const follow = ({ target }: Event) => {
    const offer = undoOffer.peek()
    if (!offer || !(target instanceof Element) || !target.closest(DEEDS) || !isElsewhere(target)) return
    setTimeout(() => {
      if (undoOffer.peek() === offer) undoOffer.value = null
    })
  }
  for (const kind of ['click', 'input']) addEventListener(kind, follow, true)
  return () => {
    for (const kind of ['click', 'input']) removeEventListener(kind, follow, true)
  }
}

function Offer({ offer }: { offer: UndoOffer }) {
  const end = () => (undoOffer.value = null)
  return (
    <Notice
      icon={offer.icon}
      actions={
        <>
          <Button
            look="quiet"
            onPress={() => {
              end()
              offer.undo()
            }}
          >
            {words.parts.undo}
          </Button>
          <IconButton icon="close" label={words.parts.close} onPress={end} />
        </>
      }
    >
      {offer.said}
    </Notice>
  )
}
