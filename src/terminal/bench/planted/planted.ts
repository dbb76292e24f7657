import { type Random, seededRandom, shuffle } from '../../../core/base/random.ts'
import type { Faces, Grain, MirrorRule, Surface } from '../../../core/base/terms.ts'
import type { Deg, Mm } from '../../../core/base/units.ts'
import type { KindId } from '../../../core/garments/index.ts'
import { panelsOf } from '../../../core/garments/panels-of.ts'
import { polygonCentroid, polygonCounterClockwise } from '../../../core/geometry/polygon.ts'
import { polygonMoved, polygonOriented } from '../../../core/geometry/transform.ts'
import type { Point, Polygon } from '../../../core/geometry/types.ts'
import type { Lay, LayPlacement } from '../../../core/planning/lay.ts'
import type { LayPanel, LayPiece, LayProblem } from '../../../core/planning/lay-problem.ts'
import { plausibleGarment } from '../plausible-garment.ts'
import { cutApart, type Part, pulledIn, rounding } from './cut-apart.ts'

/** How much room a planted problem leaves. */
export interface Room {
  /** How far every edge of every piece is moved inward. */
  readonly inset: Mm
  /** Share of the pieces dropped; at least one if it is above 0. */
  readonly dropped: number
}

/** A problem that has a lay, and that lay. */
export interface Planted {
  readonly problem: LayProblem
  readonly lay: Lay
}

const KINDS: readonly KindId[] = ['t-shirt', 'button-shirt', 'trousers', 'dress']
const LEAST_PIECES = 4
const MOST_PIECES = 12

/**
 * Panels of a garment cut apart wholly into 4 to 12 pieces, each pulled in and then held in some way that its rules let it
 * undo: so the problem has a lay, however tight. Some garments are symmetric: a panel, its mirror image, pieces in pairs.
 */
export function plantedProblem(seed: number, room: Room): Planted {
  const random = seededRandom(seed)
  for (;;) {
    const inPairs = random() < 0.3
    const panels = somePanels(random, inPairs ? 1 : 4)
    const wanted = LEAST_PIECES + Math.floor(random() * (MOST_PIECES - LEAST_PIECES + 1))
    const parts = cutApart(panels, inPairs ? Math.ceil(wanted / 2) : wanted, room.inset, random)
    const copies = inPairs ? 2 * parts.length : parts.length
    if (copies >= LEAST_PIECES && copies <= MOST_PIECES)
      return planted(`planted ${seed}`, panels, kept(parts, room, random), inPairs, random)
  }
}

/**
 * As `plantedProblem`, of so many panels, of as many garments as it takes, cut into so many parts: for how the time grows with
 * the size. Fewer parts where no cut is found.
 */
export function plantedOfSize(seed: number, panels: number, parts: number, room: Room): Planted {
  const random = seededRandom(seed)
  const outlines: Polygon[] = []
  while (outlines.length < panels) outlines.push(...somePanels(random, panels - outlines.length))
  const cut = kept(cutApart(outlines, parts, room.inset, random), room, random)
  return planted(`${cut.length} pieces on ${panels} panels`, outlines, cut, false, random)
}

/** One to `most` panels of a garment by chance, its flaws left out of account. */
function somePanels(random: Random, most: number): readonly Polygon[] {
  const kind = KINDS[Math.floor(random() * KINDS.length)] as KindId
  const all = shuffle([...panelsOf(plausibleGarment(kind, random))], random)
  return all.slice(0, 1 + Math.floor(random() * most)).map(({ outline }) => polygonCounterClockwise(outline))
}

function kept(parts: readonly Part[], { inset, dropped }: Room, random: Random): Part[] {
  const drop = dropped > 0 ? Math.max(1, Math.round(dropped * parts.length)) : 0
  return shuffle([...parts], random)
    .slice(drop)
    .map(({ panel, outline }) => ({ panel, outline: pulledIn(outline, inset) ?? outline }))
}

interface Held {
  readonly piece: LayPiece
  readonly places: readonly LayPlacement[]
}

function planted(
  name: string,
  outlines: readonly Polygon[],
  parts: readonly Part[],
  inPairs: boolean,
  random: Random,
): Planted {
  const cloth = { surface: random() < 0.2 ? 'one-way' : 'plain', faces: random() < 0.2 ? 2 : 1 } as const
  const whole = inPairs ? outlines.flatMap((outline) => [outline, mirrored(outline)]) : outlines
  const panels = whole.map((outline, i) => panelOf(`panel ${i + 1}`, outline, cloth))
  const held = parts.map((part, i) => {
    const id = `piece ${i + 1}`
    return inPairs ? heldPair(id, part, cloth.surface, random) : heldAlone(id, part, cloth, random)
  })
  const pieces = held.map(({ piece }) => piece)
  const placements = held.flatMap(({ places }) => places)
  return {
    problem: { name, clearance: 0, seconds: 10, panels, pieces },
    lay: {
      verdict: 'fits',
      placements,
      reason: null,
      leftOut: [],
      spare: null,
      spareIs: 'at-least',
      elapsedMs: 0,
    },
  }
}

