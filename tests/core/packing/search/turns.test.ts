import { describe, expect, it } from 'vitest'
import { polygonOriented } from '../../../../src/core/geometry/transform.ts'
import type { Polygon } from '../../../../src/core/geometry/types.ts'
import { orientationsOf, turnsAgainst } from '../../../../src/core/packing/search/turns.ts'

const triangle: Polygon = [
  [0, 0],
  [200, 0],
  [70, 120],
]
const clockwise = [...triangle].reverse()

const nearest = (turns: readonly number[], to: number) =>
  Math.min(...turns.map((turn) => Math.abs(turn - to)))

describe('turns tried', () => {
  it('bring an item turned over and drawn clockwise into a hole of its own shape', () => {
    const hole = polygonOriented(triangle, { turn: 33, mirrored: true })
    const way = { turn: 0, tilt: 180, mirrored: true }
    const turns = orientationsOf([way], clockwise, hole, 'exact').map(({ turn }) => turn)
    expect(nearest(turns, 33)).toBeLessThan(1e-6)
  })

  it('bring an item with a range of turns into a hole of its own shape, and stay in the range', () => {
    const hole = polygonOriented(triangle, { turn: 183.9, mirrored: false })
    const way = { turn: 180, tilt: 5, mirrored: false }
    const turns = orientationsOf([way], triangle, hole, 'tilted').map(({ turn }) => turn)
    expect(nearest(turns, 183.9)).toBeLessThan(1e-6)
    expect(turns.every((turn) => turn >= 175 && turn <= 185)).toBe(true)
  })

  it('lay an edge against one of an item that lies at a slant, where the range allows it', () => {
    const other = polygonOriented(triangle, { turn: 182.5, mirrored: false })
    const away = turnsAgainst({ turn: 0, tilt: 3, mirrored: false }, triangle, other)
    expect(nearest(away, 2.5)).toBeLessThan(1e-6)
    expect(turnsAgainst({ turn: 0, tilt: 2, mirrored: false }, triangle, other)).toEqual([])
    expect(turnsAgainst({ turn: 0, tilt: 0, mirrored: false }, triangle, other)).toEqual([])
  })
})
