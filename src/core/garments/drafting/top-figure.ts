import type { Mm } from '../../base/units.ts'
import { polygonIsSimple } from '../../geometry/simple.ts'
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

/** A sleeve that would run into the body at its usual hang is drawn lifted, by as much as it takes. */
const LIFTS = [1, 0.8, 0.6, 0.4, 0.2, 0, -0.2]

/** Of a cap sleeve on a wide body the lower corner is drawn this much beside the underarm. */
const BESIDE_UNDERARM: Mm = 1

/** Lifted until it keeps clear of the body; a sleeve too short for that has its lower corner beside the underarm. */
export function drawnSleeve(top: TopFigures, length: Mm, cuff: Mm): DrawnSleeve {
  const usual = length < LONG_SLEEVE ? SHORT_SLEEVE_HANG : LONG_SLEEVE_HANG
  const lifted = LIFTS.map((lift) => sleeveAt(top, length, cuff, lift * usual))
  return lifted.find(({ shape }) => polygonIsSimple(shape)) ?? capSleeve(top, lifted.at(-2) as DrawnSleeve)
}

function sleeveAt(top: TopFigures, length: Mm, cuff: Mm, degrees: number): DrawnSleeve {
  const hang = (degrees * Math.PI) / 180
  const tip = shoulderTip(top)
  const cuffOuter: Point = [tip[0] + length * Math.cos(hang), tip[1] - length * Math.sin(hang)]
  const cuffInner: Point = [cuffOuter[0] - cuff * Math.sin(hang), cuffOuter[1] - cuff * Math.cos(hang)]
  return { shape: [cuffInner, cuffOuter, ...[...armholeOf(top)].reverse()], tip, cuffOuter, cuffInner }
}

function capSleeve(top: TopFigures, sleeve: DrawnSleeve): DrawnSleeve {
  const { cuffInner, cuffOuter } = sleeve
  const beside: Point = [Math.max(cuffInner[0], underarm(top)[0] + BESIDE_UNDERARM), cuffInner[1]]
  return { ...sleeve, shape: [beside, cuffOuter, ...[...armholeOf(top)].reverse()] }
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

/** A neck begins straight down: so much farther out its shape runs down behind the front, not along the neck itself. */
const BESIDE_NECK: Mm = 1

/** The inside of the back that shows through the front's neck. */
function neckBehind(back: TopFigures): Polygon {
  const right = polyline(highPoint(back), [neckEdge(back)])
  const low = back.length - back.armhole
  const out = back.neckWidth / 2 + BESIDE_NECK
  return [...right, ...mirrored(right).slice(1), [-out, low], [out, low]]
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
