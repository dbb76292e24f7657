import type { Mm } from '../../src/core/base/units.ts'
import type { Point } from '../../src/core/geometry/types.ts'
import type { OutlineShape } from '../../src/core/patterns/pattern.ts'
import { arc, HALF_WAY, line, notched, onCircle, onFold } from './draw.ts'

/** A ring sector, symmetrical about its fold, narrow or wide end up. */
export interface Sector {
  /** Radius of the shorter arc. */
  readonly inner: Mm
  readonly outer: Mm
  /** Whole angle, radians, less than a straight angle. */
  readonly angle: number
}

/** The sector whose arcs have these lengths, `height` apart: a cone laid flat. */
export function sectorOf(short: Mm, long: Mm, height: Mm): Sector {
  const angle = (long - short) / height
  return { inner: short / angle, outer: long / angle, angle }
}

/** Allowances of the shorter arc, the longer arc and the straight ends. */
export interface SectorAllowances {
  readonly inner: Mm
  readonly outer: Mm
  readonly ends: Mm
  /** What the longer arc's is for, if it is no seam. */
  readonly outerUse?: 'hem'
}

/** Half the sector on the fold x = 0, its longer arc below (a skirt gore, a hat's side or brim). With a name, its ends are marked half-way. */
export function sectorShape(
  { inner, outer, angle }: Sector,
  allowances: SectorAllowances,
  endName?: string,
): OutlineShape {
  const centre: Point = [0, outer]
  const down = -Math.PI / 2
  const side = down + angle / 2
  const end = line(onCircle(centre, inner, side), allowances.ends)
  return onFold(onCircle(centre, outer, down), [
    {
      ...arc(centre, outer, down, side, allowances.outer),
      ...(allowances.outerUse && { use: allowances.outerUse }),
    },
    endName ? notched(end, endName, 1, HALF_WAY) : end,
    arc(centre, inner, side, down, allowances.inner),
  ])
}
