import { Button, IconButton } from '../parts/button.tsx'
import { Notice } from '../parts/notice.tsx'
import { undoOffer } from '../state/undo.ts'
import { words } from '../words/words.ts'

/** Says what was removed or changed last, and takes it back. */
export function UndoBar() {
  const offer = undoOffer.value
  if (!offer) return null
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
