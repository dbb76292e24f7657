import { STAGE_MARGIN } from '../../core/garments/index.ts'
import type { Figure } from '../../core/garments/kind.ts'
import './drawing.css'
import { boxGrown, boxOf, closedPath, openPath, viewBox } from './paths.ts'

interface FigureDrawingProps {
  readonly figure: Figure
  /** What a screen reader says; absent: decoration beside a word. */
  readonly label?: string
  /** The measure being typed: its tape stands out. */
  readonly active?: string | null
  /** Draw the tapes at all. */
  readonly tapes?: boolean
}

/** A garment laid flat as it is worn, to scale, with the tape lying where the figure being typed is taken. */
export function FigureDrawing({ figure, label, active = null, tapes = false }: FigureDrawingProps) {
  const box = boxOf(figure.shapes)
  const size = Math.max(box.maxX - box.minX, box.maxY - box.minY)
  return (
    <svg
      class="drawing"
      viewBox={viewBox(boxGrown(box, size * STAGE_MARGIN))}
      role={label ? 'img' : 'presentation'}
      aria-label={label ?? ''}
      aria-hidden={!label}
    >
      {figure.shapes.map((shape) => (
        <path key={closedPath(shape)} class="cloth" d={closedPath(shape)} />
      ))}
      {figure.seams.map((seam) => (
        <path key={openPath(seam)} class="seam" d={openPath(seam)} />
      ))}
      {tapes &&
        [...figure.tapes]
          .sort((a, b) => Number(a.measure === active) - Number(b.measure === active))
          .map((tape) => (
            <Tape key={tape.measure} tape={tape} active={tape.measure === active} size={size} />
          ))}
    </svg>
  )
}

interface TapeProps {
  readonly tape: Figure['tapes'][number]
  readonly active: boolean
  /** Of the whole drawing, mm: strokes keep their look at any scale. */
  readonly size: number
}

function Tape({ tape: { from, to }, active, size }: TapeProps) {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
  const tick = size * (active ? 0.035 : 0.018)
  const across: readonly [number, number] = [
    (-(to[1] - from[1]) / length) * tick,
    ((to[0] - from[0]) / length) * tick,
  ]
  const end = ([x, y]: readonly [number, number]) =>
    openPath([
      [x + across[0], y + across[1]],
      [x - across[0], y - across[1]],
    ])
  return (
    <g class={active ? 'tape tape-active' : 'tape'}>
      {active && <path class="tape-under" d={openPath([from, to])} />}
      <path d={openPath([from, to])} />
      <path d={end(from)} />
      <path d={end(to)} />
    </g>
  )
}
