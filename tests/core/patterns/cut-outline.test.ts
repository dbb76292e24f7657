import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ringsArea, ringsDifference, ringsOffset } from '../../../src/core/geometry/clipper.ts'
import { convexHull } from '../../../src/core/geometry/convex.ts'
import { polygonArea, polygonBox, polygonPerimeter } from '../../../src/core/geometry/polygon.ts'
import { polygonIsSimple } from '../../../src/core/geometry/simple.ts'
import type { Point, Polygon } from '../../../src/core/geometry/types.ts'
import { cutOutline } from '../../../src/core/patterns/cut-outline.ts'
import type { OutlinePoint, PieceShape } from '../../../src/core/patterns/pattern.ts'
import { seamLine } from '../../../src/core/patterns/seam-line.ts'

function outline(points: readonly OutlinePoint[], onFold = false): PieceShape {
  return { form: 'outline', points, onFold }
}

function straight(polygon: Polygon, allowance: number): PieceShape {
  return outline(polygon.map((at) => ({ at, allowance })))
}

/** Area of `inner` that lies outside `outer`. */
function outside(inner: Polygon, outer: Polygon): number {
  return ringsArea(ringsDifference([inner], [outer]))
}

const coordinate = fc.integer({ min: 0, max: 600 })
const convex: fc.Arbitrary<Polygon> = fc
  .array(fc.tuple(coordinate, coordinate), { minLength: 3, maxLength: 12 })
  .map((points) => convexHull(points))
  .filter((polygon) => polygon.length >= 3 && polygonArea(polygon) > 1000 && sharpest(polygon) > Math.PI / 4)

/** Smallest inner angle, radians. */
function sharpest(polygon: Polygon): number {
  return Math.min(...turns(polygon).map((turn) => Math.PI - turn))
}

function turns(polygon: Polygon): number[] {
  return polygon.map((point, k) => {
    const [ax, ay] = polygon.at(k - 1) as Point
    const [bx, by] = polygon[(k + 1) % polygon.length] as Point
    const [x, y] = point
    const cross = (x - ax) * (by - y) - (y - ay) * (bx - x)
    return Math.atan2(cross, (x - ax) * (bx - x) + (y - ay) * (by - y))
  })
}

/** Star-shaped about the origin, hence simple: any radii at growing angles. */
const star: fc.Arbitrary<Polygon> = fc
  .array(fc.integer({ min: 30, max: 300 }), { minLength: 5, maxLength: 14 })
  .map((radii) =>
    radii.map((r, k): Point => {
      const angle = (2 * Math.PI * k) / radii.length
      return [r * Math.cos(angle), r * Math.sin(angle)]
    }),
  )

