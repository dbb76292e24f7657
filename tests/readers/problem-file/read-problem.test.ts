import { describe, expect, it } from 'vitest'
import { laySchema, readLay, writeLayFile } from '../../../src/readers/problem-file/lay-schema.ts'
import { readProblem } from '../../../src/readers/problem-file/read-problem.ts'
import { writeProblem } from '../../../src/readers/problem-file/write-problem.ts'

const square = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
]
const panel = { id: 'front', outline: square }
const piece = { id: 'tie', outline: square }
const problem = { format: 'cutworth-problem/1', panels: [panel], pieces: [piece] }

/** Faults as the terminal prints them. */
function faults(source: unknown): string[] {
  const result = readProblem(source)
  return result.ok ? [] : result.faults.map(({ field, message }) => `${field}: ${message}`)
}
const withPanel = (more: object) => faults({ ...problem, panels: [{ ...panel, ...more }] })
const withPiece = (more: object) => faults({ ...problem, pieces: [{ ...piece, ...more }] })

describe('a problem file', () => {
  it('gets every default', () => {
    expect(readProblem(JSON.stringify(problem))).toEqual({
      ok: true,
      value: {
        name: '',
        clearance: 0,
        seconds: 10,
        panels: [{ ...panel, flaws: [], stretch: null, surface: 'plain', faces: 1, cloth: null }],
        pieces: [
          {
            ...piece,
            count: 1,
            mirror: 'none',
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
    })
  })

  it('is read back as it was written', () => {
    const full = readProblem({
      ...problem,
      name: 'all fields',
      clearance: 2,
      seconds: 3,
      panels: [
        {
          ...panel,
          flaws: [square],
          stretch: { across: 60, along: 30 },
          surface: 'one-way',
          faces: 2,
          cloth: 'main',
          finished: [0, 2],
          finishedDepth: 25,
          motifs: [
            { id: 'print', outline: square },
            { id: 'badge', outline: square, up: 180 },
          ],
        },
      ],
      pieces: [
        {
          ...piece,
          count: 2,
          mirror: 'pairs',
          grain: 'any',
          turns: [0, 90],
          tilt: 2,
          needs: { across: 5 },
          surface: 'any',
          cloth: 'main',
          optional: true,
          sit: { edge: 3 },
          shows: { motif: 'print', at: [1, 2], within: 15 },
        },
      ],
    })
    expect(full.ok && readProblem(JSON.parse(JSON.stringify(writeProblem(full.value))))).toEqual(full)
  })

  it('may hold a polygon of either winding, with straight corners', () => {
    expect(withPiece({ outline: [...square].reverse() })).toEqual([])
    expect(withPiece({ outline: [[0, 0], [5, 0], ...square.slice(1)] })).toEqual([])
  })
})

describe('a broken problem file names the field and what would be right', () => {
  it.each<[string, unknown, string | RegExp]>([
    ['no JSON', '{ "format": ', /^document: is not JSON: /],
    ['empty', '', /^document: is not JSON: /],
    ['a list', [], 'document: must be an object'],
    ['another format', { ...problem, format: 'cutworth-problem/2' }, 'format: must be “cutworth-problem/1”'],
    [
      'no format',
      { panels: [panel], pieces: [piece] },
      'format: is missing; it must be “cutworth-problem/1”',
    ],
    ['no panels', { format: problem.format, pieces: [piece] }, 'panels: is missing; it must be a list'],
    ['empty panels', { ...problem, panels: [] }, 'panels: must not be empty'],
    ['empty pieces', { ...problem, pieces: [] }, 'pieces: must not be empty'],
    ['negative clearance', { ...problem, clearance: -1 }, 'clearance: must be at least 0'],
    ['no time', { ...problem, seconds: 0 }, 'seconds: must be more than 0'],
    ['a typing slip', { ...problem, peices: [] }, 'peices: is not known here; remove it'],
    [
      'the same id twice',
      { ...problem, pieces: [piece, { ...piece, id: 'cuff' }, piece] },
      'pieces[2].id: must differ from every other id, and entry 0 is “tie” too',
    ],
    [
      'infinite figures',
      '{"format":"cutworth-problem/1","clearance":1e999}',
      /^clearance: must be a finite number/,
    ],
  ])('%s', (_, source, expected) => {
    const found = faults(source)
    if (typeof expected === 'string') expect(found).toEqual([expected])
    else expect(found.some((line) => expected.test(line))).toBe(true)
  })

  it.each<[string, object, string]>([
    ['wrong type', { outline: 'square' }, 'panels[0].outline: must be a list'],
    [
      'two points',
      { outline: square.slice(0, 2) },
      'panels[0].outline: must have at least 3 points, and has 2',
    ],
    [
      'a point of text',
      { outline: [[0, '0'], ...square.slice(1)] },
      'panels[0].outline[0][1]: must be a finite number',
    ],
    [
      'not a number',
      { outline: [[Number.NaN, 0], ...square.slice(1)] },
      'panels[0].outline[0][0]: must be a finite number',
    ],
    [
      'a broken flaw',
      { flaws: [square, square.slice(0, 2)] },
      'panels[0].flaws[1]: must have at least 3 points, and has 2',
    ],
    ['a third face', { faces: 3 }, 'panels[0].faces: must be 1 or 2'],
    ['unknown surface', { surface: 'fluffy' }, 'panels[0].surface: must be “plain” or “one-way”'],
    [
      'half a stretch',
      { stretch: { across: 60 } },
      'panels[0].stretch.along: is missing; it must be a finite number',
    ],
    ['empty id', { id: '' }, 'panels[0].id: must not be empty'],
  ])('panel with %s', (_, more, expected) => {
    expect(withPanel(more)).toEqual([expected])
  })

  const bowTie = [
    [0, 0],
    [10, 10],
    [10, 0],
    [0, 10],
  ]
  const crossing = [
    [0, 0],
    [4, 0],
    [8, 0],
    [10, 0],
    [10, 10],
    [6, 10],
    [2, 10],
    [6.5, -5],
    [0, 10],
  ]
  it.each<[string, object, string]>([
    ['an outline that crosses itself', { outline: bowTie }, 'pieces[0].outline: edges 0 and 2 cross'],
    [
      'an outline that crosses itself farther on',
      { outline: crossing },
      'pieces[0].outline: edges 1 and 6 cross',
    ],
    [
      'a closed ring',
      { outline: [...square, square[0]] },
      'pieces[0].outline: repeats its first point at the end; leave the last one out',
    ],
    [
      'a point twice',
      { outline: [square[0], ...square] },
      'pieces[0].outline: points 0 and 1 are the same; leave one out',
    ],
    [
      'a line',
      {
        outline: [
          [0, 0],
          [5, 0],
          [10, 0],
        ],
      },
      'pieces[0].outline: has no area',
    ],
    [
      'a spike',
      {
        outline: [
          [0, 0],
          [10, 0],
          [10, 20],
          [10, 10],
          [0, 10],
        ],
      },
      'pieces[0].outline: edges 1 and 2 run back over each other',
    ],
    [
      'far too large a figure',
      {
        outline: [
          [0, 0],
          [1e6, 0],
          [0, 10],
        ],
      },
      'pieces[0].outline: point 1 is more than 100 m away; lengths are millimetres',
    ],
    [
      'too many points',
      { outline: Array.from({ length: 2001 }, (_, i) => [100 * Math.cos(i / 400), 100 * Math.sin(i / 400)]) },
      'pieces[0].outline: must have at most 2000 points, and has 2001',
    ],
    ['an odd pair', { mirror: 'pairs', count: 3 }, 'pieces[0].count: must be even, as “mirror” is “pairs”'],
    ['no copies', { count: 0 }, 'pieces[0].count: must be at least 1'],
    ['half a copy', { count: 1.5 }, 'pieces[0].count: must be a whole number'],
    [
      'unknown grain',
      { grain: 'diagonal' },
      'pieces[0].grain: must be “along” or “either” or “bias” or “any”',
    ],
    ['unknown mirror', { mirror: 'yes' }, 'pieces[0].mirror: must be “none” or “pairs” or “free”'],
    ['a tilt of 11', { tilt: 11 }, 'pieces[0].tilt: must be at most 10'],
    ['a tilt below 0', { tilt: -1 }, 'pieces[0].tilt: must be at least 0'],
    ['no turns', { turns: [] }, 'pieces[0].turns: must not be empty'],
    ['negative needs', { needs: { across: -5 } }, 'pieces[0].needs.across: must be at least 0'],
    ['a typing slip', { outlne: square }, 'pieces[0].outlne: is not known here; remove it'],
    [
      'an edge to sit with that it has not',
      { sit: { edge: 4 } },
      'pieces[0].sit.edge: must be at most 3, for edge 3 is the outline’s last',
    ],
    ['half an edge to sit with', { sit: { edge: 0.5 } }, 'pieces[0].sit.edge: must be a whole number'],
    ['no edge to sit with', { sit: {} }, 'pieces[0].sit.edge: is missing; it must be a finite number'],
    [
      'a motif that no panel has',
      { shows: { motif: 'rose', at: [0, 0], within: 5 } },
      'pieces[0].shows.motif: must be the id of a motif of some panel, and there is none',
    ],
    ['text for yes', { optional: 'yes' }, 'pieces[0].optional: must be true or false'],
  ])('piece with %s', (_, more, expected) => {
    expect(withPiece(more)).toEqual([expected])
  })

  const motif = { id: 'rose', outline: square }
  it.each<[string, object, string]>([
    [
      'a finished edge it has not',
      { finished: [0, 4] },
      'panels[0].finished[1]: must be at most 3, for edge 3 is the outline’s last',
    ],
    ['a finished edge below 0', { finished: [-1] }, 'panels[0].finished[0]: must be at least 0'],
    ['a finished edge twice', { finished: [1, 1] }, 'panels[0].finished[1]: is there already'],
    ['a negative depth', { finishedDepth: -1 }, 'panels[0].finishedDepth: must be at least 0'],
    [
      'a motif whose up is no number',
      { motifs: [{ ...motif, up: 'up' }] },
      'panels[0].motifs[0].up: must be a finite number',
    ],
    [
      'two motifs of one id',
      { motifs: [motif, motif] },
      'panels[0].motifs[1].id: must differ from the id of every other motif',
    ],
    [
      'a motif without area',
      { motifs: [{ ...motif, outline: square.slice(2) }] },
      'panels[0].motifs[0].outline: must have at least 3 points, and has 2',
    ],
  ])('panel with %s', (_, more, expected) => {
    expect(withPanel(more)).toEqual([expected])
  })

  it('tells every fault at once', () => {
    expect(
      faults({
        ...problem,
        clearance: -1,
        pieces: [
          { ...piece, count: 0 },
          { ...piece, id: 'b', tilt: 20 },
        ],
      }),
    ).toHaveLength(3)
  })
})

describe('a lay file', () => {
  const lay = {
    verdict: 'fits' as const,
    placements: [{ piece: 'tie', copy: 1, panel: 'front', turn: 0, mirrored: false, x: 0, y: 0 }],
    reason: null,
    leftOut: [],
    spare: 0.5,
    spareIs: 'found' as const,
    elapsedMs: 41,
  }

  it('is what its schema says, and is read back as it was written', () => {
    const file = writeLayFile(lay)
    expect(laySchema.safeParse(file).success).toBe(true)
    expect(readLay(JSON.stringify(file))).toEqual({ ok: true, value: lay })
  })

  it('is refused with the field named', () => {
    expect(readLay({ ...writeLayFile(lay), verdict: 'perhaps' })).toEqual({
      ok: false,
      faults: [{ field: 'verdict', message: 'must be “fits” or “cannot” or “not-found”' }],
    })
  })
})
