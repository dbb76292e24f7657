import * as z from 'zod/mini'
import type { Mm } from '../../core/base/units.ts'
import { type Point, type Polygon, polygonArea, polygonPerimeter } from '../../core/geometry/index.ts'
import { edgesThatMeet } from '../../core/geometry/simple.ts'

const MOST_POINTS = 2000

/** Farther from 0 than this is a slip of the keyboard, not cloth: 100 m. */
const FARTHEST: Mm = 100_000

/** A polygon of less area than a strip this wide round its boundary is no piece of cloth. */
const LEAST_WIDTH: Mm = 1e-6

/** Why a list of points is no outline, without the field's name; null for a simple polygon with area. */
export function outlineFault(points: Polygon): string | null {
  if (points.length < 3) return `must have at least 3 points, and has ${points.length}`
  if (points.length > MOST_POINTS) return `must have at most ${MOST_POINTS} points, and has ${points.length}`
  const far = points.findIndex(([x, y]) => Math.abs(x) > FARTHEST || Math.abs(y) > FARTHEST)
  if (far >= 0) return `point ${far} is more than 100 m away; lengths are millimetres`
  return sameFault(points) ?? areaFault(points) ?? meetFault(points)
}

function sameFault(points: Polygon): string | null {
  const n = points.length
  const same = (i: number, j: number) => points[i]![0] === points[j]![0] && points[i]![1] === points[j]![1]
  if (same(0, n - 1)) return 'repeats its first point at the end; leave the last one out'
  const twin = points.findIndex((_, i) => i + 1 < n && same(i, i + 1))
  return twin < 0 ? null : `points ${twin} and ${twin + 1} are the same; leave one out`
}

function areaFault(points: Polygon): string | null {
  // A figure of eight may have no area either, and then its crossing is the better thing to say.
  const flat = Math.abs(polygonArea(points)) < LEAST_WIDTH * polygonPerimeter(points)
  return flat && !crossesProperly(points) ? 'has no area' : null
}

function crossesProperly(points: Polygon): boolean {
  const [a, b] = [points[0] as Point, points[1] as Point]
  const onOneLine = points.every(([x, y]) => (b[0] - a[0]) * (y - a[1]) - (x - a[0]) * (b[1] - a[1]) === 0)
  return !onOneLine && edgesThatMeet(points) !== null
}

function meetFault(points: Polygon): string | null {
  const meeting = edgesThatMeet(points)
  if (!meeting) return null
  const [i, j] = [...meeting].sort((p, q) => p - q) as [number, number]
  const neighbours = j - i === 1 || (i === 0 && j === points.length - 1)
  return neighbours ? `edges ${i} and ${j} run back over each other` : `edges ${i} and ${j} cross`
}

/** A polygon in a file: `[[x, y], …]`, at least 3 points, simple, either winding, first point not repeated at the end. */
export const outlineSchema = z.array(z.tuple([z.number(), z.number()])).check(
  z.check((context) => {
    const message = outlineFault(context.value)
    if (message) context.issues.push({ code: 'custom', message, input: context.value })
  }),
)
