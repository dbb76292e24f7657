import { useId } from 'preact/hooks'
import type { Mm } from '../../core/base/units.ts'
import type { CutSheet, SheetPiece } from '../../core/cut-sheet/cut-sheet.ts'
import type { TapeEdge } from '../../core/cut-sheet/tape-edges.ts'
import type { Box, Polygon } from '../../core/geometry/types.ts'
import { arrowHead } from './arrows.ts'
import './drawing.css'
import { FlawHatch } from './flaw-hatch.tsx'
import { boxGrown, boxOf, closedPath, openPath, viewBox } from './paths.ts'
import { PieceOnSheet, SHEET_TEXT } from './piece-on-sheet.tsx'
import './sheet-drawing.css'

/** Letters of the two edges. */
export const EDGE_LETTERS = ['A', 'B'] as const

/** Of the drawing's own units, which are dots on a screen and 1/96 inch on paper. */
export const SHEET_MARGIN = 20
/** Beside the panel, for the way of the pile. */
const PILE_WIDTH = 22

export interface SheetDrawingProps {
  readonly sheet: CutSheet
  readonly flaws: readonly Polygon[]
  /** Places that belong to other projects. */
  readonly others: readonly Polygon[]
  /** Dots a millimetre. */
  readonly scale: number
  /** Pieces already cut are pale. */
  readonly isCut: (piece: SheetPiece) => boolean
  readonly nameOf: (piece: SheetPiece) => string
  /** Which way a pile strokes smooth; null: there is none. */
  readonly pile: 'up' | 'down' | null
}

/** A panel on the table: pieces numbered in the order of cutting, the edges to measure from, the points to measure, the marks to transfer. */
export function SheetDrawing({ sheet, flaws, others, scale, isCut, nameOf, pile }: SheetDrawingProps) {
  const hatch = `hatch-${useId()}`
  const dots = 1 / scale
  const grown = boxGrown(boxOf([sheet.outline]), SHEET_MARGIN * dots)
  const box = pile ? { ...grown, maxX: grown.maxX + PILE_WIDTH * dots } : grown
  const width = box.maxX - box.minX
  return (
    <svg
      class="drawing sheet-drawing"
      style={{ width: `${width * scale}px` }}
      viewBox={viewBox(box)}
      aria-hidden="true"
    >
      <FlawHatch id={hatch} size={300 * dots} />
      <path class="cloth" d={closedPath(sheet.outline)} />
      {flaws.map((area) => (
        <path key={closedPath(area)} class="flaw" fill={`url(#${hatch})`} d={closedPath(area)} />
      ))}
      {others.map((area) => (
        <path key={closedPath(area)} class="promised" d={closedPath(area)} />
      ))}
      {sheet.pieces.map((piece, k) => (
        <PieceOnSheet
          key={`${piece.laid.piece}#${piece.laid.copy}`}
          piece={piece}
          number={k + 1}
          dots={dots}
          cut={isCut(piece)}
          name={nameOf(piece)}
        />
      ))}
      {sheet.edges?.map((edge, k) => (
        <EdgeOnSheet key={EDGE_LETTERS[k]} edge={edge} letter={EDGE_LETTERS[k] ?? ''} dots={dots} />
      ))}
      {pile && <PileArrow box={grown} dots={dots} way={pile} />}
    </svg>
  )
}

interface PileArrowProps {
  readonly box: Box
  readonly dots: Mm
  readonly way: 'up' | 'down'
}

/** Beside the panel: the way in which the pile strokes smooth. */
function PileArrow({ box, dots, way }: PileArrowProps) {
  const x = box.maxX + (PILE_WIDTH / 2 - 8) * dots
  const [low, high] = [box.minY + SHEET_MARGIN * 2 * dots, box.maxY - SHEET_MARGIN * 2 * dots]
  const line: Polygon =
    way === 'up'
      ? [
          [x, low],
          [x, high],
        ]
      : [
          [x, high],
          [x, low],
        ]
  return <path class="sheet-pile" d={openPath(line) + arrowHead(line, 14 * dots)} />
}

function EdgeOnSheet({ edge, letter, dots }: { edge: TapeEdge; letter: string; dots: Mm }) {
  const { from, to } = edge
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  // The panel is on the edge's left, so its right is clear.
  const [outX, outY] = [(to[1] - from[1]) / length, -(to[0] - from[0]) / length]
  const away = 11 * dots
  return (
    <g>
      <path class="sheet-edge" d={openPath([from, to])} />
      <text
        class="sheet-letter sheet-edge-letter"
        x={(from[0] + to[0]) / 2 + outX * away}
        y={-((from[1] + to[1]) / 2 + outY * away)}
        font-size={SHEET_TEXT * dots}
      >
        {letter}
      </text>
    </g>
  )
}
