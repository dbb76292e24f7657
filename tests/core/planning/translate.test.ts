import { describe, expect, it } from 'vitest'
import { translateCopy, translatePlacement, translateProblem } from '../../../src/core/planning/translate.ts'
import { layProblem, panel, piece, rectangle } from '../../support/lay-problems.ts'

const cloth = rectangle(500, 500)
const shape = rectangle(100, 50)
const front = panel(cloth, { id: 'front' })

describe('a lay problem as a packing problem', () => {
  it('turns pairs into two halves, plain and turned over', () => {
    const { packing, sources } = translateProblem(
      layProblem([front], [piece(shape, { id: 'sleeve', count: 4, mirror: 'pairs', turns: [0] })]),
    )
    expect(packing.items.map(({ copies, ways }) => ({ copies, ways }))).toEqual([
      { copies: 2, ways: [[{ turn: 0, mirrored: false, tilt: 0 }]] },
      { copies: 2, ways: [[{ turn: 0, mirrored: true, tilt: 0 }]] },
    ])
    expect(sources.map(({ firstCopy }) => firstCopy)).toEqual([1, 3])
  })

  it('keeps pairs together where both faces serve', () => {
    const { packing } = translateProblem(
      layProblem([{ ...front, faces: 2 }], [piece(shape, { count: 4, mirror: 'pairs', turns: [0] })]),
    )
    expect(packing.items).toHaveLength(1)
    expect(packing.items[0]).toMatchObject({ copies: 4 })
    expect(packing.items[0]?.ways[0]?.map(({ mirrored }) => mirrored)).toEqual([false, true])
  })

  it('lets the halves of a pair lie either way up on the panel that has two faces', () => {
    const back = panel(cloth, { id: 'back', faces: 2 })
    const { packing } = translateProblem(
      layProblem([front, back], [piece(shape, { count: 2, mirror: 'pairs', turns: [0] })]),
    )
    expect(packing.items.map(({ ways }) => ways.map((list) => list.map(({ mirrored }) => mirrored)))).toEqual(
      [
        [[false], [false, true]],
        [[true], [false, true]],
      ],
    )
  })

  it('drops panels that serve nothing, and brings answers back under the right names', () => {
    const lining = panel(cloth, { id: 'lining', cloth: 'lining' })
    const translation = translateProblem(
      layProblem(
        [lining, { ...front, cloth: 'main' }],
        [
          piece(shape, { id: 'tie', cloth: 'main' }),
          piece(shape, { id: 'sleeve', cloth: 'main', count: 2, mirror: 'pairs' }),
        ],
      ),
    )
    expect(translation.packing.regions.map(({ id }) => id)).toEqual(['front'])
    const placement = { item: 2, copy: 0, region: 0, turn: -90, mirrored: true, x: 1, y: 2 }
    expect(translatePlacement(translation, placement)).toEqual({
      piece: 'sleeve',
      copy: 2,
      panel: 'front',
      turn: 270,
      mirrored: true,
      x: 1,
      y: 2,
    })
    expect(translateCopy(translation, { item: 1, copy: 0 })).toBe('sleeve#1')
  })
})
