import { describe, expect, it } from 'vitest'
import { polygonBox } from '../../../src/core/geometry/index.ts'
import type { Polygon } from '../../../src/core/geometry/types.ts'
import type { CheckAnswer } from '../../../src/core/planning/check.ts'
import { layView } from '../../../src/ui/state/lay-view.ts'

/** A panel of 100 × 200 with one flag of 10 × 30 at its lower left corner, and another left out. */
function answer(heads: CheckAnswer['heads']): CheckAnswer {
  const rectangle = (x: number, y: number, w: number, h: number) =>
    [
      [x, y],
      [x + w, y],
      [x + w, y + h],
      [x, y + h],
    ] as const
  const up = heads === 'up' ? 1 : -1
  return {
    heads,
    problem: {
      name: '',
      clearance: 0,
      seconds: 1,
      panels: [
        {
          id: 'front',
          // With heads down the problem holds the panel turned by 180°.
          outline: up === 1 ? rectangle(0, 0, 100, 200) : rectangle(-100, -200, 100, 200),
          flaws: [],
          stretch: null,
          surface: 'one-way',
          faces: 1,
          cloth: null,
          finished: [up === 1 ? 0 : 2],
          motifs: [
            { id: 'print', outline: up === 1 ? rectangle(20, 50, 10, 10) : rectangle(-30, -60, 10, 10) },
          ],
        },
      ],
      pieces: [
        {
          id: 'flag',
          count: 2,
          outline: rectangle(0, 0, 10, 30),
          mirror: 'free',
          grain: 'along',
          turns: null,
          tilt: 0,
          needs: { across: 0, along: 0 },
          surface: 'as-panel',
          cloth: null,
          optional: false,
        },
      ],
    },
    lay: {
      verdict: 'not-found',
      placements: [
        {
          piece: 'flag',
          copy: 1,
          panel: 'front',
          turn: 0,
          mirrored: true,
          x: up === 1 ? 10 : 0,
          y: up === 1 ? 0 : -30,
        },
      ],
      reason: null,
      leftOut: ['flag#2'],
      spare: null,
      spareIs: null,
      elapsedMs: 1,
    },
  }
}

function expectBox(outline: Polygon, width: number, height: number): void {
  const { minX, minY, maxX, maxY } = polygonBox(outline)
  const close = [0, 0, width, height].map((value) => expect.closeTo(value))
  expect([minX, minY, maxX, maxY]).toEqual(close)
}

describe.each(['up', 'down'] as const)('a lay with heads %s', (heads) => {
  it('is drawn on the panel as worn, with the flag at its lower left', () => {
    const { panels } = layView(answer(heads))
    const [panel] = panels
    expectBox(panel?.outline ?? [], 100, 200)
    const [flag] = panel?.pieces ?? []
    expectBox(flag?.outline ?? [], 10, 30)
    expect(flag).toMatchObject({ copy: 1, of: 2, turnedOver: true, head: heads === 'up' ? 0 : 180 })
  })

  it('has its kept hem at the bottom, and its print where it is on the garment', () => {
    const [panel] = layView(answer(heads)).panels
    const [hem, print] = [panel?.kept.hems[0] ?? [], panel?.kept.prints[0] ?? []]
    for (const [, y] of hem) expect(y).toBeCloseTo(0)
    const { minX, maxX, minY, maxY } = polygonBox(print)
    expect([minX, maxX, minY, maxY]).toEqual([20, 30, 50, 60].map((value) => expect.closeTo(value)))
  })

  it('shows what is left out as the pattern draws it', () => {
    expect(layView(answer(heads)).leftOut).toMatchObject([{ piece: 'flag', copy: 2, of: 2, head: 0 }])
  })
})
