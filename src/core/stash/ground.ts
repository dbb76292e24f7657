import type { Mm } from '../base/units.ts'
import type { HemmedPanel } from '../garments/opening/keep-hems.ts'
import type { Point, Polygon } from '../geometry/types.ts'

/** An edge of a piece is on a hem if both its ends are as near to the hem's fold as this. */
const ON_THE_FOLD: Mm = 0.02

/**
 * All cloth that a laid piece takes from its panel: its outline, and where an edge of it lies on the fold of a hem, the
 * cloth turned up behind it. A let-down hem reaches beyond the fold, so that cloth is somebody's too.
 */
export function groundOf(outline: Polygon, hemmed: HemmedPanel | null): readonly Polygon[] {
  if (!hemmed) return [outline]
  const folds = hemmed.hems.map((k) => edgeOf(hemmed.outline, k))
  const turnedUp = outline.flatMap((_, k): readonly Polygon[] => {
    const edge = edgeOf(outline, k)
    const fold = folds.find(([from, to]) => edge.every((end) => isOnFold(end, from, to)))
    return fold && isLong(edge) ? [behind(edge, fold, hemmed.hemDepth)] : []
  })
  return [outline, ...turnedUp]
}

type Edge = readonly [Point, Point]

function edgeOf(outline: Polygon, k: number): Edge {
  return [outline[k] as Point, outline[(k + 1) % outline.length] as Point]
}

function isLong([from, to]: Edge): boolean {
  return Math.hypot(to[0] - from[0], to[1] - from[1]) > ON_THE_FOLD
}

function isOnFold([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): boolean {
  const [ux, uy] = [bx - ax, by - ay]
  const length = Math.hypot(ux, uy)
  const beside = ((x - ax) * uy - (y - ay) * ux) / length
  const along = ((x - ax) * ux + (y - ay) * uy) / length
  return Math.abs(beside) <= ON_THE_FOLD && along >= -ON_THE_FOLD && along <= length + ON_THE_FOLD
}

/** The rectangle on the far side of the fold. The hemmed outline winds counter-clockwise, so its outside is on the right. */
function behind([from, to]: Edge, [a, b]: Edge, depth: Mm): Polygon {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1])
  const [nx, ny] = [((b[1] - a[1]) / length) * depth, (-(b[0] - a[0]) / length) * depth]
  return [from, to, [to[0] + nx, to[1] + ny], [from[0] + nx, from[1] + ny]]
}