describe('cutOutline of straight edges', () => {
  it('adds the allowance on both sides of a box, exactly', () => {
    expect(polygonBox(cutOutline({ form: 'box', width: 400, height: 300, allowance: 15 }))).toEqual({
      minX: -15,
      minY: -15,
      maxX: 415,
      maxY: 315,
    })
  })

  it('moves each edge out by its own allowance, and the corners to where the cut lines meet', () => {
    const shape = outline([
      { at: [0, 0], allowance: 25 },
      { at: [200, 0], allowance: 10 },
      { at: [200, 100], allowance: 6 },
      { at: [0, 100], allowance: 0 },
    ])
    expect(cutOutline(shape)).toEqual([
      [0, -25],
      [210, -25],
      [210, 106],
      [0, 106],
    ])
  })

  it('keeps the cut lines at inward corners', () => {
    const shape = outline([
      { at: [0, 0], allowance: 10 },
      { at: [100, 0], allowance: 10 },
      { at: [100, 50], allowance: 5 },
      { at: [50, 50], allowance: 20 },
      { at: [50, 100], allowance: 10 },
      { at: [0, 100], allowance: 10 },
    ])
    expect(cutOutline(shape)).toEqual([
      [-10, -10],
      [110, -10],
      [110, 55],
      [70, 55],
      [70, 110],
      [-10, 110],
    ])
  })

  it('steps out squarely where a hem goes straight on as a narrower seam', () => {
    const shape = outline([
      { at: [0, 0], allowance: 20 },
      { at: [60, 0], allowance: 6 },
      { at: [100, 0], allowance: 6 },
      { at: [100, 50], allowance: 6 },
      { at: [0, 50], allowance: 6 },
    ])
    const cut = cutOutline(shape)
    expect(cut).toContainEqual([60, -20])
    expect(cut).toContainEqual([60, -6])
  })

  it('never lets a corner eat into the wider allowance', () => {
    // A turn of 10°: the narrow cut line carried on would take a slice off the hem.
    const along = [Math.cos(Math.PI / 18), Math.sin(Math.PI / 18)] as const
    const end: Point = [100 + 80 * along[0], 80 * along[1]]
    const cut = cutOutline(
      outline([
        { at: [0, 0], allowance: 6 },
        { at: [100, 0], allowance: 30 },
        { at: end, allowance: 6 },
        { at: [100, 200], allowance: 6 },
      ]),
    )
    const hem: Polygon = [
      [100, 0],
      [100 + 30 * along[1], -30 * along[0]],
      [end[0] + 30 * along[1], end[1] - 30 * along[0]],
      end,
    ]
    expect(outside(hem, cut)).toBeLessThan(0.01)
  })

  it('squares off a very sharp corner four allowances out', () => {
    const cut = cutOutline(
      straight(
        [
          [0, 0],
          [400, 20],
          [0, 40],
        ],
        10,
      ),
    )
    expect(polygonBox(cut).maxX).toBeCloseTo(440, 6)
    expect(cut).toHaveLength(4)
  })

  it('joins the allowances on both sides of a slit narrower than they are', () => {
    const slit: Polygon = [
      [0, 0],
      [100, 0],
      [100, 100],
      [54, 100],
      [54, 30],
      [46, 30],
      [46, 100],
      [0, 100],
    ]
    const cut = cutOutline(straight(slit, 10))
    expect(polygonIsSimple(cut)).toBe(true)
    expect(polygonArea(cut)).toBeCloseTo(120 * 120, 2)
  })

  it('is the mitre offset of the polygon library for convex polygons with one allowance', () => {
    fc.assert(
      fc.property(convex, fc.integer({ min: 1, max: 40 }), (polygon, allowance) => {
        const cut = cutOutline(straight(polygon, allowance))
        const expected = ringsArea(ringsOffset([polygon], allowance, 'mitre'))
        expect(Math.abs(polygonArea(cut) - expected)).toBeLessThan(0.01 * polygonPerimeter(polygon))
      }),
      { numRuns: 200 },
    )
  })

  it('has the area A + P d + d² Σ tan(turn / 2) for convex polygons', () => {
    fc.assert(
      fc.property(convex, fc.integer({ min: 0, max: 40 }), (polygon, allowance) => {
        const mitres = turns(polygon).reduce((sum, turn) => sum + Math.tan(turn / 2), 0)
        const expected =
          polygonArea(polygon) + polygonPerimeter(polygon) * allowance + allowance ** 2 * mitres
        expect(polygonArea(cutOutline(straight(polygon, allowance)))).toBeCloseTo(expected, 4)
      }),
      { numRuns: 200 },
    )
  })

  it('keeps a wide allowance whole where it sticks out past the short edge at an inward corner', () => {
    // The 27 mm beside the long edge start 0.4 mm outside the 28 mm beside the short one.
    const cut = cutOutline(
      outline([
        { at: [0, 30], allowance: 0 },
        { at: [-26, 15], allowance: 28 },
        { at: [-30, 0], allowance: 27 },
        { at: [-104, -60], allowance: 0 },
        { at: [0, -30], allowance: 0 },
        { at: [30, 0], allowance: 0 },
      ]),
    )
    const length = Math.hypot(74, 60)
    const out: Point = [(-60 / length) * 27, (74 / length) * 27]
    const band: Polygon = [
      [-30, 0],
      [-30 + out[0], out[1]],
      [-104 + out[0], -60 + out[1]],
      [-104, -60],
    ]
    expect(outside(band, cut)).toBeLessThan(0.05)
  })

  it('is simple and covers every edge with its allowance, whatever the shape', () => {
    fc.assert(
      fc.property(
        star,
        fc.array(fc.integer({ min: 0, max: 35 }), { minLength: 14, maxLength: 14 }),
        (polygon, widths) => {
          const ring = polygon.map((at, k) => ({ at, allowance: widths[k] as number }))
          const cut = cutOutline(outline(ring))
          expect(polygonIsSimple(cut)).toBe(true)
          expect(polygonArea(cut)).toBeGreaterThan(0)
          expect(outside(polygon, cut)).toBeLessThan(0.1)
          for (const [k, { at, allowance }] of ring.entries()) {
            const [bx, by] = polygon[(k + 1) % polygon.length] as Point
            const length = Math.hypot(bx - at[0], by - at[1])
            const out: Point = [((by - at[1]) / length) * allowance, ((at[0] - bx) / length) * allowance]
            const band: Polygon = [at, [at[0] + out[0], at[1] + out[1]], [bx + out[0], by + out[1]], [bx, by]]
            expect(outside(band, cut)).toBeLessThan(0.1)
          }
        },
      ),
      { numRuns: 200 },
    )
  })

  it('is simple and covers the piece, whatever is folded', () => {
    const edge = fc.record({
      allowance: fc.integer({ min: 0, max: 60 }),
      use: fc.constantFrom(undefined, undefined, 'hem' as const, 'casing' as const),
    })
    fc.assert(
      fc.property(star, fc.array(edge, { minLength: 14, maxLength: 14 }), (polygon, edges) => {
        const ring = polygon.map((at, k): OutlinePoint => {
          const { allowance, use } = edges[k] as (typeof edges)[number]
          return { at, allowance, ...(use && { use }) }
        })
        const cut = cutOutline(outline(ring))
        expect(polygonIsSimple(cut)).toBe(true)
        expect(outside(polygon, cut)).toBeLessThan(0.1)
      }),
      { numRuns: 300 },
    )
  })

  it('does not depend on the way the seam line winds', () => {
    fc.assert(
      fc.property(star, fc.integer({ min: 0, max: 30 }), (polygon, allowance) => {
        const one = cutOutline(straight(polygon, allowance))
        const other = cutOutline(straight([...polygon].reverse(), allowance))
        expect(polygonArea(other)).toBeCloseTo(polygonArea(one), 1)
      }),
    )
  })
})

