import { useId, useMemo } from 'preact/hooks'
import type { Mm } from '../../core/base/units.ts'
import type { CutSheet, SheetPiece } from '../../core/cut-sheet/cut-sheet.ts'
import type { TapeEdge } from '../../core/cut-sheet/tape-edges.ts'
import type { Box, Point, Polygon } from '../../core/geometry/types.ts'
import './drawing.css'
import { FlawHatch } from './flaw-hatch.tsx'
import { labelPoint } from './label-point.ts'
import { boxGrown, boxOf, closedPath, openPath, viewBox } from './paths.ts'
import './sheet-drawing.css'

/** Letters of the two edges, and of the two points of every piece. */
export const EDGE_LETTERS = ['A', 'B'] as const
export const POINT_LETTERS = ['a', 'b'] as const

/** Of the drawing's own units, which are dots on a screen and 1/96 inch on paper. */
export const SHEET_MARGIN = 20
const TEXT = 14
/** Beside the panel, for the way of the pile. */
const PILE_WIDTH = 22
/** Of a letter of a name. */
const LETTER = 6.6

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

interface PieceOnSheetProps {
  readonly piece: SheetPiece
  readonly number: number
  readonly dots: Mm
  readonly cut: boolean
  readonly name: string
}

function PieceOnSheet({ piece: { laid, points, marks }, number, dots, cut, name }: PieceOnSheetProps) {
  const { at, room } = useMemo(() => labelPoint(laid.outline), [laid.outline])
  // Within a small piece there is room for its number only.
  const letterAway = (room < TEXT * dots ? -11 : 12) * dots
  const named = room > TEXT * 1.3 * dots && name.length * LETTER * dots <= room * 1.6
  const looks = ['piece', laid.mirrored && 'piece-turned', cut && 'piece-cut'].filter(Boolean).join(' ')
  return (
    <g>
      <path class={looks} d={closedPath(laid.outline)} />
      {marks.map(({ kind, line }) => (
        <path
          key={openPath(line)}
          class={`sheet-mark sheet-mark-${kind}`}
          d={kind === 'grain' ? openPath(line) + arrowHead(line, 7 * dots) : openPath(line)}
        />
      ))}
      <text
        class="sheet-number"
        x={at[0]}
        y={-at[1] - (named ? TEXT * 0.5 * dots : 0)}
        font-size={TEXT * dots}
      >
        {number}
      </text>
      {named && (
        <text
          class="sheet-letter sheet-name"
          x={at[0]}
          y={-at[1] + TEXT * 0.6 * dots}
          font-size={TEXT * 0.8 * dots}
        >
          {name}
        </text>
      )}
      {points?.map((point, k) => (
        <g key={POINT_LETTERS[k]}>
          <circle class="sheet-point" cx={point.at[0]} cy={-point.at[1]} r={3 * dots} />
          <text
            class="sheet-letter"
            x={towards(point.at, at, letterAway)[0]}
            y={-towards(point.at, at, letterAway)[1]}
            font-size={TEXT * 0.85 * dots}
          >
            {POINT_LETTERS[k]}
          </text>
        </g>
      ))}
    </g>
  )
}

/** The head of an arrow at a line's end. */
function arrowHead(line: Polygon, size: Mm): string {
  const [before, tip] = [line.at(-2), line.at(-1)] as [Point, Point]
  const [back, away] = [towards(tip, before, size), [before[1] - tip[1], tip[0] - before[0]]] as const
  const share = (size * 0.6) / (Math.hypot(...away) || 1)
  const [dx, dy] = [away[0] * share, away[1] * share]
  return openPath([[back[0] + dx, back[1] + dy], tip, [back[0] - dx, back[1] - dy]])
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

/** A point so far from one towards another. */
function towards([x, y]: Point, [toX, toY]: Point, distance: Mm): Point {
  const length = Math.hypot(toX - x, toY - y) || 1
  return [x + ((toX - x) / length) * distance, y + ((toY - y) / length) * distance]
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
        font-size={TEXT * dots}
      >
        {letter}
      </text>
    </g>
  )
}
