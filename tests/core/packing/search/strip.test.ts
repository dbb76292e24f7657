import { describe, expect, it } from 'vitest'
import { packStrip } from '../../../../src/core/packing/strip.ts'
import { exactWays, layFaults, makeItem, rectangle, square } from '../../../support/packing.ts'

/** A deadline that passes after so many looks at it, so that no test depends on the time. */
function looks(count: number) {
  let looked = 0
  const clock = () => looked++
  return { clock, deadline: { passed: () => looked++ >= count, left: () => Math.max(0, count - looked) } }
}

const TRIANGLE = [
  [0, 0],
  [150, 0],
  [0, 100],
] as const

describe('strip', () => {
  const items = [
    makeItem(
      'half bodice',
      [
        [0, 0],
        [200, 0],
        [180, 150],
        [210, 220],
        [60, 300],
        [0, 260],
      ],
      4,
      exactWays([0, 180]),
    ),
    makeItem('cuff', rectangle(150, 50), 4, exactWays([0, 90])),
  ]

  it('packs all copies without overlap, ever shorter', () => {
    const lengths: number[] = []
    const answer = packStrip(
      { height: 500, clearance: 0, items },
      { seed: 1, ...looks(40_000), onProgress: ({ length }) => lengths.push(length) },
    )
    const outline = rectangle(answer.length + 0.005, 500)
    const problem = { clearance: 0, regions: [{ id: 'strip', outline, forbidden: [] }], items }
    expect(answer.placements).toHaveLength(8)
    expect(layFaults(problem, answer.placements)).toEqual([])
    expect(lengths).toEqual([...lengths].sort((a, b) => b - a))
    expect(lengths.length).toBeGreaterThan(1)
  })

  it('comes to the least length of right triangles that pair up to rectangles', () => {
    const halves = [makeItem('half', TRIANGLE, 8, exactWays([0, 180]))]
    const answer = packStrip({ height: 100, clearance: 0, items: halves }, { seed: 1, ...looks(40_000) })
    expect(answer.length).toBeGreaterThan(599.9)
    expect(answer.length).toBeLessThan(600.1)
  })

  it('is not led astray by strips too short for one of the items', () => {
    const items = [
      makeItem('half', TRIANGLE, 8, exactWays([0, 180])),
      makeItem('strap', rectangle(600, 10), 1, exactWays([0])),
    ]
    const answer = packStrip({ height: 112, clearance: 0, items }, { seed: 1, ...looks(40_000) })
    expect(answer.length).toBeGreaterThan(599.99)
    expect(answer.length).toBeLessThan(601)
  })

  it('comes to the exact length when squares fill the strip', () => {
    const squares = [makeItem('s', square(100), 12, exactWays([0]))]
    const answer = packStrip({ height: 300, clearance: 0, items: squares }, { seed: 1, ...looks(500) })
    expect(answer.length).toBeCloseTo(400, 1)
  })
})
