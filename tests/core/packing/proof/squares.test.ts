import { describe, expect, it } from 'vitest'
import { seededRandom } from '../../../../src/core/base/random.ts'
import type { Point, Rings } from '../../../../src/core/geometry/index.ts'
import { sidesOfRow, squareSide } from '../../../../src/core/packing/proof/squares.ts'

describe('the sides of the squares in a row', () => {
  it('are those of each square by itself, however the rings run', () => {
    const random = seededRandom(5)
    const met = { inside: 0, outside: 0, across: 0 }
    for (let k = 0; k < 400; k++) {
      const step = 0.2 + 3 * random()
      const half = step * (0.5 + random())
      const origin = 10 * random()
      const rings: Rings = Array.from({ length: 1 + Math.floor(2 * random()) }, () => aRing(random))
      const y = 30 * random()
      const sides = sidesOfRow(rings, y, half, origin, step, -3, 40)
      const each = Array.from({ length: 44 }, (_, i) => squareSide(rings, origin + (i - 3) * step, y, half))
      expect({ k, sides }).toEqual({ k, sides: each })
      for (const side of sides) met[side]++
    }
    expect(Math.min(...Object.values(met))).toBeGreaterThan(500)
  })
})

/** A star about a middle, counter-clockwise, some of its edges level or upright. */
function aRing(random: () => number): readonly Point[] {
  const corners = 3 + Math.floor(8 * random())
  const whole = random() < 0.5
  return Array.from({ length: corners }, (_, i): Point => {
    const angle = (2 * Math.PI * (i + 0.8 * random())) / corners
    const radius = 4 + 22 * random()
    const [x, y] = [25 + radius * Math.cos(angle), 15 + radius * Math.sin(angle)]
    return whole ? [5 * Math.round(x / 5), 5 * Math.round(y / 5)] : [x, y]
  })
}
