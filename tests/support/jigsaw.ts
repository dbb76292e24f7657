import fc from 'fast-check'
import type { Point, Polygon, Way } from '../../src/core/geometry/index.ts'
import type { PackingProblem } from '../../src/core/packing/problem.ts'

/** A packing problem made by cutting a region into strips along zigzag lines: nothing to spare, and its one known solution. */
export interface Jigsaw {
  readonly problem: PackingProblem
}

const SIDE = 300

/** Jigsaws of 2 to 5 strips, each strip turned by an angle of its own and allowed to turn back, exactly, nearly or anyhow. */
export const jigsaws: fc.Arbitrary<Jigsaw> = fc
  .record({
    strips: fc.integer({ min: 2, max: 5 }),
    bends: fc.integer({ min: 0, max: 3 }),
    jitter: fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 30, maxLength: 30 }),
    quarter: fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 5, maxLength: 5 }),
    freedom: fc.constantFrom('exact', 'oblique', 'tilt', 'any'),
    flaw: fc.boolean(),
    regions: fc.integer({ min: 1, max: 2 }),
  })
  .map(({ strips, bends, jitter, quarter, freedom, flaw, regions }) => {
    const lines = Array.from({ length: strips + 1 }, (_, k) => zigzag(k, strips, bends, jitter))
    const pieces = lines
      .slice(1)
      .map((right, k): Polygon => [...(lines[k] as Polygon), ...[...right].reverse()])
    const square: Polygon = [
      [0, 0],
      [SIDE, 0],
      [SIDE, SIDE],
      [0, SIDE],
    ]
    const taken = flaw ? pieces.slice(1) : pieces
    const items = taken.map((piece, k) => {
      const turn = 90 * (quarter[k] as number) + (freedom === 'exact' ? 0 : 7 * (k + 1))
      const way: Way = {
        turn: (360 - turn) % 360,
        mirrored: false,
        tilt: { exact: 0, oblique: 0, tilt: 4, any: 180 }[freedom] as number,
      }
      return {
        id: `strip ${k}`,
        copies: regions,
        outline: turned(piece, turn),
        optional: false,
        ways: Array.from({ length: regions }, () => [way]),
      }
    })
    const region = { id: 'square', outline: square, forbidden: flaw ? [pieces[0] as Polygon] : [] }
    return { problem: { clearance: 0, regions: Array.from({ length: regions }, () => region), items } }
  })

function zigzag(k: number, strips: number, bends: number, jitter: readonly number[]): Polygon {
  const x = (SIDE * k) / strips
  const straight = k === 0 || k === strips
  const points = straight ? 0 : bends
  return Array.from({ length: points + 2 }, (_, i): Point => {
    const shake = straight ? 0 : (0.35 * SIDE * (jitter[k * 5 + i] as number)) / strips
    return [x + shake, SIDE - (SIDE * i) / (points + 1)]
  })
}

function turned(polygon: Polygon, degrees: number): Polygon {
  const angle = (degrees * Math.PI) / 180
  return polygon.map(
    ([x, y]): Point => [x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)],
  )
}
