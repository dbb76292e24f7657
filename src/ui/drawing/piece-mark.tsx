import { useMemo } from 'preact/hooks'
import type { PlacedPiece } from '../state/lay-view.ts'
import { labelPoint } from './label-point.ts'
import { closedPath, openPath } from './paths.ts'
import './drawing.css'

/** Sizes on the screen, dots. */
const TEXT = 13
const LETTER = 7.4
const ARROW = 9

interface PieceMarkProps {
  readonly piece: PlacedPiece
  readonly scale: number
  readonly names: readonly string[]
}

/** A piece's outline, its name or number where there is room, and an arrow to its head. */
export function PieceMark({ piece, scale, names }: PieceMarkProps) {
  const { at, room } = useMemo(() => labelPoint(piece.outline), [piece.outline])
  const dots = room * scale
  const fitting = names.filter((name) => name.length * LETTER <= dots * 2.4)
  const name = fitting.at(-1) ?? names[0] ?? ''
  const { head } = piece
  const withArrow = head !== null && dots > TEXT + ARROW * 0.6
  return (
    <g>
      <path class={piece.turnedOver ? 'piece piece-turned' : 'piece'} d={closedPath(piece.outline)} />
      <text
        class="piece-name"
        x={at[0]}
        y={-at[1] + (withArrow ? (TEXT * 0.75) / scale : 0)}
        font-size={Math.min(TEXT, Math.max(8, dots * 1.6)) / scale}
      >
        {name}
      </text>
      {withArrow && (
        <path
          class="piece-head"
          d={headArrow(ARROW / scale)}
          transform={`translate(${at[0]} ${-at[1] - ARROW / scale}) rotate(${-head})`}
        />
      )}
    </g>
  )
}

/** An arrow upwards with its middle at the origin, 1.5 × `size` long: whichever way it turns, it stays off the name below. */
function headArrow(size: number): string {
  return [
    openPath([
      [0, -size * 0.75],
      [0, size * 0.75],
    ]),
    openPath([
      [-size * 0.6, size * 0.15],
      [0, size * 0.75],
      [size * 0.6, size * 0.15],
    ]),
  ].join('')
}
