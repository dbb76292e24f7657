import fc from 'fast-check'
import {
  type Point,
  type Polygon,
  polygonCentroid,
  polygonMoved,
  polygonOriented,
} from '../../src/core/geometry/index.ts'
import type { LayPanel, LayPiece, LayProblem } from '../../src/core/planning/lay-problem.ts'
import { layProblem, panel, piece, rectangle } from './lay-problems.ts'

/** Random panels like those of skirts, with a hem to sit on and a print to show, and pieces that do so. */

const whole = (min: number, max: number) => fc.integer({ min, max })

/** A skirt's panel: hem, side, waist, side; edge 0 is the hem, which may slant a little. */
const skirt = fc
  .record({ hem: whole(300, 700), slant: whole(-20, 20), waist: whole(200, 300), height: whole(200, 500) })
  .map(
    ({ hem, slant, waist, height }): Polygon => [
      [0, 0],
      [hem, slant],
      [(hem + waist) / 2, height],
      [(hem - waist) / 2, height],
    ],
  )

/** A piece like a panel of a skirt: edge 0 is its hem. */
const flared = fc.record({ hem: whole(60, 250), top: whole(40, 200), height: whole(60, 250) }).map(
  ({ hem, top, height }): Polygon => [
    [0, 0],
    [hem, 0],
    [(hem + top) / 2, height],
    [(hem - top) / 2, height],
  ],
)

interface Asked {
  readonly outline: Polygon
  readonly count: number
  readonly mirror: LayPiece['mirror']
  readonly tilt: number
  readonly sit: 'must' | 'wish' | null
  readonly shows: boolean
}

const asked: fc.Arbitrary<Asked> = fc.record({
  outline: flared,
  count: fc.constantFrom(1, 1, 2),
  mirror: fc.constantFrom('none', 'free'),
  tilt: fc.constantFrom(0, 3, 10),
  sit: fc.constantFrom('must', 'must', 'wish', null),
  shows: fc.boolean(),
})

function pieceOf({ outline, sit, shows, ...more }: Asked, k: number): LayPiece {
  return piece(outline, {
    id: `piece ${k}`,
    ...more,
    ...(sit ? { sit: { edge: 0, must: sit === 'must' } } : {}),
    // One piece at most can have the print.
    ...(shows && k === 0 ? { shows: { motif: 'print', at: polygonCentroid(outline), within: 25 } } : {}),
  })
}

/** Some fit, some cannot. */
export const randomSkirts: fc.Arbitrary<LayProblem> = fc
  .record({
    outline: skirt,
    depth: fc.constantFrom(0, 20),
    print: fc.record({ x: whole(120, 400), y: whole(60, 250) }),
    up: fc.constantFrom(null, null, null, null, 0, 180, 4, 90),
    clearance: fc.constantFrom(0, 3),
    pieces: fc.array(asked, { minLength: 1, maxLength: 3 }),
  })
  .map(({ outline, depth, print, up, clearance, pieces }) => {
    const shape = rectangle(30, 20, print.x - 15, print.y - 10)
    const motifs = [{ id: 'print', outline: shape, ...(up === null ? {} : { up }) }]
    const ground: Partial<LayPanel> = { finished: [0], finishedDepth: depth, motifs }
    return layProblem([panel(outline, ground)], pieces.map(pieceOf), clearance)
  })

interface Cut {
  readonly turn: number
  readonly mirrored: boolean
  readonly x: number
  readonly y: number
}

const held: fc.Arbitrary<Cut> = fc.record({
  turn: fc.constantFrom(0, 180, 7, 90),
  mirrored: fc.boolean(),
  x: whole(-500, 500),
  y: whole(-500, 500),
})

/** Undoes a lay: the outline that lies so when it is turned over, turned and moved. */
function unlaid(outline: Polygon, { turn, mirrored, x, y }: Cut): Polygon {
  const turnedBack = polygonOriented(polygonMoved(outline, -x, -y), { turn: -turn, mirrored: false })
  return mirrored ? turnedBack.map(([px, py]): Point => [-px, py]) : turnedBack
}

/** A panel cut from hem to waist into pieces that all sit on the hem, one of them with the print: together they fill it. */
export const cutSkirts: fc.Arbitrary<LayProblem> = fc
  .record({
    outline: skirt,
    cuts: fc.oneof(fc.tuple(whole(25, 75)), fc.tuple(whole(25, 42), whole(58, 75))),
    lies: fc.tuple(held, held, held),
    shown: fc.nat({ max: 2 }),
    off: fc.record({ angle: whole(0, 359), share: whole(0, 100) }),
    within: fc.constantFrom(0, 10),
    hasUp: fc.boolean(),
  })
  .map(({ outline, cuts, lies, shown, off, within, hasUp }) => {
    const shares = [0, ...cuts, 100].map((share) => share / 100)
    const along = ([ax, ay]: Point, [bx, by]: Point, t: number): Point => [
      ax + t * (bx - ax),
      ay + t * (by - ay),
    ]
    const [a, b, c, d] = outline as readonly [Point, Point, Point, Point]
    const strips = shares.slice(1).map((to, k): Polygon => {
      const from = shares[k] as number
      return [along(a, b, from), along(a, b, to), along(d, c, to), along(d, c, from)]
    })
    const withPrint = shown % strips.length
    const [mx, my] = polygonCentroid(strips[withPrint] as Polygon)
    const print = rectangle(8, 8, mx - 4, my - 4)
    const angle = (off.angle * Math.PI) / 180
    const reach = (within * off.share) / 100
    const pieces = strips.map((strip, k): LayPiece => {
      const lie = lies[k] as Cut
      const [at] = unlaid([[mx + reach * Math.cos(angle), my + reach * Math.sin(angle)]], lie)
      return piece(unlaid(strip, lie), {
        id: `strip ${k}`,
        mirror: 'free',
        turns: [lie.turn],
        sit: { edge: 0, must: true },
        ...(k === withPrint ? { shows: { motif: 'print', at: at as Point, within } } : {}),
      })
    })
    const up = hasUp ? { up: (lies[withPrint] as Cut).turn } : {}
    return layProblem(
      [panel(outline, { finished: [0], motifs: [{ id: 'print', outline: print, ...up }] })],
      pieces,
    )
  })
