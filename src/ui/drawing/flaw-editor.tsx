import { useComputed, useSignal } from '@preact/signals'
import { useId, useRef } from 'preact/hooks'
import type { MarkedFlaw } from '../../core/garments/index.ts'
import type { Point, Polygon } from '../../core/geometry/types.ts'
import { drawnLine, type FlawForm, handleOf, moved, sizedTo } from '../state/flaws.ts'
import './drawing.css'
import { FlawHatch } from './flaw-hatch.tsx'
import { FlawMark } from './flaw-mark.tsx'
import { boxGrown, boxOf, closedPath, openPath, viewBox } from './paths.ts'
import { pointIn } from './pointer.ts'
import './flaw-editor.css'

/** Points of a free line closer than this are one, mm. */
const LINE_STEP = 6

interface FlawEditorProps {
  readonly outline: Polygon
  /** Areas lost with the garment itself. */
  readonly builtIn: readonly Polygon[]
  readonly flaws: readonly MarkedFlaw[]
  /** A print to keep, framed by a box; null: none on this panel. */
  readonly print: Mark | null
  readonly chosen: string | null
  readonly form: FlawForm
  readonly label: string
  readonly onAdd: (at: Point) => void
  readonly onDraw: (shape: MarkedFlaw['shape']) => void
  readonly onChoose: (id: string) => void
  readonly onShape: (id: string, shape: MarkedFlaw['shape']) => void
}

/** What can be dragged and sized. */
type Mark = Pick<MarkedFlaw, 'id' | 'shape'>

type Drag = {
  readonly id: string
  readonly grip: 'body' | 'handle'
  readonly at: Point
  readonly shape: MarkedFlaw['shape']
}

/**
 * A panel to scale on which flaws are marked by touch: a tap adds a mark, a drag moves it, its handle sizes it; in
 * line form a stroke of the finger is the line. The list below it does the same by keyboard.
 */
export function FlawEditor(props: FlawEditorProps) {
  const { outline, builtIn, flaws, print, chosen, form } = props
  const svg = useRef<SVGSVGElement>(null)
  const drag = useRef<Drag | null>(null)
  const stroke = useSignal<readonly Point[]>([])
  const hatch = `hatch-${useId()}`
  const box = boxGrown(boxOf([outline]), 12)
  const size = Math.max(box.maxX - box.minX, box.maxY - box.minY)
  const line = useComputed(() => openPath(stroke.value))

  const grip = (flaw: Mark, kind: Drag['grip']) => (event: PointerEvent) => {
    event.stopPropagation()
    svg.current?.setPointerCapture(event.pointerId)
    drag.current = { id: flaw.id, grip: kind, at: pointIn(svg.current, event), shape: flaw.shape }
    props.onChoose(flaw.id)
  }
  const move = (event: PointerEvent) => {
    const at = pointIn(svg.current, event)
    const held = drag.current
    if (held) {
      const by = [at[0] - held.at[0], at[1] - held.at[1]] as const
      const handle = handleOf(held.shape)
      props.onShape(
        held.id,
        held.grip === 'body'
          ? moved(held.shape, by[0], by[1])
          : sizedTo(held.shape, [handle[0] + by[0], handle[1] + by[1]]),
      )
    } else if (stroke.value.length > 0 && distance(stroke.value.at(-1), at) > LINE_STEP) {
      stroke.value = [...stroke.value, at]
    }
  }
  const end = () => {
    drag.current = null
    if (stroke.value.length > 1) props.onDraw(drawnLine(stroke.value))
    else if (stroke.value[0]) props.onAdd(stroke.value[0])
    stroke.value = []
  }
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the list below it does the same by keyboard.
    <svg
      ref={svg}
      class={form === 'line' ? 'drawing flaw-editor flaw-editor-line' : 'drawing flaw-editor'}
      viewBox={viewBox(box)}
      role="img"
      aria-label={props.label}
      onClick={(event) => {
        if (form !== 'line' && isCloth(event.target)) props.onAdd(pointIn(svg.current, event))
      }}
      onPointerDown={(event) => {
        if (form !== 'line') return
        svg.current?.setPointerCapture(event.pointerId)
        stroke.value = [pointIn(svg.current, event)]
      }}
      onPointerMove={move}
      onPointerUp={end}
      onPointerCancel={() => {
        drag.current = null
        stroke.value = []
      }}
    >
      <FlawHatch id={hatch} size={size} />
      <path class="cloth" d={closedPath(outline)} />
      {builtIn.map((area) => (
        <path
          key={closedPath(area)}
          class="flaw flaw-built-in"
          fill={`url(#${hatch})`}
          d={closedPath(area)}
        />
      ))}
      {flaws.map((flaw) => (
        <FlawMark
          key={flaw.id}
          flaw={flaw}
          chosen={flaw.id === chosen}
          hatch={hatch}
          reach={size * 0.075}
          onBody={grip(flaw, 'body')}
          onHandle={grip(flaw, 'handle')}
        />
      ))}
      {print && (
        <FlawMark
          flaw={print}
          isPrint
          chosen={print.id === chosen}
          hatch={hatch}
          reach={size * 0.075}
          onBody={grip(print, 'body')}
          onHandle={grip(print, 'handle')}
        />
      )}
      <path class="tape tape-active" d={line} />
    </svg>
  )
}

/** True for the panel itself, false for what lies on it and beside it. */
function isCloth(target: EventTarget | null): boolean {
  return target instanceof Element && target.classList.contains('cloth')
}

function distance(a: Point | undefined, b: Point): number {
  return a ? Math.hypot(b[0] - a[0], b[1] - a[1]) : Number.POSITIVE_INFINITY
}
