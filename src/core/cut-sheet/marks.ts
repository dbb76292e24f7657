import type { Mm } from '../base/units.ts'
import { polygonBox, polygonMoved, polygonOriented } from '../geometry/index.ts'
import type { Point, Polygon } from '../geometry/types.ts'
import { sampledCurve } from '../patterns/curves.ts'
import type { OutlinePoint, PieceShape, StripShape } from '../patterns/pattern.ts'
import { seamLine } from '../patterns/seam-line.ts'
import { stripFlat } from '../patterns/strip.ts'
import { seamRing } from '../patterns/unfold.ts'
import type { LaidPiece } from '../stash/reservation.ts'

/** Something to transfer from the pattern onto the cloth before the piece is moved. */
export interface PieceMark {
  /**
   * `grain`: the line that lies along the grain. `centre`: where an unfolded piece would be folded. `hem`, `casing`: where it is
   * turned, `depth` inside the cut edge. `quarter`: a mark on both long edges of a strip, to share its fullness out evenly; `lap`:
   * one where it passes the end of its seam. `round`: a quarter of the edge of a disc.
   */
  readonly kind: 'grain' | 'centre' | 'hem' | 'casing' | 'quarter' | 'lap' | 'round'
  readonly line: Polygon
  readonly depth: Mm
}

/** A grain line this share of the piece long is long enough to lay a ruler to. */
const GRAIN_SHARE = 0.5

/** A quarter mark of a disc begins at this share of its radius. */
const ROUND_SHARE = 0.9

/** Where across the piece a grain line is tried, the best place first. */
const GRAIN_TRIES = [0.35, 0.65, 0.4, 0.6, 0.3, 0.7, 0.25, 0.75, 0.2, 0.8, 0.5] as const

/** The marks of a laid piece, in the panel's coordinates. The shape must be the one it was cut by. */
export function marksOf(shape: PieceShape, laid: LaidPiece): readonly PieceMark[] {
  return marksOfShape(shape).map((mark) => ({ ...mark, line: laidLine(mark.line, laid) }))
}

function laidLine(line: Polygon, { turn, mirrored, x, y }: LaidPiece): Polygon {
  return polygonMoved(polygonOriented(line, { turn, mirrored }), x, y)
}

function marksOfShape(shape: PieceShape): readonly PieceMark[] {
  if (shape.form === 'strip') return stripMarks(shape)
  const grain = grainLine(seamLine(shape))
  if (shape.form === 'circle') return [grain, ...roundQuarters(shape)]
  return shape.form === 'outline' ? [grain, ...centreLine(shape), ...turningLines(seamRing(shape))] : [grain]
}

/** Up the piece where it is long, beside the middle rather than elsewhere: there is its number, and on some a centre line. */
function grainLine(points: Polygon): PieceMark {
  const { minX, minY, maxX, maxY } = polygonBox(points)
  let best = { x: (minX + maxX) / 2, from: minY, to: maxY, worth: Number.NEGATIVE_INFINITY }
  for (const share of GRAIN_TRIES) {
    const x = minX + (maxX - minX) * share
    for (const [from, to] of insideAt(points, x)) {
      const worth = to - from - Math.abs(share - GRAIN_TRIES[0]) * (maxX - minX)
      if (worth > best.worth) best = { x, from, to, worth }
    }
  }
  const [middle, half] = [(best.from + best.to) / 2, ((best.to - best.from) * GRAIN_SHARE) / 2]
  return {
    kind: 'grain',
    line: [
      [best.x, middle - half],
      [best.x, middle + half],
    ],
    depth: 0,
  }
}

/** The stretches of the upright line at x that lie inside. */
function insideAt(points: Polygon, x: Mm): readonly (readonly [Mm, Mm])[] {
  let before = points.at(-1) as Point
  const crossings: Mm[] = []
  for (const point of points) {
    const [[ax, ay], [bx, by]] = [before, point]
    if (ax <= x !== bx <= x) crossings.push(ay + ((x - ax) * (by - ay)) / (bx - ax))
    before = point
  }
  crossings.sort((a, b) => a - b)
  return crossings.flatMap((from, k) => (k % 2 === 0 ? [[from, crossings[k + 1] as Mm] as const] : []))
}

function centreLine(shape: Extract<PieceShape, { form: 'outline' }>): readonly PieceMark[] {
  const [first, last] = [shape.points[0], shape.points.at(-1)]
  return shape.onFold && first && last ? [{ kind: 'centre', line: [last.at, first.at], depth: 0 }] : []
}

/** The seam line of every hem and casing is where it is turned; neighbours in one run are one line. */
function turningLines(ring: readonly OutlinePoint[]): readonly PieceMark[] {
  const starts = ring.flatMap((point, k) => {
    const before = ring.at(k - 1) as OutlinePoint
    const begins = point.use && !(before.use === point.use && before.allowance === point.allowance)
    return begins ? [k] : []
  })
  return starts.map((start) => {
    const { use, allowance } = ring[start] as OutlinePoint & { use: 'hem' | 'casing' }
    const line: Point[] = []
    let k = start
    while (true) {
      const point = ring[k % ring.length] as OutlinePoint
      if (point.use !== use || point.allowance !== allowance) {
        line.push(point.at)
        return { kind: use, line, depth: allowance }
      }
      const next = ring[(k + 1) % ring.length] as OutlinePoint
      line.push(...(point.curve ? sampledCurve([point.at, ...point.curve, next.at], 0).points : [point.at]))
      k++
    }
  })
}

function stripMarks(strip: StripShape): readonly PieceMark[] {
  const { height } = stripFlat(strip)
  const seam = strip.edge * strip.ratio
  const lap: PieceMark = { kind: 'lap', line: upright(seam, height), depth: 0 }
  return [...quarters(seam, height), ...(strip.lap ? [lap] : [])]
}

function upright(x: Mm, height: Mm): Polygon {
  return [
    [x, 0],
    [x, height],
  ]
}

/** Common practice: quarters of a disc meet quarters of what is sewn round it. */
function roundQuarters({
  diameter,
  allowance,
}: Extract<PieceShape, { form: 'circle' }>): readonly PieceMark[] {
  const radius = diameter / 2
  return [0, 1, 2, 3].map((quarter) => {
    const [cos, sin] = [Math.cos((quarter * Math.PI) / 2), Math.sin((quarter * Math.PI) / 2)]
    const out = (reach: Mm): Point => [radius + reach * cos, radius + reach * sin]
    return { kind: 'round', line: [out(radius + allowance), out(radius * ROUND_SHARE)], depth: 0 }
  })
}

/** Common practice: half and quarters of a strip meet half and quarters of the edge it is sewn to. */
function quarters(length: Mm, height: Mm): readonly PieceMark[] {
  return [0.25, 0.5, 0.75].map((share) => ({
    kind: 'quarter',
    line: upright(length * share, height),
    depth: 0,
  }))
}
