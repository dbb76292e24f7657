import { describe, expect, it } from 'vitest'
import type { LayPiece, LayProblem } from '../../../src/core/planning/lay-problem.ts'
import { readProblem } from '../../../src/readers/problem-file/read-problem.ts'
import { fileName } from '../../../src/ui/state/hand-over.ts'
import { problemText } from '../../../src/ui/state/shared-check.ts'

const piece = (id: string): LayPiece => ({
  id,
  count: 2,
  outline: [
    [0, 0],
    [200.25, 0],
    [100, 300],
  ],
  mirror: 'pairs',
  grain: 'along',
  turns: null,
  tilt: 2,
  needs: { across: 20, along: 0 },
  surface: 'any',
  cloth: null,
  optional: false,
})

const PROBLEM: LayProblem = {
  name: 'inner name',
  clearance: 4,
  seconds: 10,
  panels: [
    {
      id: 'front',
      outline: [
        [0, 0],
        [500, 0],
        [500, 600],
        [0, 600],
      ],
      flaws: [
        [
          [10, 10],
          [60, 10],
          [60, 60],
        ],
      ],
      stretch: { across: 60, along: 30 },
      surface: 'one-way',
      faces: 2,
      cloth: null,
    },
  ],
  pieces: [piece('a1'), piece('b2'), piece('c3')],
}

const NAMES: Readonly<Record<string, string>> = { a1: 'Sleeve', b2: 'Sleeve', c3: ' ' }

describe('a check written to be shared', () => {
  it('is read back as the same problem, with pieces by their names, each its own', () => {
    const read = readProblem(problemText(PROBLEM, (id) => NAMES[id] ?? id, 'Raglan top, 116'))
    expect(read).toEqual({
      ok: true,
      value: {
        ...PROBLEM,
        name: 'Raglan top, 116',
        pieces: [piece('Sleeve'), piece('Sleeve 2'), piece('c3')],
      },
    })
  })

  it.each([
    ['Raglan top, 116', 'raglan-top-116'],
    ['Blúse / «été»', 'bluse-ete'],
    [' … ', 'check'],
  ])('has a file name that every device takes: %s', (title, name) => {
    expect(fileName(title, 'check')).toBe(name)
  })
})