function panelOf(id: string, outline: Polygon, cloth: { surface: Surface; faces: Faces }): LayPanel {
  const rounded = outline.map(([x, y]): Point => [rounding(x), rounding(y)])
  return { id, outline: rounded, flaws: [], stretch: null, cloth: null, ...cloth }
}

/** The mirror image at x = 0, still counter-clockwise. */
function mirrored(outline: Polygon): Polygon {
  return [...polygonOriented(outline, { turn: 0, mirrored: true })].reverse()
}

/** One piece for one part. */
function heldAlone(
  id: string,
  { panel, outline }: Part,
  { surface, faces }: { surface: Surface; faces: Faces },
  random: Random,
): Held {
  const mirror: MirrorRule = random() < 0.3 ? 'free' : 'none'
  const over = (mirror === 'free' || faces === 2) && random() < 0.5
  const rule = grainRule(surface, random)
  const { shape, x, y } = holding(outline, rule.turn, over, random)
  return {
    piece: pieceOf(id, 1, shape, mirror, rule),
    places: [{ piece: id, copy: 1, panel: `panel ${panel + 1}`, turn: rule.turn, mirrored: over, x, y }],
  }
}

/** Two copies: one for the part, one turned over for the same part of the panel's mirror image. */
function heldPair(id: string, { panel, outline }: Part, surface: Surface, random: Random): Held {
  const rule = grainRule(surface, random)
  const { shape, x, y } = holding(outline, rule.turn, false, random)
  const names = [`panel ${2 * panel + 1}`, `panel ${2 * panel + 2}`] as const
  return {
    piece: pieceOf(id, 2, shape, 'pairs', rule),
    places: [
      { piece: id, copy: 1, panel: names[0], turn: rule.turn, mirrored: false, x, y },
      { piece: id, copy: 2, panel: names[1], turn: (360 - rule.turn) % 360, mirrored: true, x: -x, y },
    ],
  }
}

interface GrainRule {
  readonly grain: Grain
  readonly tilt: Deg
  readonly surface: LayPiece['surface']
  /** A turn that the rule allows on the cloth: the one that lays the piece. */
  readonly turn: Deg
}

/** Mostly straight grain, as garments are; the rest a little off, crosswise, on the bias or anyhow. */
function grainRule(cloth: Surface, random: Random): GrainRule {
  const pick = (turns: readonly Deg[]) => turns[Math.floor(random() * turns.length)] as Deg
  const oneWay = cloth === 'one-way'
  const kind = random()
  if (kind < 0.5) return { grain: 'along', tilt: 0, surface: 'as-panel', turn: oneWay ? 0 : pick([0, 180]) }
  if (kind < 0.65) {
    const tilt = 2 + Math.floor(random() * 5)
    const off = (2 * random() - 1) * tilt
    return {
      grain: 'along',
      tilt,
      surface: 'as-panel',
      turn: ((oneWay ? 0 : pick([0, 180])) + off + 360) % 360,
    }
  }
  if (kind < 0.82)
    return { grain: 'either', tilt: 0, surface: 'as-panel', turn: oneWay ? 0 : pick([0, 90, 180, 270]) }
  if (kind < 0.9) return { grain: 'bias', tilt: 0, surface: 'any', turn: pick([45, 135, 225, 315]) }
  return { grain: 'any', tilt: 0, surface: 'any', turn: 360 * random() }
}

/** The outline as a piece is drawn, about an origin of its own, that this turn, mirror and shift bring to where it lies. */
function holding(
  outline: Polygon,
  turn: Deg,
  over: boolean,
  random: Random,
): { shape: Polygon; x: Mm; y: Mm } {
  const [cx, cy] = polygonCentroid(outline)
  const [x, y] = [rounding(cx + 300 * (random() - 0.5)), rounding(cy + 300 * (random() - 0.5))]
  const about = polygonOriented(polygonMoved(outline, -x, -y), { turn: -turn, mirrored: false })
  const drawn = (over ? mirrored(about) : about).map(([px, py]): Point => [rounding(px), rounding(py)])
  // Some people draw clockwise.
  return { shape: random() < 0.3 ? drawn.reverse() : drawn, x, y }
}

function pieceOf(
  id: string,
  count: number,
  outline: Polygon,
  mirror: MirrorRule,
  { grain, tilt, surface }: GrainRule,
): LayPiece {
  const needs = { across: 0, along: 0 }
  return {
    id,
    count,
    outline,
    mirror,
    grain,
    turns: null,
    tilt,
    needs,
    surface,
    cloth: null,
    optional: false,
  }
}
