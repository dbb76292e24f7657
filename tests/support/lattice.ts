import fc from 'fast-check'
import type { Point, Polygon } from '../../src/core/geometry/index.ts'
import { type ProblemFile, servesAt } from './lay-checker.ts'

/**
 * Small problems on squared paper, and their exact answers by exhaustion.
 *
 * Pieces, panels and flaws are made of whole squares and turn by quarters only. Such a problem has a lay exactly
 * if it has one on the squares: rounding every position down to whole squares keeps any two squares of pieces,
 * panels' edges and flaws apart that were apart along x or along y, since whole numbers pass through the floor.
 */

type Cell = readonly [number, number]

/** The side of a square, mm: no whole number, so that nothing is exact by luck. */
export const SQUARE = 12.5

/** Outlines in squares, each simple. */
const SHAPES: readonly Polygon[] = [
  box(1, 1),
  box(2, 1),
  box(1, 3),
  box(2, 2),
  box(2, 3),
  [
    [0, 0],
    [2, 0],
    [2, 1],
    [1, 1],
    [1, 2],
    [0, 2],
  ],
  [
    [0, 0],
    [2, 0],
    [2, 1],
    [1, 1],
    [1, 3],
    [0, 3],
  ],
  [
    [0, 0],
    [3, 0],
    [3, 1],
    [2, 1],
    [2, 2],
    [1, 2],
    [1, 1],
    [0, 1],
  ],
  [
    [0, 0],
    [2, 0],
    [2, 1],
    [3, 1],
    [3, 2],
    [1, 2],
    [1, 1],
    [0, 1],
  ],
  [
    [0, 0],
    [3, 0],
    [3, 2],
    [2, 2],
    [2, 1],
    [1, 1],
    [1, 2],
    [0, 2],
  ],
]

const PANELS: readonly Polygon[] = [
  box(3, 2),
  box(3, 3),
  box(4, 3),
  box(5, 2),
  box(4, 4),
  [
    [0, 0],
    [4, 0],
    [4, 2],
    [2, 2],
    [2, 4],
    [0, 4],
  ],
  [
    [0, 0],
    [5, 0],
    [5, 3],
    [3, 3],
    [3, 2],
    [2, 2],
    [2, 3],
    [0, 3],
  ],
]

function box(width: number, height: number): Polygon {
  return [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ]
}

const scaled = (polygon: Polygon, dx = 0, dy = 0): [number, number][] =>
  polygon.map(([x, y]) => [SQUARE * (x + dx), SQUARE * (y + dy)])

const cloth = fc.constantFrom(undefined, undefined, 'main', 'main', 'main', 'lining')
const stretch = fc.constantFrom(20, 30, 40)
const need = fc.constantFrom(0, 0, 0, 0, 30)

const panels = fc.record(
  {
    outline: fc.constantFrom(...PANELS).map((polygon) => scaled(polygon)),
    flaws: fc.array(
      fc
        .record({
          x: fc.integer({ min: 0, max: 3 }),
          y: fc.integer({ min: 0, max: 3 }),
          w: fc.integer({ min: 1, max: 2 }),
        })
        .map(({ x, y, w }) => scaled(box(w, 1), x, y)),
      { maxLength: 2 },
    ),
    surface: fc.constantFrom('plain', 'plain', 'one-way'),
    faces: fc.constantFrom(1, 1, 2),
    stretch: fc.record({ across: stretch, along: stretch }),
    cloth: fc.constantFrom('main', 'main', 'main', 'lining'),
  },
  { requiredKeys: ['outline'] },
)

const pieces = fc
  .record(
    {
      outline: fc.constantFrom(...SHAPES).map((polygon) => scaled(polygon)),
      count: fc.integer({ min: 1, max: 3 }),
      mirror: fc.constantFrom('none', 'none', 'pairs', 'free'),
      grain: fc.constantFrom('along', 'along', 'either'),
      turns: fc.subarray([0, 90, 180, 270], { minLength: 1 }),
      needs: fc.record({ across: need, along: need }),
      surface: fc.constant('any'),
      turnAlike: fc.constantFrom('sides', 'sides', 'sleeves'),
      cloth,
      optional: fc.boolean(),
    },
    { requiredKeys: ['outline', 'count', 'mirror', 'grain'] },
  )
  .map(({ cloth: role, ...piece }) => ({
    ...piece,
    ...(role === undefined ? {} : { cloth: role }),
    count: piece.mirror === 'pairs' ? 2 : piece.count,
  }))

/** Problem files on squared paper: one or two panels, two to four kinds of pieces. */
export const latticeProblems: fc.Arbitrary<ProblemFile> = fc
  .record({
    panels: fc.array(panels, { minLength: 1, maxLength: 2 }),
    pieces: fc.array(pieces, { minLength: 1, maxLength: 4 }),
  })
  .map((problem) => ({
    format: 'cutworth-problem/1',
    panels: problem.panels.map((panel, i) => ({ ...panel, id: `panel ${i}` })),
    pieces: problem.pieces.map((piece, i) => ({ ...piece, id: `piece ${i}` })),
  }))

/** The squares that a polygon of squares covers. */
function cellsOf(polygon: Polygon): Cell[] {
  const points = polygon.map(([x, y]): Point => [Math.round(x / SQUARE), Math.round(y / SQUARE)])
  const xs = points.map(([x]) => x)
  const ys = points.map(([, y]) => y)
  const cells: Cell[] = []
  for (let x = Math.min(...xs); x < Math.max(...xs); x++)
    for (let y = Math.min(...ys); y < Math.max(...ys); y++)
      if (holds(points, x + 0.5, y + 0.5)) cells.push([x, y])
  return cells
}

