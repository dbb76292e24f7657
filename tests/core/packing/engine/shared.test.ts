import { describe, expect, it } from 'vitest'
import { seededRandom } from '../../../../src/core/base/random.ts'
import { polygonMoved } from '../../../../src/core/geometry/index.ts'
import type { Polygon } from '../../../../src/core/geometry/types.ts'
import { EFFORT } from '../../../../src/core/packing/config.ts'
import { createEngine, type Engine, engineOf } from '../../../../src/core/packing/engine/engine.ts'
import type { PackingProblem } from '../../../../src/core/packing/index.ts'
import { layoutPlacements } from '../../../../src/core/packing/search/layout.ts'
import { createModel } from '../../../../src/core/packing/search/model.ts'
import { searchLayout } from '../../../../src/core/packing/search/portfolio.ts'
import { garmentProblems } from '../../../../src/terminal/bench/garment-problems.ts'
import { exactWays, makeItem, makeProblem, rectangle } from '../../../support/packing.ts'

/** The lay after so many looks at the deadline: one long enough for lays by best fit, which make new shapes. */
function placementsWith(engine: Engine, problem: PackingProblem, looks: number) {
  let left = looks
  const deadline = { passed: () => left-- <= 0, left: () => Math.max(0, left) }
  const tilted = () => createModel(problem, engine, 'tilted')
  const model = createModel(problem, engine)
  const layout = searchLayout(model, EFFORT, { random: seededRandom(7), deadline, tilted })
  return layoutPlacements(model, layout)
}

/** Too much for the cloth there is, so that every part of the search has its turn. */
function tight(items: PackingProblem['items'], clearance: number): PackingProblem {
  return { ...makeProblem(rectangle(300, 200), items), clearance }
}

const kite: Polygon = [
  [0, 0],
  [90, 30],
  [60, 110],
  [20, 70],
]
const hook: Polygon = [
  [0, 0],
  [120, 0],
  [120, 40],
  [40, 40],
  [40, 100],
  [0, 100],
]
const anyhow = [
  { turn: 0, mirrored: false, tilt: 180 },
  { turn: 0, mirrored: true, tilt: 180 },
]
const nearly = [{ turn: 0, mirrored: false, tilt: 5 }]

describe('an engine shared with other problems', () => {
  it('gives the lay that an engine of its own gives, whatever was solved before', () => {
    const kites = makeItem('kite', kite, 3, anyhow)
    const hooks = makeItem('hook', hook, 3, exactWays([0, 90], [false, true]))
    const leaning = makeItem('hook', hook, 4, nearly)
    for (const clearance of [0, 3]) {
      const orders = [[kites, hooks], [hooks, kites], [leaning, kites], [hooks]]
      const problems = orders.map((items) => tight(items, clearance))
      const alone = problems.map((problem) => placementsWith(createEngine(clearance), problem, 40))
      // The other way round, so that outlines are numbered otherwise and shapes are known that nobody here asked for.
      const together = [...problems]
        .reverse()
        .map((problem) => placementsWith(engineOf(problem), problem, 40))
      expect(together.reverse()).toEqual(alone)
      expect(alone.every((placements) => placements.length > 0)).toBe(true)
    }
  })

  it('does so over many shop checks, though its tables are begun anew now and then', () => {
    for (const problem of garmentProblems(30)) {
      const moved = { ...problem, items: [...problem.items].reverse().map((item) => ({ ...item })) }
      for (const asked of [moved, problem]) {
        const own = placementsWith(createEngine(asked.clearance), asked, 3)
        expect(placementsWith(engineOf(asked), asked, 3)).toEqual(own)
      }
    }
  })

  it('computes a no-fit polygon once for all problems', () => {
    const outline = polygonMoved(hook, 0.5, 0.25)
    const first = engineOf(tight([makeItem('a', outline, 2, exactWays([0]))], 0.125))
    const second = engineOf(
      tight(
        [
          makeItem(
            'b',
            outline.map(([x, y]) => [x, y] as const),
            2,
            exactWays([0]),
          ),
        ],
        0.125,
      ),
    )
    const shapes = [first, second].map(({ table }) =>
      table.shape(table.outlineId(outline), { turn: 0, mirrored: false }),
    )
    const [a, b] = shapes
    if (!a || !b) throw new Error('no shapes')
    expect(second.noFits.get(b, b)).toBe(first.noFits.get(a, a))
  })

  it('knows no shape that the problem has not asked for itself', () => {
    const first = engineOf(tight([makeItem('a', kite, 1, exactWays([0]))], 0))
    const second = engineOf(tight([makeItem('b', kite, 1, exactWays([0]))], 0))
    const held = { turn: 33, mirrored: true }
    first.table.shape(first.table.outlineId(kite), held)
    expect(second.table.known(second.table.outlineId(kite), held)).toBeUndefined()
    expect(second.table.size).toBe(0)
    expect(first.table.size).toBe(1)
  })
})
