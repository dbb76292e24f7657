import type { Pattern, PieceShape } from '../../src/core/patterns/pattern.ts'

type Outline = Extract<PieceShape, { form: 'outline' }>
type Strip = Extract<PieceShape, { form: 'strip' }>

function shapeOf(pattern: Pattern, piece: string, size: string): PieceShape {
  const shape = pattern.pieces.find(({ id }) => id === piece)?.shapes[size]
  if (!shape) throw new Error(`no piece ${piece} in size ${size}`)
  return shape
}

export function outlineOf(pattern: Pattern, piece: string, size: string): Outline {
  const shape = shapeOf(pattern, piece, size)
  if (shape.form !== 'outline') throw new Error(`${piece} is a ${shape.form}`)
  return shape
}

export function stripOf(pattern: Pattern, piece: string, size: string): Strip {
  const shape = shapeOf(pattern, piece, size)
  if (shape.form !== 'strip') throw new Error(`${piece} is a ${shape.form}`)
  return shape
}

/** Length of the edges that leave the numbered points, by Simpson's rule over the speed of each cubic. */
export function edgesLength({ points }: Outline, ...edges: readonly number[]): number {
  return edges.reduce((sum, edge) => sum + edgeLength(points, edge), 0)
}

/** A notch of a seam and how far it lies from where the seam begins. */
export interface SeamNotch {
  readonly from: number
  readonly count: number
}

/**
 * Walks a seam: the edges that leave the numbered points, in the order in which the seam is sewn, each run `forward` as it is
 * drawn or backward. Tells every notch passed.
 */
export function notchesAlong(
  outline: Outline,
  edges: readonly number[],
  forward: boolean,
): readonly SeamNotch[] {
  let walked = 0
  return edges.flatMap((edge) => {
    const length = edgeLength(outline.points, edge)
    const start = walked
    walked += length
    return (outline.points[edge]?.notches ?? []).map(({ at, count }) => ({
      from: start + (forward ? at : length - at),
      count,
    }))
  })
}

function edgeLength(points: Outline['points'], edge: number): number {
  const point = points[edge]
  const next = points[(edge + 1) % points.length]
  if (!point || !next) throw new Error(`no edge ${edge}`)
  if (!point.curve) return Math.hypot(next.at[0] - point.at[0], next.at[1] - point.at[1])
  const controls = [point.at, ...point.curve, next.at] as const
  const speed = (t: number) => Math.hypot(derivative(controls, 0, t), derivative(controls, 1, t))
  const halves = 200
  const step = 1 / (2 * halves)
  let sum = speed(0) + speed(1)
  for (let k = 1; k < 2 * halves; k++) sum += speed(k * step) * (k % 2 === 1 ? 4 : 2)
  return (sum * step) / 3
}

type Place = readonly [number, number]

function derivative([a, b, c, d]: readonly [Place, Place, Place, Place], axis: 0 | 1, t: number): number {
  const s = 1 - t
  return 3 * (s * s * (b[axis] - a[axis]) + 2 * s * t * (c[axis] - b[axis]) + t * t * (d[axis] - c[axis]))
}
