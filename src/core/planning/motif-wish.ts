import type { Mm } from '../base/units.ts'
import { polygonBox } from '../geometry/polygon.ts'
import type { Polygon } from '../geometry/types.ts'
import type { ShownMotif } from './lay-problem.ts'
import type { MotifPlace } from './motif-places.ts'

/** A print of the garment that one piece of the pattern shall show. */
export interface MotifWish {
  /** Where it is: id of a panel and the outline in its coordinates. */
  readonly panel: string
  readonly outline: Polygon
  /** Id of the piece; its first copy shows it. */
  readonly piece: string
  readonly place: MotifPlace
  /** True: it may show upside down or on its side. Else its up, as the garment is worn, is the piece's. */
  readonly anyWayUp: boolean
  /** How far its middle may be from there; means nothing anywhere. */
  readonly within: Mm
}

/** How far up the piece, as a share of its height. */
const UP: Readonly<Record<MotifPlace, number>> = { anywhere: 0.5, upper: 0.75, middle: 0.5, lower: 0.25 }

/** What a cut piece shows of the motif with this id. */
export function shownOn(outline: Polygon, { place, within }: MotifWish, motif: string): ShownMotif {
  const { minX, maxX, minY, maxY } = polygonBox(outline)
  const at = [(minX + maxX) / 2, minY + UP[place] * (maxY - minY)] as const
  // What lies inside the piece is nowhere farther from its middle than this.
  const anywhere = Math.hypot(maxX - minX, maxY - minY) / 2
  return { motif, at, within: place === 'anywhere' ? anywhere : within }
}
