import type { Mm } from '../../base/units.ts'
import { polygonOriented } from '../../geometry/transform.ts'
import type { Orientation, Point, Polygon, Rings } from '../../geometry/types.ts'
import { MOST_NO_FITS } from '../config.ts'
import { withClearance } from './clearance.ts'
import { DepthMemory } from './depth-memory.ts'
import { flatRings } from './flat-rings.ts'
import { noFit } from './no-fit.ts'
import { type Shape, type ShapeTable, turnNormalised } from './shapes.ts'

/** Rows of handles have room for at least so many shapes that are not known yet. */
const MORE_SHAPES = 16

/**
 * The no-fit polygons of all pairs of shapes, computed when first asked for, with the clearance between items in
 * them. Only pairs of outlines in different relative orientation are computed; others are turned and mirrored copies:
 * noFit(G·p, G·q) = G·noFit(p, q) for every turn and mirror image G, and noFit(q, p) = −noFit(p, q).
 */
export class NoFitTable {
  private readonly bases = new Map<string, Rings>()
  private readonly rows: (Rings | undefined)[][] = []
  private readonly handleRows: (Int32Array | undefined)[] = []
  private readonly grown: Polygon[] = []
  private held = 0
  private depths = new DepthMemory()

  constructor(
    private readonly table: ShapeTable,
    private readonly clearance: Mm,
    private readonly excess: Mm,
  ) {}

  /** How many no-fit polygons it holds. */
  get size(): number {
    return this.held
  }

  /** Translations of `moving` relative to `fixed` at which they overlap or come too near. */
  get(fixed: Shape, moving: Shape): Rings {
    const known = this.rows[fixed.id]?.[moving.id]
    if (known) return known
    const made = this.compute(fixed, moving)
    this.held++
    this.rows[fixed.id] ??= []
    ;(this.rows[fixed.id] as (Rings | undefined)[])[moving.id] = made
    return made
  }

  /** How deep positions lie in the polygons, by their handles; another one after `makeRoom`. */
  get memory(): DepthMemory {
    return this.depths
  }

  /** What the memory knows the polygon of two shapes by. */
  handle(fixed: Shape, moving: Shape): number {
    const known = this.handles(moving)[fixed.id] as number
    if (known > 0) return known
    const made = this.depths.keep(flatRings(this.get(fixed, moving)))
    this.handles(moving)[fixed.id] = made
    return made
  }

  /** The handles of what a shape meets, by the fixed shape's id; 0 where `handle` was not asked for yet. */
  handles(moving: Shape): Int32Array {
    const known = this.handleRows[moving.id]
    const shapes = this.table.shapes.length
    if (known && known.length >= shapes) return known
    const row = new Int32Array(2 * shapes + MORE_SHAPES)
    if (known) row.set(known)
    this.handleRows[moving.id] = row
    return row
  }

  /**
   * Lets go of all that is known if it is much, and can be computed again: a long search with many turns must not fill the
   * phone. To be called when no handle is in use.
   */
  makeRoom(): void {
    if (this.held < MOST_NO_FITS) return
    this.rows.length = 0
    this.handleRows.length = 0
    this.bases.clear()
    this.depths = new DepthMemory()
    this.held = 0
  }

  private compute(fixed: Shape, moving: Shape): Rings {
    if (this.table.precedes(moving.outlineId, fixed.outlineId))
      return this.get(moving, fixed).map(seenThroughOrigin)
    const relative = relativeOrientation(fixed, moving)
    const key = `${fixed.outlineId} ${moving.outlineId} ${relative.turn} ${relative.mirrored}`
    let base = this.bases.get(key)
    if (!base) {
      base = noFit(this.grownOutline(fixed.outlineId), this.table.shape(moving.outlineId, relative).outline)
      this.bases.set(key, base)
    }
    if (fixed.turn === 0 && !fixed.mirrored) return base
    return base.map((ring) => {
      const oriented = polygonOriented(ring, fixed)
      return fixed.mirrored ? [...oriented].reverse() : oriented
    })
  }

  private grownOutline(outlineId: number): Polygon {
    this.grown[outlineId] ??= withClearance(
      this.table.outlines[outlineId] as Polygon,
      this.clearance,
      this.excess,
    )
    return this.grown[outlineId] as Polygon
  }
}

/** How `moving` is held as seen by somebody who is held as `fixed` is. */
function relativeOrientation(fixed: Orientation, moving: Orientation): Orientation {
  const turn = moving.turn - fixed.turn
  return {
    turn: turnNormalised(fixed.mirrored ? -turn : turn),
    mirrored: fixed.mirrored !== moving.mirrored,
  }
}

function seenThroughOrigin(ring: Polygon): Polygon {
  return ring.map(([x, y]): Point => [-x, -y])
}
