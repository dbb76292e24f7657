import { polygonMoved, polygonOriented } from '../../core/geometry/index.ts'
import type { Polygon } from '../../core/geometry/types.ts'
import type { CheckAnswer } from '../../core/planning/check.ts'
import type { LayPanel, LayPiece } from '../../core/planning/lay-problem.ts'

/** One copy where it lies, in the panel's coordinates with the garment's top up. */
export interface PlacedPiece {
  readonly piece: string
  /** Counts from 1. */
  readonly copy: number
  /** How many copies of this piece there are. */
  readonly of: number
  readonly outline: Polygon
  /** The head's direction, degrees counter-clockwise from up; null: not to be shown. */
  readonly head: number | null
  readonly turnedOver: boolean
}

/** What of a panel is kept as it is. */
export interface KeptOnPanel {
  /** Finished edges, as lines of two points. */
  readonly hems: readonly Polygon[]
  /** Prints to be seen. */
  readonly prints: readonly Polygon[]
}

export const NOTHING_KEPT: KeptOnPanel = { hems: [], prints: [] }

export function keptOn({ outline, finished = [], motifs = [] }: LayPanel): KeptOnPanel {
  return {
    hems: finished.map((k) => [outline[k], outline[(k + 1) % outline.length]] as Polygon),
    prints: motifs.map((motif) => motif.outline),
  }
}

export interface PanelView {
  readonly id: string
  readonly outline: Polygon
  readonly flaws: readonly Polygon[]
  readonly kept: KeptOnPanel
  readonly pieces: readonly PlacedPiece[]
}

export interface LayView {
  readonly panels: readonly PanelView[]
  /** Copies without a place, as the pattern draws them. */
  readonly leftOut: readonly PlacedPiece[]
}

/** What a lay looks like on the garment: each copy's outline where it lies, and those left out. */
export function layView({ problem, lay, heads }: CheckAnswer): LayView {
  const up = heads === 'up' ? 0 : 180
  const held = (polygon: Polygon) => polygonOriented(polygon, { turn: up, mirrored: false })
  const pieceOf = (id: string) => problem.pieces.find((piece) => piece.id === id) as LayPiece
  return {
    panels: problem.panels.map((panel) => ({
      id: panel.id,
      outline: held(panel.outline),
      flaws: panel.flaws.map(held),
      kept: { hems: keptOn(panel).hems.map(held), prints: keptOn(panel).prints.map(held) },
      pieces: lay.placements
        .filter((placement) => placement.panel === panel.id)
        .map(({ piece, copy, turn, mirrored, x, y }) => ({
          piece,
          copy,
          of: pieceOf(piece).count,
          outline: held(polygonMoved(polygonOriented(pieceOf(piece).outline, { turn, mirrored }), x, y)),
          head: turn + up,
          turnedOver: mirrored,
        })),
    })),
    leftOut: lay.leftOut.map((name) => {
      const [, id = '', copy = '1'] = /^(.*)#(\d+)$/.exec(name) ?? []
      const piece = pieceOf(id)
      return {
        piece: id,
        copy: Number(copy),
        of: piece.count,
        outline: piece.outline,
        head: 0,
        turnedOver: false,
      }
    }),
  }
}
