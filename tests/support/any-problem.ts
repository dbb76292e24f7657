import { type Random, seededRandom } from '../../src/core/base/random.ts'
import { polygonBox, polygonCentroid } from '../../src/core/geometry/polygon.ts'
import type { Point, Polygon } from '../../src/core/geometry/types.ts'
import type { LayPanel, LayPiece, LayProblem, Motif } from '../../src/core/planning/lay-problem.ts'
import { plantedProblem } from '../../src/terminal/bench/planted/planted.ts'
import { layProblem, panel, piece, rectangle } from './lay-problems.ts'

/**
 * A lay problem by chance in which any rule of the format may be in play: planted or made up, roomy, tight or hopeless.
 * The same seed gives the same problem.
 */
export function anyProblem(seed: number): LayProblem {
  const random = seededRandom(seed)
  const base = random() < 0.4 ? plantedProblem(seed, roomOf(random)).problem : madeUp(random)
  const panels = base.panels.map((each) => withPanelRules(each, random))
  const motifs = panels.flatMap(({ motifs = [] }) => motifs)
  const pieces = base.pieces.map((each) => withPieceRules(each, motifs, random))
  return { ...base, clearance: random() < 0.7 ? 0 : between(0.5, 6, random), panels, pieces }
}

function roomOf(random: Random) {
  return random() < 0.5 ? { inset: between(0.01, 3, random), dropped: 0 } : { inset: 6, dropped: 0.2 }
}

function madeUp(random: Random): LayProblem {
  const panels = Array.from({ length: 1 + below(3, random) }, (_, k) =>
    panel(someOutline(between(200, 600, random), random), {
      id: `panel ${k + 1}`,
      surface: random() < 0.25 ? 'one-way' : 'plain',
      faces: random() < 0.25 ? 2 : 1,
    }),
  )
  const pieces = Array.from({ length: 1 + below(4, random) }, (_, k) => {
    const mirror = pick(['none', 'none', 'free', 'pairs'] as const, random)
    return piece(someOutline(between(60, 260, random), random), {
      id: `piece ${k + 1}`,
      mirror,
      count: mirror === 'pairs' ? 2 : 1 + below(2, random),
    })
  })
  return layProblem(panels, pieces)
}

/** A rectangle, a tapered one, a triangle or an L. */
function someOutline(size: number, random: Random): Polygon {
  const [width, height] = [Math.round(size), Math.round(size * between(0.4, 1.4, random))]
  const cut = Math.round(between(0.1, 0.6, random) * width)
  const low = Math.round(between(0.2, 0.8, random) * height)
  const made: readonly Polygon[] = [
    rectangle(width, height),
    [
      [0, 0],
      [width, 0],
      [width - cut / 2, height],
      [cut / 2, height],
    ],
    [
      [0, 0],
      [width, 0],
      [cut, height],
    ],
    [
      [0, 0],
      [width, 0],
      [width, low],
      [cut, low],
      [cut, height],
      [0, height],
    ],
  ]
  const outline = pick(made, random)
  return random() < 0.3 ? [...outline].reverse() : outline
}

function withPanelRules(base: LayPanel, random: Random): LayPanel {
  const cloth = random() < 0.1 ? pick(['main', 'lining'] as const, random) : null
  const stretch =
    random() < 0.5 ? { across: between(0, 80, random), along: between(0, 60, random) } : base.stretch
  const flaws = Array.from({ length: random() < 0.5 ? 0 : 1 + below(3, random) }, () =>
    spotOn(base.outline, random),
  )
  const finished = random() < 0.5 ? [below(base.outline.length, random)] : []
  const finishedDepth = random() < 0.5 ? 0 : between(5, 30, random)
  const up = random() < 0.4 ? { up: pick([0, 90, 200], random) } : {}
  const motifs =
    random() < 0.4 ? [{ id: `motif of ${base.id}`, outline: spotOn(base.outline, random), ...up }] : []
  return { ...base, cloth, stretch, flaws, finished, finishedDepth, motifs }
}

/** A small rectangle that is somewhere on a panel, or hangs over its edge. */
function spotOn(outline: Polygon, random: Random): Polygon {
  const { minX, maxX, minY, maxY } = polygonBox(outline)
  return rectangle(
    between(5, 60, random),
    between(5, 60, random),
    between(minX, maxX, random),
    between(minY, maxY, random),
  )
}

function withPieceRules(base: LayPiece, motifs: readonly Motif[], random: Random): LayPiece {
  const [x, y] = polygonCentroid(base.outline)
  const shown = motifs[below(motifs.length + 1, random)]
  const at: Point = [x + between(-20, 20, random), y + between(-20, 20, random)]
  const needs =
    random() < 0.94 ? base.needs : { across: between(0, 40, random), along: between(0, 40, random) }
  return {
    ...base,
    grain: random() < 0.6 ? base.grain : pick(['along', 'either', 'bias', 'any'] as const, random),
    turns: random() < 0.1 ? [below(360, random), 0] : null,
    tilt: random() < 0.5 ? between(0, 10, random) : base.tilt,
    needs,
    surface: random() < 0.3 ? 'any' : base.surface,
    cloth: random() < 0.05 ? pick(['main', 'lining'] as const, random) : null,
    optional: random() < 0.15,
    ...(random() < 0.1 ? { sit: { edge: below(base.outline.length, random), must: random() < 0.5 } } : {}),
    ...(random() < 0.3 ? { turnAlike: pick(['body', 'sleeves'], random) } : {}),
    ...(shown && random() < 0.2 ? { shows: { motif: shown.id, at, within: pick([0, 2, 40], random) } } : {}),
  }
}

function between(low: number, high: number, random: Random): number {
  return low + random() * (high - low)
}

function below(count: number, random: Random): number {
  return Math.floor(random() * count)
}

function pick<T>(from: readonly T[], random: Random): T {
  return from[below(from.length, random)] as T
}
