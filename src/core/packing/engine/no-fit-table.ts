import type { Mm } from '../../base/units.ts'
import { polygonOriented } from '../../geometry/transform.ts'
import type { Orientation, Point, Polygon, Rings } from '../../geometry/types.ts'
import { DEPTH_GRID, MOST_NO_FITS } from '../config.ts'
import { withClearance } from './clearance.ts'
import { DepthGrid } from './depth-grid.ts'
import { type FlatRings, flatDepth, flatNearest, flatRings, type Nearest } from './flat-rings.ts'
import { noFit } from './no-fit.ts'
import { type Shape, type ShapeTable, turnNormalised } from './shapes.ts'

/** A no-fit polygon: rings for polygon booleans, flat for single questions, and a grid once there are many. */
export class NoFit {
  readonly flat: FlatRings
  private grid: DepthGrid | null = null
  private asked = 0

  constructor(readonly rings: Rings) {
    this.flat = flatRings(rings)
  }

  /** The grid for one question, null while there have been so few that making it does not pay. */
  forQuestion(): DepthGrid | null {
    if (!this.grid && ++this.asked > DEPTH_GRID.worthwhile) this.grid = new DepthGrid(this.flat)
    return this.grid
  }

  /** Penetration depth at a translation of the moving item relative to the fixed one, 0 if they are clear. */
  depth(x: number, y: number): number {
    const grid = this.forQuestion()
    return grid ? grid.depth(x, y) : flatDepth(this.flat, x, y)
  }

  /** As `depth`; if it is not 0, `into` is the boundary point nearest to (x, y). */
  wayOut(x: number, y: number, into: Nearest): number {
    const grid = this.forQuestion()
    if (grid) return grid.wayOut(x, y, into)
    const depth = flatDepth(this.flat, x, y)
    if (depth > 0) flatNearest(this.flat, x, y, into)
    return depth
  }
}

/**
 * The no-fit polygons of all pairs of shapes, computed when first asked for, with the clearance between items in
 * them. Only pairs of outlines in different relative orientation are computed; others are turned and mirrored copies:
 * noFit(G·p, G·q) = G·noFit(p, q) for every turn and mirror image G, and noFit(q, p) = −noFit(p, q).
 */
export class NoFitTable {
  private readonly bases = new Map<string, Rings>()
  private readonly rows: (NoFit | undefined)[][] = []
  private readonly grown: Polygon[] = []
  private held = 0

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
  get(fixed: Shape, moving: Shape): NoFit {
    const known = this.rows[fixed.id]?.[moving.id]
    if (known) return known
    const made = new NoFit(this.compute(fixed, moving))
    if (this.held >= MOST_NO_FITS) this.forget()
    this.held++
    this.rows[fixed.id] ??= []
    ;(this.rows[fixed.id] as (NoFit | undefined)[])[moving.id] = made
    return made
  }

  /** Lets go of all that is known, which can be computed again: a long search with many turns must not fill the memory. */
  private forget(): void {
    this.rows.length = 0
    this.bases.clear()
    this.held = 0
  }

  private compute(fixed: Shape, moving: Shape): Rings {
    if (this.table.precedes(moving.outlineId, fixed.outlineId))
      return this.get(moving, fixed).rings.map(seenThroughOrigin)
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
