import type { Deg, Mm } from '../../base/units.ts'
import { polygonArea, polygonBox } from '../../geometry/polygon.ts'
import { polygonOriented } from '../../geometry/transform.ts'
import type { Box, Orientation, Polygon } from '../../geometry/types.ts'
import { shrunk } from './shrunk.ts'

/** An outline held one way: what the search moves about. Its reference point is the origin of its item's outline. */
export interface Shape extends Orientation {
  /** Index in the table's `shapes`. */
  readonly id: number
  /** Index of the outline it comes from; equal outlines share one. */
  readonly outlineId: number
  /** Drawn in by the table's inset, counter-clockwise. */
  readonly outline: Polygon
  readonly box: Box
  readonly area: number
}

/** Angle in [0, 360), to the millionth of a degree: what counts as the same turn. */
export function turnNormalised(turn: Deg): Deg {
  const rounded = Math.round((((turn % 360) + 360) % 360) * 1e6) / 1e6
  return rounded === 360 ? 0 : rounded
}

/**
 * All outlines and the ways they are held, numbered as they are asked for. Numbers only tell apart: what is computed of
 * outlines and shapes never depends on them, so that several problems may share a table.
 */
export class ShapeTable {
  readonly shapes: Shape[] = []
  /** Outlines as given but drawn in by `inset`, unturned. */
  readonly outlines: Polygon[] = []
  private readonly outlineKeys: string[] = []
  private readonly outlineIds = new Map<string, number>()
  private readonly shapeIds = new Map<string, Shape>()

  constructor(readonly inset: Mm) {}

  /** The number of an outline; equal outlines (same points in the same order) have the same. */
  outlineId(outline: Polygon): number {
    const key = outlineKey(outline)
    let id = this.outlineIds.get(key)
    if (id === undefined) {
      id = this.outlines.length
      this.outlines.push(shrunk(outline, this.inset))
      this.outlineKeys.push(key)
      this.outlineIds.set(key, id)
    }
    return id
  }

  /** True if the first of two outlines comes first in an order that holds in every table. */
  precedes(outlineId: number, otherId: number): boolean {
    return (this.outlineKeys[outlineId] as string) < (this.outlineKeys[otherId] as string)
  }

  /** The outline held that way. */
  shape(outlineId: number, held: Orientation): Shape {
    const known = this.shapeIds.get(shapeKey(outlineId, held))
    if (known) return known
    const { mirrored } = held
    const orientation = { turn: turnNormalised(held.turn), mirrored }
    const oriented = polygonOriented(this.outlines[outlineId] as Polygon, orientation)
    const outline = mirrored ? [...oriented].reverse() : oriented
    const shape: Shape = {
      ...orientation,
      id: this.shapes.length,
      outlineId,
      outline,
      box: polygonBox(outline),
      area: polygonArea(outline),
    }
    this.shapes.push(shape)
    this.shapeIds.set(shapeKey(outlineId, orientation), shape)
    return shape
  }
}

function shapeKey(outlineId: number, { turn, mirrored }: Orientation): string {
  return `${outlineId} ${turnNormalised(turn)} ${mirrored}`
}

/** What one problem has asked of a table. It knows of nothing that others have asked, so that no answer depends on them. */
export class AskedShapes {
  private readonly asked = new Map<string, Shape>()

  constructor(private readonly table: ShapeTable) {}

  /** How many shapes this problem has asked for. */
  get size(): number {
    return this.asked.size
  }

  outlineId(outline: Polygon): number {
    return this.table.outlineId(outline)
  }

  /** As `ShapeTable.outlines` has it. */
  outline(outlineId: number): Polygon {
    return this.table.outlines[outlineId] as Polygon
  }

  /** The outline held that way, if this problem has asked for it before. */
  known(outlineId: number, held: Orientation): Shape | undefined {
    return this.asked.get(shapeKey(outlineId, held))
  }

  /** The outline held that way. */
  shape(outlineId: number, held: Orientation): Shape {
    const key = shapeKey(outlineId, held)
    let shape = this.asked.get(key)
    if (!shape) {
      shape = this.table.shape(outlineId, held)
      this.asked.set(key, shape)
    }
    return shape
  }
}

const outlineKeys = new WeakMap<Polygon, string>()

/** The same text for equal outlines; written once for one that comes again and again. */
function outlineKey(outline: Polygon): string {
  let key = outlineKeys.get(outline)
  if (key === undefined) {
    key = outline.join(' ')
    outlineKeys.set(outline, key)
  }
  return key
}

/** True if two shapes cover the same set but for a translation: a rectangle turned by 180°, say. */
export function sameUpToTranslation(a: Shape, b: Shape, tolerance: Mm): boolean {
  const n = a.outline.length
  if (n !== b.outline.length || Math.abs(a.area - b.area) > tolerance * tolerance + a.area * 1e-9)
    return false
  const dx = b.box.minX - a.box.minX
  const dy = b.box.minY - a.box.minY
  const near = (i: number, j: number): boolean => {
    const p = a.outline[i % n] as readonly [number, number]
    const q = b.outline[j % n] as readonly [number, number]
    return Math.abs(p[0] + dx - q[0]) <= tolerance && Math.abs(p[1] + dy - q[1]) <= tolerance
  }
  for (let shift = 0; shift < n; shift++) {
    let i = 0
    while (i < n && near(i, i + shift)) i++
    if (i === n) return true
  }
  return false
}
