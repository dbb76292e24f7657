import { fieldPath } from '../base/field-path.ts'
import type { Fault } from '../base/result.ts'
import { polygonArea } from '../geometry/polygon.ts'
import { polygonIsSimple } from '../geometry/simple.ts'
import type { Point } from '../geometry/types.ts'
import { PATTERN_LIMITS } from './limits.ts'
import { numberFault } from './number-fault.ts'
import type { OutlinePoint, OutlineShape, PieceShape } from './pattern.ts'
import { seamLine } from './seam-line.ts'
import { edgeLength } from './unfold.ts'

type Path = readonly (string | number)[]

/** Chords of an outline with more detail than shears can follow; more only costs time. */
const MOST_CHORDS = 5_000

/** Least finished area, mm²; less is a slip. */
const LEAST_AREA = 1

/** Everything wrong with one shape; `path` leads to it. A shape without faults has a cut outline. */
export function shapeFaults(shape: PieceShape, path: Path = []): readonly Fault[] {
  const figures = figureFaults(shape, path)
  if (figures.length > 0 || shape.form !== 'outline') return figures
  const repeated = repeatedPoint(shape)
  if (repeated !== null) {
    return [
      {
        field: fieldPath([...path, 'points', repeated]),
        message: 'repeats the point before it; leave it out',
      },
    ]
  }
  return boundaryFaults(shape, path)
}

function figureFaults(shape: PieceShape, path: Path): readonly Fault[] {
  const length = (name: string, value: number) =>
    numberFault([...path, name], value, 0, PATTERN_LIMITS.length, 'above')
  const allowance = (name: string, value: number) =>
    numberFault([...path, name], value, 0, PATTERN_LIMITS.allowance)
  switch (shape.form) {
    case 'box':
    case 'triangle':
    case 'half-moon':
      return [
        length('width', shape.width),
        length('height', shape.height),
        allowance('allowance', shape.allowance),
      ].flat()
    case 'trapezoid':
      return [
        length('top', shape.top),
        length('bottom', shape.bottom),
        length('height', shape.height),
        allowance('allowance', shape.allowance),
      ].flat()
    case 'circle':
      return [length('diameter', shape.diameter), allowance('allowance', shape.allowance)].flat()
    case 'strip':
      return [
        length('edge', shape.edge),
        numberFault([...path, 'ratio'], shape.ratio, 0, PATTERN_LIMITS.ratio, 'above'),
        length('height', shape.height),
        allowance('endAllowance', shape.endAllowance),
        allowance('sideAllowance', shape.sideAllowance),
        allowance('lap', shape.lap ?? 0),
      ].flat()
    case 'outline':
      return pointFaults(shape, path)
  }
}

function pointFaults({ points }: OutlineShape, path: Path): readonly Fault[] {
  const field = fieldPath([...path, 'points'])
  const least = points.some(({ curve }) => curve) ? 2 : 3
  if (points.length < least) return [{ field, message: `needs at least ${least} points` }]
  if (points.length > PATTERN_LIMITS.points)
    return [{ field, message: `must have at most ${PATTERN_LIMITS.points} points` }]
  return points.flatMap((point, k) => [
    ...onePointFaults(point, [...path, 'points', k]),
    ...notchFaults(point, points[(k + 1) % points.length] as OutlinePoint, [...path, 'points', k, 'notches']),
  ])
}

/** A notch stands between the two ends of its edge, to a tenth of a millimetre. */
function notchFaults(point: OutlinePoint, next: OutlinePoint, path: Path): readonly Fault[] {
  if (!point.notches) return []
  const length = edgeLength(point, next)
  return point.notches.flatMap(({ at }, k) =>
    at <= length + 0.1
      ? []
      : [
          {
            field: fieldPath([...path, k, 'at']),
            message: `lies beyond the end of its edge, which is ${length.toFixed(1)} mm long`,
          },
        ],
  )
}

function onePointFaults({ at, curve, allowance }: OutlinePoint, path: Path): readonly Fault[] {
  const places: readonly (readonly [Path, Point])[] = [
    [[...path, 'at'], at],
    ...(curve ?? []).map((control, k) => [[...path, 'curve', k], control] as const),
  ]
  return [
    ...places.flatMap(([place, point]) =>
      point.flatMap((value, k) =>
        numberFault([...place, k], value, -PATTERN_LIMITS.length, PATTERN_LIMITS.length),
      ),
    ),
    ...numberFault([...path, 'allowance'], allowance, 0, PATTERN_LIMITS.allowance),
  ]
}

/** Index of the first point that stands where the one before it stands, or null. The last and first points count as neighbours. */
function repeatedPoint({ points }: OutlineShape): number | null {
  const at = points.findIndex(({ at: [x, y] }, k) => {
    const [px, py] = (points.at(k - 1) as OutlinePoint).at
    return x === px && y === py
  })
  return at === -1 ? null : at
}

function boundaryFaults(shape: OutlineShape, path: Path): readonly Fault[] {
  const field = fieldPath([...path, 'points'])
  const line = seamLine(shape)
  if (line.length > MOST_CHORDS)
    return [{ field, message: 'the curves are too fine to follow; draw fewer or larger ones' }]
  if (!polygonIsSimple(line)) {
    const message = shape.onFold
      ? 'the outline crosses or touches itself or the fold; draw it once round, on one side of the fold'
      : 'the outline crosses or touches itself; draw it once round'
    return [{ field, message }]
  }
  return polygonArea(line) < LEAST_AREA ? [{ field, message: 'the outline has no area' }] : []
}