/** Control points of a quarter circle of radius 1 by cubic Bézier: 4/3 (√2 − 1), which strays outward by 0.027 %. */
const KAPPA = (4 / 3) * (Math.SQRT2 - 1)

function discByCurves(radius: number, allowance: number): PieceShape {
  const k = KAPPA * radius
  const r = radius
  return outline([
    {
      at: [r, 0],
      curve: [
        [r, k],
        [k, r],
      ],
      allowance,
    },
    {
      at: [0, r],
      curve: [
        [-k, r],
        [-r, k],
      ],
      allowance,
    },
    {
      at: [-r, 0],
      curve: [
        [-r, -k],
        [-k, -r],
      ],
      allowance,
    },
    {
      at: [0, -r],
      curve: [
        [k, -r],
        [r, -k],
      ],
      allowance,
    },
  ])
}

describe('cutOutline of curves', () => {
  it('stands off the true outline by 0 to 0.2 mm on outward curves', () => {
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 500 }), fc.integer({ min: 0, max: 30 }), (radius, allowance) => {
        const cut = cutOutline(discByCurves(radius, allowance))
        const strays = radius * 0.00028
        const nearest = cut.map((point, k) =>
          distanceToSegment([0, 0], point, cut[(k + 1) % cut.length] as Point),
        )
        const farthest = cut.map(([x, y]) => Math.hypot(x, y))
        expect(Math.min(...nearest)).toBeGreaterThanOrEqual(radius + allowance - 1e-6)
        expect(Math.max(...farthest)).toBeLessThanOrEqual(radius + allowance + strays + 0.2 + 1e-6)
      }),
    )
  })

  it('leaves at least the allowance, at most 0.2 mm more, inside a curve cut inward', () => {
    const k = KAPPA * 80
    // An armhole: the quarter disc round (200, 200) is missing from a square.
    const shape = outline([
      { at: [0, 0], allowance: 10 },
      { at: [200, 0], allowance: 10 },
      {
        at: [200, 120],
        curve: [
          [200 - k, 120],
          [120, 200 - k],
        ],
        allowance: 10,
      },
      { at: [120, 200], allowance: 10 },
      { at: [0, 200], allowance: 10 },
    ])
    const cut = cutOutline(shape)
    const onArc = cut.filter(([x, y]) => x > 120 && x < 195 && y > 120 && y < 195)
    expect(onArc.length).toBeGreaterThan(4)
    const midpoints = onArc
      .slice(1)
      .map(
        (point, i): Point => [
          (point[0] + (onArc[i] as Point)[0]) / 2,
          (point[1] + (onArc[i] as Point)[1]) / 2,
        ],
      )
    for (const [x, y] of [...onArc, ...midpoints]) {
      const fromCentre = Math.hypot(200 - x, 200 - y)
      expect(fromCentre).toBeLessThanOrEqual(70.03)
      expect(fromCentre).toBeGreaterThanOrEqual(69.8)
    }
  })

  it('survives an inward curve tighter than its allowance', () => {
    const k = KAPPA * 8
    const cut = cutOutline(
      outline([
        { at: [0, 0], allowance: 15 },
        { at: [100, 0], allowance: 15 },
        { at: [100, 60], allowance: 15 },
        {
          at: [58, 60],
          curve: [
            [58, 60 - k],
            [50 + k, 52],
          ],
          allowance: 15,
        },
        {
          at: [50, 52],
          curve: [
            [50 - k, 52],
            [42, 60 - k],
          ],
          allowance: 15,
        },
        { at: [42, 60], allowance: 15 },
        { at: [0, 60], allowance: 15 },
      ]),
    )
    expect(polygonIsSimple(cut)).toBe(true)
    expect(polygonArea(cut)).toBeCloseTo(130 * 90, 1)
  })

  it('takes few chords for what it promises', () => {
    expect(cutOutline(discByCurves(100, 10)).length).toBeLessThanOrEqual(80)
  })
})