/** Even–odd along a ray to the right; every side is upright or level. */
function holds(points: readonly Point[], x: number, y: number): boolean {
  const crossed = points.filter(([ax, ay], i) => {
    const [bx, by] = points[(i + 1) % points.length] as Point
    return ax === bx && ax > x && Math.min(ay, by) < y && y < Math.max(ay, by)
  })
  return crossed.length % 2 === 1
}

function turnedCells(cells: readonly Cell[], turn: number, mirrored: boolean): Cell[] {
  return cells.map(([x, y]): Cell => {
    // The middle of the square, doubled, is turned; half of it minus one is the square again.
    let [mx, my] = [2 * x + 1, 2 * y + 1]
    if (mirrored) mx = -mx
    for (let k = 0; k < turn / 90; k++) [mx, my] = [-my, mx]
    return [(mx - 1) / 2, (my - 1) / 2]
  })
}

/** The sets of squares, as keys, that one copy may cover. */
function placesOf(
  problem: ProblemFile,
  piece: ProblemFile['pieces'][number],
  mirroredOnOneFace: readonly boolean[],
  held: Held,
): string[][] {
  const cells = cellsOf(piece.outline)
  return problem.panels.flatMap((panel, p) => {
    const free = new Set(cellsOf(panel.outline).map((cell) => `${p}:${cell}`))
    for (const flaw of panel.flaws ?? []) for (const cell of cellsOf(flaw)) free.delete(`${p}:${cell}`)
    const sides = panel.faces === 2 ? [false, true] : mirroredOnOneFace
    return sides.flatMap((mirrored) =>
      [0, 90, 180, 270]
        .filter((turn) => servesAt(piece, panel, turn) && isHeld(held, piece, panel, turn))
        .flatMap((turn) => shiftsWithin(turnedCells(cells, turn, mirrored), p, free)),
    )
  })
}

/** The one turn of each group of pieces that turn alike. */
type Held = Readonly<Record<string, number>>

function isHeld(held: Held, { turnAlike }: Json, { surface }: Json, turn: number): boolean {
  const at = held[turnAlike as string]
  return at === undefined || (surface === 'one-way' ? turn === at : turn % 180 === at % 180)
}

type Json = Readonly<Record<string, unknown>>

/** Every choice of a turn for each group: head or foot up is one where there is no pile. */
function holdings({ panels, pieces }: ProblemFile): Held[] {
  const needed = pieces.filter(({ optional }) => !optional)
  const groups = new Set(needed.flatMap(({ turnAlike }) => (turnAlike as string | undefined) ?? []))
  const turns = panels.some(({ surface }) => surface === 'one-way') ? [0, 90, 180, 270] : [0, 90]
  return [...groups].reduce<Held[]>(
    (all, group) => all.flatMap((held) => turns.map((turn) => ({ ...held, [group]: turn }))),
    [{}],
  )
}

const REACH = 8

function shiftsWithin(cells: readonly Cell[], p: number, free: ReadonlySet<string>): string[][] {
  const places: string[][] = []
  for (let dx = -REACH; dx <= REACH; dx++)
    for (let dy = -REACH; dy <= REACH; dy++) {
      const keys = cells.map(([x, y]) => `${p}:${x + dx},${y + dy}`)
      if (keys.every((key) => free.has(key))) places.push(keys)
    }
  return places
}

/** True if all needed copies have a place, by trying everything: each turn that pieces which turn alike may have in common. */
export function latticeFits(problem: ProblemFile): boolean {
  return holdings(problem).some((held) => fitsHeld(problem, held))
}

/** The same with these turns. Equal copies, which can change places, are tried in one order only. */
function fitsHeld(problem: ProblemFile, held: Held): boolean {
  const copies = problem.pieces
    .filter(({ optional }) => !optional)
    .flatMap((piece) => {
      const sides = sidesOf(piece.mirror as string | undefined, piece.count ?? 1)
      const bySide = new Map(sides.map((side) => [side.join(), placesOf(problem, piece, side, held)]))
      return sides.map((side) => bySide.get(side.join()) as string[][])
    })
    .sort((a, b) => a.length - b.length)
  if (copies.some((places) => places.length === 0)) return false
  const squares = new Set(copies.flat(2))
  if (copies.reduce((sum, places) => sum + (places[0] as string[]).length, 0) > squares.size) return false
  const used = new Set<string>()
  const place = (k: number, from: number): boolean => {
    if (k === copies.length) return true
    const places = copies[k] as string[][]
    for (let at = from; at < places.length; at++) {
      const keys = places[at] as string[]
      if (keys.some((key) => used.has(key))) continue
      for (const key of keys) used.add(key)
      if (place(k + 1, copies[k + 1] === places ? at + 1 : 0)) return true
      for (const key of keys) used.delete(key)
    }
    return false
  }
  return place(0, 0)
}

/** For each copy, whether it may lie turned over on cloth with one face. */
function sidesOf(mirror: string | undefined, count: number): boolean[][] {
  return Array.from({ length: count }, (_, k) => {
    if (mirror === 'free') return [false, true]
    return [mirror === 'pairs' && k >= count / 2]
  })
}
