import type { Random } from '../../../core/base/random.ts'
import type { Mm } from '../../../core/base/units.ts'
import { ringsDifference, ringsIntersection, ringsOffset } from '../../../core/geometry/clipper.ts'
import { polygonArea, polygonBox, polygonCounterClockwise } from '../../../core/geometry/polygon.ts'
import { polygonIsSimple } from '../../../core/geometry/simple.ts'
import type { Point, Polygon } from '../../../core/geometry/types.ts'

/** A part of a panel, where it lies. */
export interface Part {
  /** Index of the panel it comes from. */
  readonly panel: number
  readonly outline: Polygon
}

/** A half that is a smaller share of what was cut, or keeps a smaller share of itself when pulled in, is no piece anyone would cut. */
const LEAST_HALF = 0.2
const LEAST_KEPT = 0.5

/** Shorter edges, which offsets leave behind, are passed over: far less than any inset. */
const SHORTEST_EDGE: Mm = 0.05

/** Cuts tried on one part. */
const TRIES = 60

/**
 * The panels cut apart wholly into `count` parts by straight and bent cuts, the largest part first, each of which
 * stays in one part when pulled in by `inset`. Fewer where no cut is found.
 */
export function cutApart(panels: readonly Polygon[], count: number, inset: Mm, random: Random): Part[] {
  let parts: Part[] = panels.map((outline, panel) => ({ panel, outline: polygonCounterClockwise(outline) }))
  const uncut = new Set<Part>()
  while (parts.length < count) {
    const open = parts.filter((part) => !uncut.has(part)).sort((a, b) => area(b) - area(a))
    const largest = open[0]
    if (!largest) break
    const halves = cutOnce(largest.outline, inset, random)
    if (halves) {
      const made = halves.map((outline) => ({ panel: largest.panel, outline }))
      parts = [...parts.filter((part) => part !== largest), ...made]
    } else uncut.add(largest)
  }
  return parts
}

/** Every edge moved inward; null if little or more than one part is left. Thousandths of a millimetre, as files have them. */
export function pulledIn(outline: Polygon, inset: Mm): Polygon | null {
  const rings = ringsOffset([outline], -inset, 'mitre')
  const [ring] = rings
  if (!ring || rings.length > 1 || polygonArea(ring) < LEAST_KEPT * polygonArea(outline)) return null
  const rounded = ring.map(([x, y]): Point => [rounding(x), rounding(y)])
  const clean = rounded.filter(([x, y], i) => {
    const [px, py] = rounded.at(i - 1) as Point
    return Math.hypot(x - px, y - py) > SHORTEST_EDGE
  })
  return polygonIsSimple(clean) ? clean : null
}

export function rounding(length: Mm): Mm {
  return Math.round(length * 1000) / 1000
}

function area({ outline }: Part): number {
  return polygonArea(outline)
}

function cutOnce(outline: Polygon, inset: Mm, random: Random): readonly Polygon[] | null {
  for (let k = 0; k < TRIES; k++) {
    const side = sideOfCut(outline, random)
    const halves = [...ringsIntersection([outline], [side]), ...ringsDifference([outline], [side])]
    const large = halves.every((half) => polygonArea(half) >= LEAST_HALF * polygonArea(outline))
    if (halves.length === 2 && large && halves.every((half) => pulledIn(half, inset) !== null)) return halves
  }
  return null
}

/** All that lies on one side of a cut through the middle of an outline: straight, or with up to three bends. */
function sideOfCut(outline: Polygon, random: Random): Polygon {
  const { minX, maxX, minY, maxY } = polygonBox(outline)
  const size = Math.hypot(maxX - minX, maxY - minY)
  const between = (low: number, high: number) => low + random() * (high - low)
  const middle: Point = [
    (minX + maxX) / 2 + between(-0.25, 0.25) * (maxX - minX),
    (minY + maxY) / 2 + between(-0.25, 0.25) * (maxY - minY),
  ]
  const angle = between(0, Math.PI)
  /** `along` the cut and `aside` of it, in sizes of the outline. */
  const at = (along: number, aside: number): Point => [
    middle[0] + size * (along * Math.cos(angle) - aside * Math.sin(angle)),
    middle[1] + size * (along * Math.sin(angle) + aside * Math.cos(angle)),
  ]
  const bends = Math.floor(between(0, 4))
  const places = Array.from({ length: bends }, () => between(-0.4, 0.4)).sort((a, b) => a - b)
  return [at(-2, 0), ...places.map((place) => at(place, between(-0.12, 0.12))), at(2, 0), at(2, 3), at(-2, 3)]
}