function distanceToSegment(p: Point, a: Point, b: Point): number {
  const dx = b[0] - a[0]
  const dy = b[1] - a[1]
  const t = Math.max(0, Math.min(1, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy)))
  return Math.hypot(a[0] + t * dx - p[0], a[1] + t * dy - p[1])
}

describe('cutOutline of simple shapes', () => {
  it('covers a disc and its allowance, by 0 to 0.2 mm, with exact width and height', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 1500 }),
        fc.integer({ min: 0, max: 30 }),
        (diameter, allowance) => {
          const cut = cutOutline({ form: 'circle', diameter, allowance })
          const radius = diameter / 2
          const centre: Point = [radius, radius]
          const sides = cut.map((point, k) =>
            distanceToSegment(centre, point, cut[(k + 1) % cut.length] as Point),
          )
          const corners = cut.map(([x, y]) => Math.hypot(x - radius, y - radius))
          expect(Math.min(...sides)).toBeGreaterThanOrEqual(radius + allowance - 1e-9)
          expect(Math.max(...corners)).toBeLessThanOrEqual(radius + allowance + 0.2 + 1e-9)
          const box = polygonBox(cut)
          expect(box.maxX - box.minX).toBeCloseTo(diameter + 2 * allowance, 9)
          expect(box.maxY - box.minY).toBeCloseTo(diameter + 2 * allowance, 9)
        },
      ),
    )
  })

  it('covers a half-moon and its allowance, whether half a disc or half an ellipse', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 20, max: 900 }),
        fc.integer({ min: 20, max: 600 }),
        fc.integer({ min: 0, max: 30 }),
        (width, height, allowance) => {
          const cut = cutOutline({ form: 'half-moon', width, height, allowance })
          const box = polygonBox(cut)
          expect(box.minX).toBeCloseTo(-allowance, 9)
          expect(box.maxX).toBeCloseTo(width + allowance, 9)
          expect(box.minY).toBeCloseTo(-allowance, 9)
          expect(box.maxY).toBeCloseTo(height + allowance, 9)
          expect(polygonIsSimple(cut)).toBe(true)
          const grown = grownHalfEllipse(width / 2, height, allowance)
          expect(outside(grown, cut)).toBeLessThan(0.01)
          expect(polygonArea(cut) - polygonArea(grown)).toBeLessThan(0.2 * polygonPerimeter(cut))
        },
      ),
    )
  })

  it.each([
    ['trapezoid', { form: 'trapezoid', top: 200, bottom: 300, height: 100, allowance: 0 }, 25_000],
    [
      'trapezoid, wider above',
      { form: 'trapezoid', top: 300, bottom: 200, height: 100, allowance: 0 },
      25_000,
    ],
    ['triangle', { form: 'triangle', width: 200, height: 150, allowance: 0 }, 15_000],
  ] as const)('a %s without allowance is the finished shape', (_, shape, area) => {
    expect(polygonArea(cutOutline(shape))).toBeCloseTo(area, 9)
    expect(polygonBox(cutOutline(shape))).toMatchObject({ minX: 0, minY: 0 })
  })

  it('cuts a folded, gathered strip by formula', () => {
    // 1,200 × 2 + 2 × 10 and 2 × 80 + 2 × 12.
    const cut = cutOutline({
      form: 'strip',
      edge: 1200,
      ratio: 2,
      height: 80,
      folded: true,
      endAllowance: 10,
      sideAllowance: 12,
    })
    expect(polygonBox(cut)).toEqual({ minX: -10, minY: -12, maxX: 2410, maxY: 172 })
  })
})

