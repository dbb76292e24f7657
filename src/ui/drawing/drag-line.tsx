import { useRef } from 'preact/hooks'
import { Icon } from '../parts/icon.tsx'
import './screen-ruler.css'

interface DragLineProps {
  /** Screen dots below the top of the area it stands in. */
  readonly at: number
  readonly most: number
  readonly label: string
  /** What the position means, for screen readers. */
  readonly text: string
  readonly onMove: (at: number) => void
}

/** A line across the area, dragged up and down by its handle or moved by the arrow keys. */
export function DragLine({ at, most, label, text, onMove }: DragLineProps) {
  const line = useRef<HTMLDivElement>(null)
  const held = useRef<number | null>(null)
  const moveTo = (to: number) => onMove(Math.min(most, Math.max(0, to)))
  return (
    <div
      ref={line}
      class="drag-line"
      style={{ top: `${at}px` }}
      role="slider"
      tabIndex={0}
      aria-label={label}
      aria-orientation="vertical"
      aria-valuemin={0}
      aria-valuemax={Math.round(most)}
      aria-valuenow={Math.round(at)}
      aria-valuetext={text}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId)
        held.current = event.clientY - at
      }}
      onPointerMove={(event) => {
        if (held.current !== null) moveTo(event.clientY - held.current)
      }}
      onPointerUp={() => (held.current = null)}
      onPointerCancel={() => (held.current = null)}
      onKeyDown={(event) => {
        const by = KEYS[event.key]
        if (by === undefined) return
        event.preventDefault()
        moveTo(at + by)
      }}
    >
      <span class="drag-handle">
        <Icon name="drag" />
      </span>
    </div>
  )
}

/** Dots by which a key moves the line. */
const KEYS: Readonly<Record<string, number>> = { ArrowUp: -1, ArrowDown: 1, PageUp: -20, PageDown: 20 }
