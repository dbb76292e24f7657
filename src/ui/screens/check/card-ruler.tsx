import { useSignal } from '@preact/signals'
import { useRef } from 'preact/hooks'
import { DragLine } from '../../drawing/drag-line.tsx'
import { Button } from '../../parts/button.tsx'
import { Sheet } from '../../parts/sheet.tsx'
import { useHeight } from '../../parts/use-height.ts'
import { CARD_HEIGHT, dotsPerMm } from '../../state/screen-scale.ts'
import { changeSettings } from '../../state/settings-state.ts'
import { writeNumber } from '../../words/format.ts'
import { words } from '../../words/words.ts'

/** Finds the screen's true size with a bank card laid across it. */
export function CardRuler({ onClose }: { onClose: () => void }) {
  const area = useRef<HTMLDivElement>(null)
  const height = useHeight(area)
  const at = useSignal(CARD_HEIGHT * dotsPerMm.value)
  const scale = at.value / CARD_HEIGHT
  return (
    <Sheet full title={words.check.cardTitle} onClose={onClose}>
      <p class="ruler-how">{words.check.cardHow}</p>
      <div ref={area} class="ruler-area">
        <div class="ruler-mark" />
        <div class="card-shape" style={{ height: `${at.value}px` }} />
        <DragLine
          at={at.value}
          most={height}
          label={words.check.cardHandle}
          text={words.check.cardSize(writeNumber(scale))}
          onMove={(to) => (at.value = Math.max(CARD_HEIGHT * 2, to))}
        />
      </div>
      <Button
        look="main"
        wide
        onPress={() => {
          changeSettings({ dotsPerMm: scale })
          onClose()
        }}
      >
        {words.check.cardUse}
      </Button>
    </Sheet>
  )
}
