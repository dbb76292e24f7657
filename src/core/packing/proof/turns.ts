import type { Deg } from '../../base/units.ts'
import { polygonBox } from '../../geometry/polygon.ts'
import type { Polygon, Way } from '../../geometry/types.ts'
import { coreOutline } from './core-outline.ts'

/** The whole circle is first cut into this many parts: divisible by what outlines are usually symmetric by (2, 3, 4, 6). */
const PARTS_OF_CIRCLE = 24

/** Ways that together hold the same orientations, the whole circle cut into parts. */
export function waysInParts(ways: readonly Way[]): readonly Way[] {
  return ways.flatMap((way) => {
    if (way.tilt < 180) return [way]
    const tilt = 180 / PARTS_OF_CIRCLE
    return Array.from({ length: PARTS_OF_CIRCLE }, (_, i) => ({ ...way, turn: 2 * tilt * i, tilt }))
  })
}

/** Ways no wider than `tilt` each that together hold the same orientations. */
export function waysNoWider(ways: readonly Way[], tilt: Deg): readonly Way[] {
  return ways.flatMap((way) => (way.tilt <= tilt ? [way] : waysNoWider(halves(way), tilt)))
}

/** The two halves of a way. */
export function halves({ turn, tilt, mirrored }: Way): readonly [Way, Way] {
  const half = tilt / 2
  return [
    { turn: turn - half, tilt: half, mirrored },
    { turn: turn + half, tilt: half, mirrored },
  ]
}

/** Narrower than this no range of turns is cut. */
export const NARROWEST: Deg = 0.02

/**
 * True if `holds` is proved of every orientation in `ways`: of a core of each of some ranges that cover them.
 * `holds` must be true of an outline when it is true of a part of it. Ends at the first turn for which it fails
 * (branch and bound over angles); false is no proof of the opposite. Pauses at every range of turns.
 */
export function* provedInEveryTurn(
  outline: Polygon,
  ways: readonly Way[],
  holds: (core: Polygon) => boolean,
): Generator<void, boolean> {
  const open = [...withoutTwins(outline, waysInParts(ways))]
  for (let way = open.pop(); way !== undefined; way = open.pop()) {
    yield
    const middle = coreOutline(outline, { ...way, tilt: 0 })
    if (!middle || !holds(middle)) return false
    if (way.tilt === 0) continue
    const core = coreOutline(outline, way)
    if (core && holds(core)) continue
    if (way.tilt < NARROWEST) return false
    open.push(...halves(way))
  }
  return true
}

/** Ways without those whose core is the same but for a translation: quarter turns of a square, say. */
export function withoutTwins(outline: Polygon, ways: readonly Way[]): readonly Way[] {
  const seen = new Set<string>()
  return ways.filter((way) => {
    const core = coreOutline(outline, { ...way, tilt: 0 })
    if (!core) return true
    const key = `${way.tilt} ${outlineKey(core)}`
    if (seen.has(key)) return false
    seen.add(key)
    return true
  })
}

/** The same text for outlines that differ by a translation only, to a tenth of `MARGIN`, which is what rounding may cost. */
export function outlineKey(outline: Polygon): string {
  const { minX, minY } = polygonBox(outline)
  const points = outline.map(([x, y]) => `${Math.round((x - minX) * 2000)} ${Math.round((y - minY) * 2000)}`)
  const first = points.reduce((best, point, i) => (point < (points[best] as string) ? i : best), 0)
  return [...points.slice(first), ...points.slice(0, first)].join(' ')
}
