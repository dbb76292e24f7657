import { type Random, seededRandom } from '../../core/base/random.ts'
import { polygonArea } from '../../core/geometry/polygon.ts'
import type { Point, Polygon, Way } from '../../core/geometry/types.ts'
import type { Item, PackingProblem, Region } from '../../core/packing/problem.ts'

/**
 * Shop checks: the panels of one T-shirt, some with a print on the front, and the pieces of a small top or a pair
 * of briefs, 4 to 12 copies. Measures are drawn by chance from ranges of ordinary garments (common practice).
 */
export function garmentProblems(count: number): PackingProblem[] {
  return Array.from({ length: count }, (_, i) => garmentProblem(seededRandom(i + 1)))
}

function between(random: Random, low: number, high: number): number {
  return Math.round(low + random() * (high - low))
}

function garmentProblem(random: Random): PackingProblem {
  const regions = panelsOf(random)
  const net = regions.reduce((sum, { outline }) => sum + polygonArea(outline), 0)
  const items: Item[] = []
  let filled = 0
  let copies = 0
  const share = 0.35 + 0.3 * random()
  while (copies <= 10) {
    const outline = pieceOf(random)
    const area = 2 * Math.abs(polygonArea(outline))
    if (filled + area > net * share) break
    filled += area
    copies += 2
    items.push({
      id: `piece ${items.length + 1}`,
      copies: 2,
      outline,
      optional: false,
      ways: regions.map(() => WAYS),
    })
  }
  return { clearance: between(random, 0, 3), regions, items }
}

const WAYS: readonly Way[] = [0, 180].flatMap((turn) =>
  [false, true].map((mirrored): Way => ({ turn, mirrored, tilt: 0 })),
)

function panelsOf(random: Random): Region[] {
  const width = between(random, 440, 620)
  const length = between(random, 560, 760)
  const body = (neck: number): Polygon => [
    [0, 0],
    [width, 0],
    [width - 10, length - 220],
    [width - 40, length - 30],
    [width / 2 + 90, length],
    [width / 2 + 60, length - neck * 0.7],
    [width / 2, length - neck],
    [width / 2 - 60, length - neck * 0.7],
    [width / 2 - 90, length],
    [40, length - 30],
    [10, length - 220],
  ]
  const print = random() < 0.5 ? [box(width / 2 - 100, length - 380, 200, 160)] : []
  const wide = between(random, 320, 420)
  const sleeve: Polygon = [
    [0, 0],
    [wide, 0],
    [wide + 30, 90],
    [wide * 0.75, 170],
    [wide / 2, 200],
    [wide * 0.25, 170],
    [-30, 90],
  ]
  return [
    { id: 'front', outline: body(100), forbidden: print },
    { id: 'back', outline: body(30), forbidden: [] },
    { id: 'sleeve 1', outline: sleeve, forbidden: [] },
    { id: 'sleeve 2', outline: sleeve, forbidden: [] },
  ]
}

function box(x: number, y: number, width: number, height: number): Polygon {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]
}

/** A half bodice, a sleeve, a front of briefs, a band or a cup, by chance. */
function pieceOf(random: Random): Polygon {
  const w = between(random, 120, 220)
  const h = between(random, 160, 320)
  const kinds: readonly (readonly Point[])[] = [
    [
      [0, 0],
      [w, 0],
      [w - 5, h * 0.5],
      [w * 0.8, h * 0.65],
      [w * 0.78, h * 0.9],
      [w * 0.4, h],
      [w * 0.15, h * 0.85],
      [0, h * 0.8],
    ],
    [
      [0, 0],
      [w, 0],
      [w * 1.1, h * 0.3],
      [w * 0.8, h * 0.55],
      [w * 0.5, h * 0.65],
      [w * 0.2, h * 0.55],
      [-w * 0.1, h * 0.3],
    ],
    [
      [w * 0.35, 0],
      [w * 0.65, 0],
      [w * 0.75, h * 0.25],
      [w, h * 0.45],
      [w, h * 0.6],
      [0, h * 0.6],
      [0, h * 0.45],
      [w * 0.25, h * 0.25],
    ],
    box(0, 0, w * 1.8, 60),
    [
      [0, 0],
      [w * 0.6, -w * 0.1],
      [w * 0.8, w * 0.2],
      [w * 0.5, w * 0.6],
      [w * 0.1, w * 0.5],
    ],
  ]
  return kinds[Math.floor(random() * kinds.length)] as Polygon
}
