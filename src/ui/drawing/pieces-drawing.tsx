import { Fragment } from 'preact'
import { useMemo } from 'preact/hooks'
import { MM_PER_INCH, type Mm } from '../../core/base/units.ts'
import type { Box, Polygon } from '../../core/geometry/types.ts'
import type { Pattern } from '../../core/patterns/index.ts'
import type { CutNotch } from '../../core/patterns/notches.ts'
import { flow } from '../state/flow.ts'
import { drawable } from '../state/piece-shapes.ts'
import type { Units } from '../words/format.ts'
import './drawing.css'
import { GridLines } from './grid-lines.tsx'
import { NotchStrokes } from './notch-strokes.tsx'
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
    readonly notches: readonly CutNotch[]
  }[]
  readonly units: Units
  readonly label: string
  /** Screen dots it may take. */
  readonly width?: number
  readonly height?: number
  /** Squared paper behind it, to read sizes from. */
  readonly squared?: boolean
}

/** Pieces set out on squared paper, to one scale, with the notches of their seam lines. */
export function PiecesDrawing(props: PiecesDrawingProps) {
  const { pieces, units, label, width = 326, height = 326, squared = true } = props
  const { outlines, box } = flow(
    pieces.map(({ outline }) => outline),
    width / height,
  )
  const grown = boxGrown(box, Math.max(box.maxX - box.minX, box.maxY - box.minY) * 0.03)
  const scale = Math.min(width / (grown.maxX - grown.minX), height / (grown.maxY - grown.minY))
  const paper = boxOfDots(grown, width / scale, height / scale)
  return (
    <svg class="drawing pieces-drawing" viewBox={viewBox(paper)} role="img" aria-label={label}>
      {squared && <GridLines box={paper} square={gridSquare(units)} />}
      {pieces.map(({ id, names, outline, notches }, k) => (
        <Fragment key={id}>
          <PieceMark
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
          <NotchStrokes notches={notches.map(movedWith(outline, outlines[k] as Polygon))} dots={1 / scale} />
        </Fragment>
      ))}
    </svg>
  )
}

/** Carries a notch along with the outline it belongs to. */
function movedWith([from = [0, 0]]: Polygon, [to = [0, 0]]: Polygon) {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  return ({ onSeam: [x, y], inward, count }: CutNotch) => ({ at: [x + dx, y + dy] as const, inward, count })
}

/** The box widened about its middle, so that the paper fills the room it has. */
function boxOfDots(box: Box, width: Mm, height: Mm): Box {
  const [x, y] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2]
  return { minX: x - width / 2, maxX: x + width / 2, minY: y - height / 2, maxY: y + height / 2 }
}
