import { useId } from 'preact/hooks'
import type { Polygon } from '../../core/geometry/types.ts'
import type { PanelView, PlacedPiece } from '../state/lay-view.ts'
import './drawing.css'
import { FlawHatch } from './flaw-hatch.tsx'
import './lay-drawing.css'
import { boxGrown, boxOf, closedPath, openPath, viewBox } from './paths.ts'
import { PieceMark } from './piece-mark.tsx'

/** How much of the screen a panel may take, screen dots: beside others, and by itself. */
export const BESIDE = { width: 150, height: 215 }
export const ALONE = { width: 326, height: 420 }
const MARGIN_DOTS = 3

interface PanelLayProps {
  readonly panel: PanelView
  /** Screen dots a millimetre; one scale for all panels of a lay. */
  readonly scale: number
  /** What stands on a piece, shortest first; the longest that has room is shown. */
  readonly nameOf: (piece: PlacedPiece) => readonly string[]
}

/** One panel of the garment to scale, with the pieces that lie on it and the flaws they keep off; words beside it say the same. */
export function PanelLay({ panel, scale, nameOf }: PanelLayProps) {
  const hatch = `hatch-${useId()}`
  const box = boxGrown(boxOf([panel.outline]), MARGIN_DOTS / scale)
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY]
  return (
    <svg
      class="drawing panel-lay"
      style={{ width: `${width * scale}px`, height: `${height * scale}px` }}
      viewBox={viewBox(box)}
      aria-hidden="true"
    >
      <FlawHatch id={hatch} size={300 / scale} />
      <path class="cloth" d={closedPath(panel.outline)} />
      {panel.flaws.map((area) => (
        <path key={closedPath(area)} class="flaw" fill={`url(#${hatch})`} d={closedPath(area)} />
      ))}
      {panel.kept.hems.map((line) => (
        <path key={openPath(line)} class="kept-hem" d={openPath(line)} />
      ))}
      {panel.pieces.map((piece) => (
        <PieceMark key={`${piece.piece}#${piece.copy}`} piece={piece} scale={scale} names={nameOf(piece)} />
      ))}
      {panel.kept.prints.map((print) => (
        <path key={closedPath(print)} class="print" d={closedPath(print)} />
      ))}
    </svg>
  )
}

/** A piece by itself at the lay's scale: one that found no place. */
export function LoosePiece({ piece, scale, nameOf }: Omit<PanelLayProps, 'panel'> & { piece: PlacedPiece }) {
  const box = boxGrown(boxOf([piece.outline]), MARGIN_DOTS / scale)
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY]
  return (
    <svg
      class="drawing panel-lay"
      style={{ width: `${width * scale}px`, height: `${height * scale}px` }}
      viewBox={viewBox(box)}
      aria-hidden="true"
    >
      <PieceMark piece={piece} scale={scale} names={nameOf(piece)} />
    </svg>
  )
}

/** The scale, screen dots a millimetre, at which the largest of these outlines fills the room it may take. */
export function layScale(outlines: readonly Polygon[], room: typeof ALONE): number {
  const scales = outlines.map((outline) => {
    const { minX, minY, maxX, maxY } = boxOf([outline])
    return Math.min(room.width / (maxX - minX), room.height / (maxY - minY))
  })
  return Math.min(1, ...scales)
}
