import type { Mm } from '../../base/units.ts'
import { ringsDifference } from '../../geometry/clipper.ts'
import { polygonCounterClockwise } from '../../geometry/polygon.ts'
import type { Point, Polygon, Rings } from '../../geometry/types.ts'
import type { Region } from '../problem.ts'
import { coreDomain } from './relaxed.ts'

/** Height of the strips by which runs of some width are found, and how much narrower than the width they are: a run exactly as wide counts. */
const THIN: Mm = 0.01

/**
 * Length of the longest rectangle along y, `width` across, that lies in the region's ground; without a width, of the
 * longest straight line in it. Lemma: what holds a rectangle that long holds one no longer than its own ground's.
 */
export function longestRun(region: Region, width: Mm): Mm {
  if (width > THIN) {
    const lies = coreDomain(region, [
      [0, 0],
      [width - THIN, 0],
      [width - THIN, THIN],
      [0, THIN],
    ])
    return lies.length === 0 ? 0 : longestUpright(lies) + THIN
  }
  const outline = [polygonCounterClockwise(region.outline)]
  if (region.forbidden.length === 0) return longestUpright(outline)
  return longestUpright(ringsDifference(outline, region.forbidden.map(polygonCounterClockwise)))
}

/** The same for a polygon. */
export function longestRunIn(outline: Polygon, width: Mm): Mm {
  return longestRun({ id: '', outline, forbidden: [] }, width)
}

/** Between two neighbouring abscissas of corners the ends of upright chords move along edges: the longest is at either side. */
function longestUpright(rings: Rings): Mm {
  const edges = rings.flatMap((ring) =>
    ring.flatMap((a, i): (readonly [Point, Point])[] => {
      const b = ring[(i + 1) % ring.length] as Point
      if (a[0] === b[0]) return []
      return [a[0] < b[0] ? [a, b] : [b, a]]
    }),
  )
  const columns = [...new Set(rings.flat().map(([x]) => x))].sort((a, b) => a - b)
  let longest = 0
  columns.slice(1).forEach((right, i) => {
    const left = columns[i] as Mm
    const middle = (left + right) / 2
    const crossed = edges
      .filter(([a, b]) => a[0] < middle && b[0] > middle)
      .sort((e, f) => heightAt(e, middle) - heightAt(f, middle))
    for (let k = 0; k + 1 < crossed.length; k += 2) {
      const [low, high] = [crossed[k], crossed[k + 1]] as [readonly [Point, Point], readonly [Point, Point]]
      for (const x of [left, right]) longest = Math.max(longest, heightAt(high, x) - heightAt(low, x))
    }
  })
  return longest
}

function heightAt([a, b]: readonly [Point, Point], x: Mm): Mm {
  return a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0])
}
