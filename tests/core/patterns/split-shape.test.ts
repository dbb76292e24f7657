import { describe, expect, it } from 'vitest'
import { allDrafts } from '../../../demo-data/drafting/all.ts'
import { polygonArea, polygonBox } from '../../../src/core/geometry/index.ts'
import type { Polygon } from '../../../src/core/geometry/types.ts'
import { cutOutline } from '../../../src/core/patterns/cut-outline.ts'
import type { OutlineShape, PieceShape } from '../../../src/core/patterns/pattern.ts'
import { shapeFaults } from '../../../src/core/patterns/shape-faults.ts'
import { type JoinLine, type SplitShape, splitShape } from '../../../src/core/patterns/split-shape.ts'
import { rectangle } from '../../support/lay-problems.ts'
import { overlapArea, toJsts, uncoveredArea } from '../../support/planar.ts'

const BOX: PieceShape = { form: 'box', width: 100, height: 200, allowance: 10 }

function corners({ points }: OutlineShape): Polygon {
  return points.map(({ at }) => at)
}

/** Length of the part of a closed outline that runs on the line, found by walking it. */
function edgeOn(outline: Polygon, { way, at }: JoinLine): number {
  const axis = way === 'across' ? 1 : 0
  return outline.reduce((length, [x, y], k) => {
    const next = outline[(k + 1) % outline.length]!
    const onLine = [[x, y] as const, next].every((point) => Math.abs(point[axis] - at) < 0.001)
    return onLine ? length + Math.hypot(next[0] - x, next[1] - y) : length
  }, 0)
}

describe('splitShape', () => {
  it('gives each part its allowance beyond the line', () => {
    const split = splitShape(BOX, { way: 'across', at: 80 }, 10) as SplitShape
    expect(polygonBox(corners(split.first))).toEqual({ minX: -10, maxX: 110, minY: -10, maxY: 90 })
    expect(polygonBox(corners(split.second))).toEqual({ minX: -10, maxX: 110, minY: 70, maxY: 210 })
    expect(split.seam).toBe(120)
  })

  it('cuts along the grain', () => {
    const split = splitShape(BOX, { way: 'along', at: 50 }, 6) as SplitShape
    expect(polygonBox(corners(split.first))).toEqual({ minX: -10, maxX: 56, minY: -10, maxY: 210 })
    expect(polygonBox(corners(split.second))).toEqual({ minX: 44, maxX: 110, minY: -10, maxY: 210 })
    expect(split.seam).toBe(220)
  })

  it.each<[string, PieceShape, JoinLine]>([
    ['beside the piece', BOX, { way: 'across', at: 300 }],
    ['so near the end that only a sliver comes off', BOX, { way: 'across', at: 0 }],
    ['through two legs', legs(), { way: 'across', at: 20 }],
  ])('finds no join %s', (_, shape, line) => {
    expect(splitShape(shape, line, 10)).toBeNull()
  })
})

/** A piece whose lower part is two legs. */
function legs(): PieceShape {
  const points = [
    [0, 0],
    [40, 0],
    [40, 100],
    [60, 100],
    [60, 0],
    [100, 0],
    [100, 200],
    [0, 200],
  ] as const
  return { form: 'outline', onFold: false, points: points.map((at) => ({ at, allowance: 0 })) }
}

const JOINABLE = allDrafts().flatMap((pattern) =>
  pattern.pieces.flatMap((piece) => {
    const ways = (['across', 'along'] as const).filter((way) => [way, 'either'].includes(piece.joins ?? ''))
    return ways.map((way) => [`${pattern.id} ${piece.id}`, way, piece] as const)
  }),
)

/** The polygon library keeps to a ten-thousandth of a millimetre: over a metre of outline, half a square millimetre. */
const ROUNDING = 0.5

describe('shipped pieces cut in two, against the JTS library', () => {
  it.each(JOINABLE)('%s, %s', (_, way, piece) => {
    for (const shape of [Object.values(piece.shapes)[0]!, Object.values(piece.shapes).at(-1)!]) {
      const whole = cutOutline(shape)
      const { minX, minY, maxX, maxY } = polygonBox(whole)
      const [low, high] = way === 'across' ? [minY, maxY] : [minX, maxX]
      // The bib has its neck in the middle; a third of the way up it is whole.
      const line: JoinLine = {
        way,
        at: low + (high - low) * (piece.id === 'bib-back' && way === 'across' ? 1 / 3 : 1 / 2),
      }
      const bare = splitShape(shape, line, 0) as SplitShape
      const [first, second] = [corners(bare.first), corners(bare.second)]
      // Without allowance the parts tile the piece and share one edge.
      expect(polygonArea(first) + polygonArea(second)).toBeCloseTo(polygonArea(whole), 0)
      expect(overlapArea(toJsts(first), toJsts(second))).toBeLessThan(ROUNDING)
      expect(uncoveredArea(toJsts(first), toJsts(whole))).toBeLessThan(ROUNDING)
      expect(uncoveredArea(toJsts(second), toJsts(whole))).toBeLessThan(ROUNDING)
      expect(edgeOn(first, line)).toBeCloseTo(edgeOn(second, line), 3)
      expect(bare.seam).toBeCloseTo(edgeOn(first, line), 6)
      // With one, each part is all of the piece on its side of the line moved over, and no more.
      const sewn = splitShape(shape, line, 10) as SplitShape
      expect(shapeFaults(sewn.first)).toEqual([])
      expect(shapeFaults(sewn.second)).toEqual([])
      const side =
        way === 'across'
          ? rectangle(maxX - minX, line.at + 10 - minY, minX, minY)
          : rectangle(line.at + 10 - minX, maxY - minY, minX, minY)
      // Beyond the gap at the bib's nape there is a sliver of the other tab, which is sewn to nothing.
      const stray = piece.id === 'bib-back' && way === 'along' ? 40 * 10 : ROUNDING
      const wanted = overlapArea(toJsts(whole), toJsts(side))
      expect(wanted - polygonArea(corners(sewn.first))).toBeLessThan(stray)
      expect(uncoveredArea(toJsts(corners(sewn.first)), toJsts(side))).toBeLessThan(ROUNDING)
      expect(uncoveredArea(toJsts(first), toJsts(corners(sewn.first)))).toBeLessThan(ROUNDING)
      expect(uncoveredArea(toJsts(corners(sewn.first)), toJsts(whole))).toBeLessThan(ROUNDING)
    }
  })
})