/** A dense polygon inscribed in the half ellipse grown by `allowance`, with its square corners at the flat edge. */
function grownHalfEllipse(a: number, b: number, allowance: number): Polygon {
  const arc = Array.from({ length: 721 }, (_, k): Point => {
    const t = (Math.PI * k) / 720
    const nx = b * Math.cos(t)
    const ny = a * Math.sin(t)
    const n = Math.hypot(nx, ny)
    return [a + a * Math.cos(t) + (allowance * nx) / n, b * Math.sin(t) + (allowance * ny) / n]
  })
  return [[-allowance, -allowance], [2 * a + allowance, -allowance], ...arc]
}

describe('cutOutline on the fold', () => {
  const half: OutlinePoint[] = [
    { at: [0, 0], allowance: 20 },
    { at: [250, 0], allowance: 10 },
    {
      at: [240, 400],
      curve: [
        [180, 410],
        [200, 560],
      ],
      allowance: 10,
    },
    { at: [190, 640], allowance: 10 },
    {
      at: [90, 670],
      curve: [
        [80, 600],
        [40, 590],
      ],
      allowance: 6,
    },
    { at: [0, 590], allowance: 99 },
  ]

  it('is symmetric over the fold and ignores the allowance given there', () => {
    const cut = cutOutline(outline(half, true))
    const box = polygonBox(cut)
    expect(box.minX).toBeCloseTo(-box.maxX, 6)
    for (const [x, y] of cut) {
      const twin = cut.some(([u, v]) => Math.abs(u + x) < 1e-6 && Math.abs(v - y) < 1e-6)
      expect(twin, `(${x}, ${y})`).toBe(true)
    }
    expect(cut.every(([x, y]) => x !== 0 || y < -19 || y > 580)).toBe(true)
  })

  it('has twice the finished area of its half', () => {
    const whole = polygonArea(seamLine(outline(half, true)))
    expect(whole).toBeCloseTo(2 * polygonArea(seamLine(outline(half))), 1)
  })

  it('unfolds over a slanting fold too, doubling the area', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 359 }), (degrees) => {
        const angle = (degrees * Math.PI) / 180
        const turn = ([x, y]: Point): Point => [
          x * Math.cos(angle) - y * Math.sin(angle),
          x * Math.sin(angle) + y * Math.cos(angle),
        ]
        const turned = half.map((point) => ({
          ...point,
          at: turn(point.at),
          ...(point.curve && { curve: [turn(point.curve[0]), turn(point.curve[1])] as const }),
        }))
        expect(polygonArea(cutOutline(outline(turned, true)))).toBeCloseTo(
          polygonArea(cutOutline(outline(half, true))),
          3,
        )
      }),
    )
  })
})

describe('seamLine', () => {
  it('lies inside the cut outline', () => {
    fc.assert(
      fc.property(star, fc.integer({ min: 0, max: 30 }), (polygon, allowance) => {
        const shape = straight(polygon, allowance)
        expect(outside(seamLine(shape), cutOutline(shape))).toBeLessThan(0.1)
      }),
    )
    for (const shape of [
      discByCurves(90, 6),
      { form: 'circle', diameter: 300, allowance: 5 },
      { form: 'half-moon', width: 300, height: 90, allowance: 5 },
      { form: 'strip', edge: 300, ratio: 0.85, height: 30, folded: true, endAllowance: 6, sideAllowance: 6 },
    ] as const) {
      expect(outside(seamLine(shape), cutOutline(shape))).toBeLessThan(0.1)
    }
  })
})
