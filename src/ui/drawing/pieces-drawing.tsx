import { useMemo } from 'preact/hooks'
import { MM_PER_INCH, type Mm } from '../../core/base/units.ts'
import type { Polygon } from '../../core/geometry/types.ts'
import { type Pattern, type PieceShape, seamLine } from '../../core/patterns/index.ts'
import { flow } from '../state/flow.ts'
import { isDrawable } from '../state/piece-shapes.ts'
import type { Units } from '../words/format.ts'
import './drawing.css'
import { GridLines } from './grid-lines.tsx'
import { boxGrown, closedPath, viewBox } from './paths.ts'
import './pieces-drawing.css'
import { PieceMark } from './piece-mark.tsx'

/** Side of a square of the paper behind drawings to scale. */
export function gridSquare({ units }: Units): Mm {
  return units === 'cm' ? 100 : 4 * MM_PER_INCH
}

/** The pieces of a pattern in a size, all to one scale, as a small picture beside its name. */
export function PiecesSmall({ pattern }: { pattern: Pattern }) {
  const { outlines, box } = useMemo(() => {
    const size = pattern.sizes[Math.floor(pattern.sizes.length / 2)] ?? ''
    const used = pattern.versions[0]?.pieces ?? []
    return flow(
      pattern.pieces
        .filter(({ id }) => used.includes(id))
        .map(({ shapes }) => drawable(shapes[size]))
        .filter((outline) => outline !== null),
      68 / 60,
    )
  }, [pattern])
  const margin = Math.max(box.maxX - box.minX, box.maxY - box.minY) * 0.02
  return (
    <svg class="drawing pieces-small" viewBox={viewBox(boxGrown(box, margin || 1))} aria-hidden="true">
      {outlines.map((outline, k) => (
        <path key={k} class="piece" d={closedPath(outline)} />
      ))}
    </svg>
  )
}

interface PiecesDrawingProps {
  readonly pieces: readonly {
    readonly id: string
    readonly outline: Polygon
    readonly names: readonly string[]
  }[]
  readonly units: Units
  readonly label: string
  /** Width over height that the whole should have. */
  readonly aspect?: number
  /** Screen dots across. */
  readonly width?: number
}

/** Pieces set out on squared paper, to one scale. */
export function PiecesDrawing({ pieces, units, label, aspect = 1.05, width = 326 }: PiecesDrawingProps) {
  const { outlines, box } = flow(
    pieces.map(({ outline }) => outline),
    aspect,
  )
  const grown = boxGrown(box, (box.maxX - box.minX) * 0.03)
  const scale = width / (grown.maxX - grown.minX)
  return (
    <svg class="drawing pieces-drawing" viewBox={viewBox(grown)} role="img" aria-label={label}>
      <GridLines box={grown} square={gridSquare(units)} />
      {pieces.map(({ id, names }, k) => (
        <PieceMark
          key={id}
          scale={scale}
          names={names}
          piece={{
            piece: id,
            copy: 1,
            of: 1,
            outline: outlines[k] as Polygon,
            head: 0,
            turnedOver: false,
          }}
        />
      ))}
    </svg>
  )
}

/** The outline of a shape that has all its figures, else null. */
export function drawable(shape: PieceShape | undefined): Polygon | null {
  return shape && isDrawable(shape) ? seamLine(shape) : null
}
