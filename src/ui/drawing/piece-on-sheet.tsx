import { useMemo } from 'preact/hooks'
import type { Mm } from '../../core/base/units.ts'
import type { SheetPiece } from '../../core/cut-sheet/cut-sheet.ts'
import type { TapePoint } from '../../core/cut-sheet/tape-points.ts'
import type { Point } from '../../core/geometry/types.ts'
import { arrowHead, towards } from './arrows.ts'
import { labelPoint } from './label-point.ts'
import { NotchStrokes } from './notch-strokes.tsx'
import { closedPath, openPath } from './paths.ts'
import './drawing.css'
import './sheet-drawing.css'

/** Letters of the two points of every piece. */
export const POINT_LETTERS = ['a', 'b'] as const

/** Height of the text on a sheet, dots. */
export const SHEET_TEXT = 14
/** Of a letter of a name, dots. */
const LETTER = 6.6

interface PieceOnSheetProps {
  readonly piece: SheetPiece
  readonly number: number
  readonly dots: Mm
  readonly cut: boolean
  readonly name: string
}

/** A piece on the table: its outline, its marks and notches, its number, its name where there is room, and the points to measure. */
export function PieceOnSheet({
  piece: { laid, points, marks, notches },
  dots,
  cut,
  ...called
}: PieceOnSheetProps) {
  const { at, room } = useMemo(() => labelPoint(laid.outline), [laid.outline])
  // Within a small piece there is room for its number only.
  const letterAway = (room < SHEET_TEXT * dots ? -11 : 12) * dots
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
      <NotchStrokes notches={notches} dots={dots} />
      <Called {...called} at={at} room={room} dots={dots} />
      {points?.map((point, k) => (
        <PointOnSheet
          key={POINT_LETTERS[k]}
          point={point}
          letter={POINT_LETTERS[k] ?? ''}
          letterAt={towards(point.at, at, letterAway)}
          dots={dots}
        />
      ))}
    </g>
  )
}

interface CalledProps extends Pick<PieceOnSheetProps, 'number' | 'name' | 'dots'> {
  readonly at: Point
  /** From there to the edge, mm. */
  readonly room: Mm
}

function Called({ number, name, at: [x, y], room, dots }: CalledProps) {
  const named = room > SHEET_TEXT * 1.3 * dots && name.length * LETTER * dots <= room * 1.6
  return (
    <>
      <text
        class="sheet-number"
        x={x}
        y={-y - (named ? SHEET_TEXT * 0.5 * dots : 0)}
        font-size={SHEET_TEXT * dots}
      >
        {number}
      </text>
      {named && (
        <text
          class="sheet-letter sheet-name"
          x={x}
          y={-y + SHEET_TEXT * 0.6 * dots}
          font-size={SHEET_TEXT * 0.8 * dots}
        >
          {name}
        </text>
      )}
    </>
  )
}

interface PointOnSheetProps {
  readonly point: TapePoint
  readonly letter: string
  readonly letterAt: Point
  readonly dots: Mm
}

function PointOnSheet({ point: { at }, letter, letterAt, dots }: PointOnSheetProps) {
  return (
    <g>
      <circle class="sheet-point" cx={at[0]} cy={-at[1]} r={3 * dots} />
      <text class="sheet-letter" x={letterAt[0]} y={-letterAt[1]} font-size={SHEET_TEXT * 0.85 * dots}>
        {letter}
      </text>
    </g>
  )
}
