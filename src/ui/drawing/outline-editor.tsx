import { useRef } from 'preact/hooks'
import type { Mm } from '../../core/base/units.ts'
import type { Point, Polygon } from '../../core/geometry/types.ts'
import './drawing.css'
import './outline-editor.css'
import { closedPath, openPath, viewBox } from './paths.ts'
import { pointIn } from './pointer.ts'

/** Corners snap to this, mm: no tape on soft cloth is finer. */
const SNAP = 5
const GRID = 100

interface OutlineEditorProps {
  readonly outline: Polygon
  /** Side of the square that is shown, mm. */
  readonly side: Mm
  readonly label: string
  readonly onOutline: (outline: Polygon) => void
}

/** An outline drawn corner by corner on a grid of 10 cm: a tap adds a corner, a drag moves one. */
export function OutlineEditor({ outline, side, label, onOutline }: OutlineEditorProps) {
  const svg = useRef<SVGSVGElement>(null)
  const held = useRef<number | null>(null)
  const snapped = (event: MouseEvent): Point => {
    const [x, y] = pointIn(svg.current, event)
    const within = (v: number) => Math.round(Math.min(side, Math.max(0, v)) / SNAP) * SNAP
    return [within(x), within(y)]
  }
  const lines = Array.from({ length: Math.floor(side / GRID) + 1 }, (_, k) => k * GRID)
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the fields below it do the same by keyboard.
    <svg
      ref={svg}
      class="drawing outline-editor"
      viewBox={viewBox({ minX: -8, minY: -8, maxX: side + 8, maxY: side + 8 })}
      role="img"
      aria-label={label}
      onClick={(event) => {
        if (event.target instanceof Element && !event.target.closest('.corner')) {
          onOutline([...outline, snapped(event)])
        }
      }}
      onPointerMove={(event) => {
        if (held.current === null) return
        onOutline(outline.map((point, k) => (k === held.current ? snapped(event) : point)))
      }}
      onPointerUp={() => (held.current = null)}
      onPointerCancel={() => (held.current = null)}
    >
      <path
        class="outline-grid"
        d={lines
          .flatMap((at): Polygon[] => [
            [
              [at, 0],
              [at, side],
            ],
            [
              [0, at],
              [side, at],
            ],
          ])
          .map(openPath)
          .join('')}
      />
      {outline.length > 1 && <path class="cloth" d={closedPath(outline)} />}
      {outline.map(([x, y], k) => (
        <g
          key={k}
          class="corner"
          onPointerDown={(event) => {
            svg.current?.setPointerCapture(event.pointerId)
            held.current = k
          }}
        >
          <circle class="mark-reach" cx={x} cy={-y} r={side * 0.06} />
          <circle class="mark-handle" cx={x} cy={-y} r={side * 0.022} />
        </g>
      ))}
    </svg>
  )
}
