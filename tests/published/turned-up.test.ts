import { describe, expect, it } from 'vitest'
import { allDrafts } from '../../demo-data/drafting/all.ts'
import type { Point, Polygon } from '../../src/core/geometry/types.ts'
import { cutOutline } from '../../src/core/patterns/cut-outline.ts'
import type { OutlinePoint, PieceShape } from '../../src/core/patterns/pattern.ts'
import { seamRing } from '../../src/core/patterns/unfold.ts'
import { overlap, toJsts, uncoveredArea } from '../support/planar.ts'

/**
 * Common practice: an allowance that is folded back is cut as the mirror image of what lies under it, or it is narrower than
 * that (or wider) and pulls. So folded over its line it must lie on the piece edge on edge. The reference is JSTS.
 */
const DEMO_FOLDS = allDrafts().flatMap((pattern) =>
  pattern.pieces.flatMap((piece) =>
    Object.entries(piece.shapes).flatMap(([size, shape]) =>
      foldsOf(shape).map((fold) => [`${pattern.id} ${piece.id} ${size}`, cutOutline(shape), fold] as const),
    ),
  ),
)

interface Fold {
  readonly from: Point
  readonly to: Point
  readonly depth: number
}

/** Straight edges that are folded and lie between two that are not. */
function foldsOf(shape: PieceShape): readonly Fold[] {
  if (shape.form !== 'outline') return []
  const ring = seamRing(shape)
  const at = (k: number) => ring[(k + ring.length) % ring.length] as OutlinePoint
  return ring.flatMap(({ at: from, use, curve, allowance }, k) =>
    use && !curve && !at(k - 1).use && !at(k + 1).use ? [{ from, to: at(k + 1).at, depth: allowance }] : [],
  )
}

/** A frame with the fold along +x and the piece above it. */
function seenFrom({ from, to }: Fold, outline: Polygon): Polygon {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
  return outline.map(([x, y]): Point => {
    const [dx, dy] = [x - from[0], y - from[1]]
    return [dx * ux + dy * uy, dy * ux - dx * uy]
  })
}

function band(low: number, high: number): Polygon {
  return [
    [-5000, low],
    [5000, low],
    [5000, high],
    [-5000, high],
  ]
}

describe('what is folded up lies on the piece edge on edge', () => {
  it('has something to fold in the demo patterns', () => {
    expect(DEMO_FOLDS.length).toBeGreaterThan(50)
  })

  it.each(DEMO_FOLDS)('%s', (_, outline, fold) => {
    const seen = seenFrom(fold, outline)
    const turned = seen.map(([x, y]): Point => [x, -y])
    const folded = overlap(toJsts(turned), toJsts(band(0, fold.depth + 1)))
    const under = overlap(toJsts(seen), toJsts(band(0, fold.depth)))
    expect(folded.getArea()).toBeGreaterThan(fold.depth * 30)
    // A hundredth of a millimetre along both sides.
    expect(uncoveredArea(folded, under)).toBeLessThan(0.01 * 2 * fold.depth)
    expect(uncoveredArea(under, folded)).toBeLessThan(0.01 * 2 * fold.depth)
  })
})

/** A skirt of 200 mm at its finished hem, 10 mm wider on each side every 100 mm down, or narrower. */
const flared = (wider: number): PieceShape => ({
  form: 'outline',
  onFold: false,
  points: [
    { at: [0, 0], allowance: 50, use: 'hem' },
    { at: [200, 0], allowance: 0 },
    { at: [200 - wider, 100], allowance: 0 },
    { at: [wider, 100], allowance: 0 },
  ],
})

describe('the raw edge of a hem 50 mm deep', () => {
  it('is as wide as the skirt 50 mm above the fold: 190 mm where it flares to 200', () => {
    const low = cutOutline(flared(10)).filter(([, y]) => y < -49)
    expect(low.map(([x]) => x).sort((a, b) => a - b)).toEqual([5, 195])
  })

  it('is 210 mm where the sleeve narrows to 200', () => {
    const low = cutOutline(flared(-10)).filter(([, y]) => y < -49)
    expect(low.map(([x]) => x).sort((a, b) => a - b)).toEqual([-5, 205])
  })
})
