import type { Deadline } from '../../base/deadline.ts'
import { ringsDifference } from '../../geometry/clipper.ts'
import { polygonMoved } from '../../geometry/transform.ts'
import type { Polygon, Rings } from '../../geometry/types.ts'
import type { NoFitTable } from '../engine/no-fit-table.ts'
import type { Shape } from '../engine/shapes.ts'
import type { Spot } from './layout.ts'
import type { Option } from './option.ts'

interface Known {
  rings: Rings
  /** How many of the region's spots are already taken off. */
  seen: number
}

/**
 * Where each option is still free of everything placed so far: its domain without the no-fit polygons of the
 * spots taken. Only what is asked for is computed, each time from the last answer.
 */
export class FreeSpace {
  private readonly taken: Spot[][] = []
  private readonly known = new Map<Option, Known>()

  constructor(
    private readonly noFits: NoFitTable,
    private readonly deadline: Deadline,
  ) {
    noFits.makeRoom()
  }

  take(spot: Spot): void {
    const region = spot.option.region
    this.taken[region] ??= []
    ;(this.taken[region] as Spot[]).push(spot)
  }

  takenIn(region: number): readonly Spot[] {
    return this.taken[region] ?? []
  }

  /** Positions at which the option overlaps nothing; its corners are the touching positions. None once time is up. */
  of(option: Option): Rings {
    if (this.deadline.passed()) return []
    const taken = this.takenIn(option.region)
    let known = this.known.get(option)
    if (!known) {
      known = { rings: option.domainRings, seen: 0 }
      this.known.set(option, known)
    }
    if (known.rings.length > 0 && known.seen < taken.length) {
      const clip: Polygon[] = []
      for (const spot of taken.slice(known.seen)) {
        clip.push(...this.noFitAt(spot, option.shape))
        if (this.deadline.passed()) return []
      }
      known.rings = ringsDifference(known.rings, clip)
    }
    known.seen = taken.length
    return known.rings
  }

  private noFitAt(spot: Spot, moving: Shape): Polygon[] {
    return this.noFits.get(spot.option.shape, moving).map((ring) => polygonMoved(ring, spot.x, spot.y))
  }
}
