import type { Mm } from '../../core/base/units.ts'
import { type MarkedFlaw, shapeOutlines } from '../../core/garments/index.ts'
import { handleOf } from '../state/flaws.ts'
import { closedPath } from './paths.ts'
import './drawing.css'

interface FlawMarkProps {
  readonly flaw: Pick<MarkedFlaw, 'shape'>
  /** A frame round a print to keep: nothing is hatched out. */
  readonly isPrint?: boolean
  readonly chosen: boolean
  readonly hatch: string
  /** A finger's reach in the drawing, mm: small marks can be caught all the same. */
  readonly reach: Mm
  readonly onBody: (event: PointerEvent) => void
  readonly onHandle: (event: PointerEvent) => void
}

/** One marked flaw or framed print, to be dragged by its body and sized by its handle. */
export function FlawMark({ flaw, isPrint = false, chosen, hatch, reach, onBody, onHandle }: FlawMarkProps) {
  const d = shapeOutlines(flaw.shape).map(closedPath).join('')
  const [edge, y] = handleOf(flaw.shape)
  const x = edge + reach * 0.8
  return (
    <g class={chosen ? 'mark mark-chosen' : 'mark'}>
      <path
        class="mark-reach"
        d={d}
        style={{ stroke: 'transparent', strokeWidth: 28 }}
        onPointerDown={onBody}
      />
      {isPrint ? (
        <path class="print" d={d} onPointerDown={onBody} />
      ) : (
        <path class="flaw" fill={`url(#${hatch})`} d={d} onPointerDown={onBody} />
      )}
      {chosen && (
        <g onPointerDown={onHandle}>
          <line class="mark-link" x1={edge} x2={x} y1={-y} y2={-y} />
          <circle class="mark-reach" cx={x} cy={-y} r={reach} />
          <circle class="mark-handle" cx={x} cy={-y} r={reach * 0.38} />
        </g>
      )}
    </g>
  )
}
