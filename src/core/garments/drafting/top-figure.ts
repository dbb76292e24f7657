import type { Mm } from '../../base/units.ts'
import type { Point, Polygon } from '../../geometry/types.ts'
import type { Figure } from '../kind.ts'
import { type Path, whole } from './draft.ts'
import { acrossTape, downTape, type Line, mirrored, polyline, type Tape } from './lines.ts'
import {
  BACK_NECK_DEPTH,
  highPoint,
  neckEdge,
  shoulderTip,
  type TopFigures,
  underarm,
  upperEdges,
} from './top-block.ts'
import { outlineOf, traced } from './trace.ts'

/** How a sleeve lies in the drawing: degrees below level. */
const SHORT_SLEEVE_HANG = 35
const LONG_SLEEVE_HANG = 62

/** From this length on a sleeve is drawn hanging. */
const LONG_SLEEVE: Mm = 350

/** The sleeve of the drawing, on the right. */
export interface DrawnSleeve {
  readonly shape: Polygon
  readonly tip: Point
  readonly cuffOuter: Point
  readonly cuffInner: Point
}

export function drawnSleeve(top: TopFigures, length: Mm, cuff: Mm): DrawnSleeve {
  const hang = ((length < LONG_SLEEVE ? SHORT_SLEEVE_HANG : LONG_SLEEVE_HANG) * Math.PI) / 180
  const tip = shoulderTip(top)
  const cuffOuter: Point = [tip[0] + length * Math.cos(hang), tip[1] - length * Math.sin(hang)]
  const cuffInner: Point = [cuffOuter[0] - cuff * Math.sin(hang), cuffOuter[1] - cuff * Math.cos(hang)]
  const armhole = [...armholeOf(top)].reverse()
  return { shape: [cuffInner, cuffOuter, ...armhole], tip, cuffOuter, cuffInner }
}

/** Front over back over sleeves, with the armhole seams of both sides. `half` is the right half of the front. */
export function topFigure(
  top: TopFigures,
  half: Path,
  sleeve: DrawnSleeve | null,
  extra: { readonly seams?: readonly Line[]; readonly tapes: readonly Tape[] },
): Figure {
  const back = { ...top, neckDepth: Math.min(BACK_NECK_DEPTH, top.neckDepth) }
  const sleeves = sleeve ? [sleeve.shape, mirrored(sleeve.shape)] : []
  const armholes = sleeve ? [armholeOf(top), mirrored(armholeOf(top))] : []
  const neck = polyline(highPoint(top), [neckEdge(top)])
  return {
    shapes: [...sleeves, neckBehind(back), outlineOf(traced(whole('front', half)))],
    seams: [...armholes, [...neck, ...mirrored(neck).slice(1)], ...(extra.seams ?? [])],
    tapes: extra.tapes,
  }
}

/** The right armhole from underarm to shoulder tip. */
function armholeOf(top: TopFigures): Line {
  return polyline(underarm(top), upperEdges(top).slice(0, 1))
}

/** The inside of the back that shows through the front's neck. */
function neckBehind(back: TopFigures): Polygon {
  const right = polyline(highPoint(back), [neckEdge(back)])
  const low = back.length - back.armhole
  return [...right, ...mirrored(right).slice(1), [-back.neckWidth / 2, low], [back.neckWidth / 2, low]]
}

/** The tapes every top has. Length and armhole are read from the high points shoulder, one on each side. */
export function bodyTapes(top: TopFigures): readonly Tape[] {
  const [hx, hy] = highPoint(top)
  return [
    acrossTape('chest', top.chest, top.length - top.armhole),
    acrossTape('hem-width', top.hem, 0),
    downTape('body-length', [-hx, hy], top.length),
    downTape('armhole-depth', [hx, hy], top.armhole),
  ]
}

export function shoulderTape(top: TopFigures): Tape {
  return acrossTape('shoulder-width', top.shoulder, shoulderTip(top)[1])
}

export function sleeveTapes(sleeve: DrawnSleeve): readonly Tape[] {
  return [
    { measure: 'sleeve-length', from: sleeve.tip, to: sleeve.cuffOuter },
    { measure: 'cuff-width', from: sleeve.cuffOuter, to: sleeve.cuffInner },
  ]
}
