import type { Mm } from '../../base/units.ts'
import type { Point } from '../../geometry/types.ts'
import {
  type DraftEdge,
  fold,
  hem,
  movedEdges,
  type PanelDraft,
  type Path,
  seam,
  turnedOver,
} from './draft.ts'

/** A front or back of a top, laid flat. Depths are counted from the high point shoulder down. */
export interface TopFigures {
  readonly chest: Mm
  readonly hem: Mm
  readonly length: Mm
  readonly shoulder: Mm
  /** How far the shoulder tip lies below the neck point. */
  readonly slope: Mm
  readonly armhole: Mm
  readonly neckWidth: Mm
  readonly neckDepth: Mm
}

/** Depth of a back neck at centre back: common practice 15 to 25 mm. */
export const BACK_NECK_DEPTH: Mm = 20

/** An armhole bites this much farther in than the shoulder tip. Common practice. */
const ARMHOLE_SCOOP: Mm = 10

/** Shoulder slope: a sixth of the armhole's depth, 40 mm at 240 mm. Common practice 30 to 50 mm for adults. */
export function shoulderSlope(armhole: Mm): Mm {
  return armhole / 6
}

export function highPoint(f: TopFigures): Point {
  return [f.neckWidth / 2, f.length]
}

export function shoulderTip(f: TopFigures): Point {
  return [f.shoulder / 2, f.length - f.slope]
}

export function underarm(f: TopFigures): Point {
  return [f.chest / 2, f.length - f.armhole]
}

/** Straight from underarm to shoulder tip: what a sleeve's cap is sewn to. A dropped shoulder counts as upright. */
export function armholeLine(f: TopFigures): Mm {
  return Math.hypot(Math.max(0, f.chest - f.shoulder) / 2, f.armhole - f.slope)
}

/** From the underarm over armhole, shoulder and neckline to the top of the centre line. */
export function upperEdges(f: TopFigures): readonly DraftEdge[] {
  return [seam(shoulderTip(f), armholeBend(f)), seam(highPoint(f)), neckEdge(f)]
}

/** The neckline from the high point shoulder to the centre line, level there. */
export function neckEdge(f: TopFigures): DraftEdge {
  return seam([0, f.length - f.neckDepth], [f.neckWidth / 2, f.length - f.neckDepth])
}

export function armholeBend(f: TopFigures): Point {
  const inward = Math.min(f.shoulder, f.chest) / 2 - ARMHOLE_SCOOP
  return [Math.max(f.neckWidth / 2, inward), f.length - f.armhole + (f.armhole - f.slope) * 0.1]
}

/** Right half of a top; the bottom is a hem unless told otherwise, the side runs straight unless it passes a waist. */
export function topHalf(
  f: TopFigures,
  bottom: (to: Point) => DraftEdge = hem,
  waist: Point | null = null,
): Path {
  const side = waist ? [seam(waist), seam(underarm(f))] : [seam(underarm(f))]
  return { start: [0, 0], edges: [bottom([f.hem / 2, 0]), ...side, ...upperEdges(f)] }
}

/**
 * A knit without side seams, opened along one side: the front's cloth on the left, the back's on the right, joined by
 * the fold at the other side. A tube is straight, so the narrower of chest and hem is its width, and its shoulders are no
 * wider than leaves room for the armholes.
 */
export function openedTube(
  id: string,
  front: TopFigures,
  back: TopFigures,
  bottom: (to: Point) => DraftEdge = hem,
): PanelDraft {
  const width = Math.min(front.chest, front.hem)
  const upper = (worn: TopFigures): readonly DraftEdge[] => {
    const f = { ...worn, chest: width, shoulder: Math.min(worn.shoulder, width - 2 * ARMHOLE_SCOOP) }
    const half: Path = { start: underarm(f), edges: upperEdges(f) }
    return [...half.edges, ...turnedOver(half).edges]
  }
  const edges = [
    bottom([2 * width, 0]),
    fold([2 * width, back.length - back.armhole]),
    ...movedEdges(upper(back), 1.5 * width, 0),
    ...movedEdges(upper(front), 0.5 * width, 0),
    fold([0, 0]),
  ]
  return { id, start: [0, 0], edges, flaws: [] }
}
