import Centroid from 'jsts/org/locationtech/jts/algorithm/Centroid.js'
import type Geometry from 'jsts/org/locationtech/jts/geom/Geometry.js'
import BufferOp from 'jsts/org/locationtech/jts/operation/buffer/BufferOp.js'
import DistanceOp from 'jsts/org/locationtech/jts/operation/distance/DistanceOp.js'
import type { Point, Polygon } from '../../src/core/geometry/index.ts'
import { distanceToLine, overlapArea, toJsts, uncoveredArea } from './planar.ts'

/**
 * A second checker, of lay files against problem files, written from the description of the two formats alone:
 * its own reading of defaults and cloth rules, and JTS for the geometry. Shares nothing with the solver or with
 * packing/check but the names of two types.
 */

type Turned = { turn: number; mirrored: boolean }
export interface LayFile {
  verdict: string
  placements: ({ piece: string; copy: number; panel: string; x: number; y: number } & Turned)[]
  leftOut: string[]
}
type Json = Record<string, unknown>
export interface ProblemFile {
  clearance?: number
  panels: ({ id: string; outline: Polygon; flaws?: Polygon[] } & Json)[]
  pieces: ({ id: string; outline: Polygon; count?: number; optional?: boolean } & Json)[]
}

type Panel = ProblemFile['panels'][number]
type Piece = ProblemFile['pieces'][number]
type Placed = LayFile['placements'][number]

const TOLERANCE = 0.01
/** Area, mm², that the geometry library's own rounding may leave of nothing. */
const NO_AREA = 1e-6

/** Every rule of the problem that the lay breaks, in words; none for a true lay. */
export function layFaults(problem: ProblemFile, lay: LayFile): string[] {
  return [
    ...copyFaults(problem, lay),
    ...sideFaults(problem, lay),
    ...placeFaults(problem, lay),
    ...pairFaults(problem, lay),
    ...turnFaults(problem, lay),
  ]
}

function copyFaults(problem: ProblemFile, lay: LayFile): string[] {
  const wanted = problem.pieces.flatMap((piece) =>
    Array.from({ length: piece.count ?? 1 }, (_, i) => `${piece.id}#${i + 1}`),
  )
  const placed = lay.placements.map(({ piece, copy }) => `${piece}#${copy}`)
  const told = [...placed, ...lay.leftOut].sort()
  const faults =
    told.join() === [...wanted].sort().join() ? [] : [`copies: ${told} for ${[...wanted].sort()}`]
  if (lay.verdict !== 'fits') return faults
  const needed = problem.pieces.filter((piece) => !piece.optional).map(({ id }) => id)
  const missed = lay.leftOut.filter((copy) => needed.includes(copy.slice(0, copy.lastIndexOf('#'))))
  return missed.length > 0 ? [...faults, `fits, yet without ${missed}`] : faults
}

/** Turned-over copies on cloth with one right side: none as drawn, at most half of each kind for pairs. */
function sideFaults(problem: ProblemFile, lay: LayFile): string[] {
  return problem.pieces.flatMap((piece) => {
    const oneSided = lay.placements.filter(
      ({ piece: id, panel }) => id === piece.id && (panelOf(problem, panel).faces ?? 1) === 1,
    )
    const over = oneSided.filter(({ mirrored }) => mirrored).length
    const rule = piece.mirror ?? 'none'
    if (rule === 'free') return []
    const most = rule === 'pairs' ? (piece.count ?? 1) / 2 : 0
    const plainMost = rule === 'pairs' ? (piece.count ?? 1) / 2 : (piece.count ?? 1)
    return over > most || oneSided.length - over > plainMost ? [`${piece.id}: wrong sides up`] : []
  })
}

function placeFaults(problem: ProblemFile, lay: LayFile): string[] {
  return lay.placements.flatMap((placement) => {
    const name = `${placement.piece}#${placement.copy}`
    const piece = problem.pieces.find(({ id }) => id === placement.piece)!
    const panel = panelOf(problem, placement.panel)
    const shape = eroded(toJsts(landed(piece.outline, placement)))
    const faults: string[] = []
    if (!servesAt(piece, panel, placement.turn)) faults.push(`${name}: cloth or turn ${placement.turn}`)
    if (uncoveredArea(shape, toJsts(panel.outline)) > NO_AREA) faults.push(`${name}: outside ${panel.id}`)
    for (const flaw of panel.flaws ?? [])
      if (overlapArea(shape, toJsts(flaw)) > NO_AREA) faults.push(`${name}: on a flaw`)
    return [
      ...faults,
      ...sittingFaults(piece, panel, placement, shape),
      ...motifFaults(problem, piece, placement),
    ]
  })
}

/** A piece that must sit does; one that does not keeps off the depth of finished edges. */
function sittingFaults(piece: Piece, panel: Panel, placement: Placed, shape: Geometry): string[] {
  const name = `${placement.piece}#${placement.copy}`
  const finished = ((panel.finished as number[] | undefined) ?? []).map((k) => edgeOf(panel.outline, k))
  const sit = piece.sit as { edge: number; must?: boolean } | undefined
  const ends = sit && edgeOf(landed(piece.outline, placement), sit.edge)
  const sits =
    ends !== undefined && finished.some((line) => ends.every((end) => distanceToLine(end, line) <= TOLERANCE))
  if (sit?.must) return sits ? [] : [`${name}: does not sit`]
  const depth = (panel.finishedDepth as number | undefined) ?? 0
  if (sits || depth === 0) return []
  return finished.some((line) => overlapArea(shape, toJsts(bandBeside(panel.outline, line, depth))) > NO_AREA)
    ? [`${name}: on a finished edge without sitting`]
    : []
}

type Edge = readonly [Point, Point]

function edgeOf(outline: Polygon, k: number): Edge {
  return [outline[k]!, outline[(k + 1) % outline.length]!]
}

/** The strip beside an edge, on the side where the panel is. */
function bandBeside(outline: Polygon, [[ax, ay], [bx, by]]: Edge, depth: number): Polygon {
  const left = depth * Math.sign(shoelace(outline))
  const length = Math.hypot(bx - ax, by - ay)
  const [nx, ny] = [((ay - by) / length) * left, ((bx - ax) / length) * left]
  return [
    [ax, ay],
    [bx, by],
    [bx + nx, by + ny],
    [ax + nx, ay + ny],
  ]
}

function shoelace(outline: Polygon): number {
  return outline.reduce((sum, [x, y], k) => {
    const [nextX, nextY] = outline[(k + 1) % outline.length]!
    return sum + x * nextY - nextX * y
  }, 0)
}

/** The first copy shows what the piece shall show: all of it, near the point named. */
function motifFaults(problem: ProblemFile, piece: Piece, placement: Placed): string[] {
  const shows = piece.shows as { motif: string; at: Point; within: number } | undefined
  if (!shows || placement.copy !== 1) return []
  const name = `${placement.piece}#${placement.copy}`
  const motifs = (panelOf(problem, placement.panel).motifs ?? []) as {
    id: string
    outline: Polygon
    up?: number
  }[]
  const motif = motifs.find(({ id }) => id === shows.motif)
  if (!motif) return [`${name}: not where the motif is`]
  const shape = toJsts(motif.outline)
  const [[x, y]] = landed([shows.at], placement) as [Point]
  const centre = Centroid.getCentroid(shape)
  const faults: string[] = []
  if (Math.hypot(centre.x - x, centre.y - y) > shows.within + TOLERANCE)
    faults.push(`${name}: shows the motif too far off`)
  const tilt = ((piece.tilt as number | undefined) ?? 0) + ROUNDING
  if (motif.up !== undefined && between(placement.turn, motif.up) > tilt)
    faults.push(`${name}: shows the motif ${placement.turn} and not ${motif.up} up`)
  if (uncoveredArea(eroded(shape), toJsts(landed(piece.outline, placement))) > NO_AREA)
    faults.push(`${name}: does not hold all of the motif`)
  return faults
}

function pairFaults(problem: ProblemFile, lay: LayFile): string[] {
  const clearance = problem.clearance ?? 0
  const laid = lay.placements.map((placement) => ({
    ...placement,
    shape: toJsts(landed(problem.pieces.find(({ id }) => id === placement.piece)!.outline, placement)),
  }))
  return laid.flatMap((a, i) =>
    laid
      .slice(i + 1)
      .filter((b) => a.panel === b.panel && clash(a.shape, b.shape, clearance))
      .map((b) => `${a.piece}#${a.copy} and ${b.piece}#${b.copy}: too close`),
  )
}

/** Pieces with the same `turnAlike`: each within its tilt of one line, and of one direction where the surface is one-way. */
function turnFaults(problem: ProblemFile, lay: LayFile): string[] {
  const groups = new Set(problem.pieces.flatMap(({ turnAlike }) => (turnAlike as string | undefined) ?? []))
  return [...groups].flatMap((group) => {
    const placed = lay.placements.flatMap(({ piece: id, panel, turn }) => {
      const piece = problem.pieces.find((one) => one.id === id)!
      if (piece.turnAlike !== group) return []
      const tilt = ((piece.tilt as number | undefined) ?? 0) + ROUNDING
      return [{ turn, tilt, oneWay: panelOf(problem, panel).surface === 'one-way' }]
    })
    // Where all can be had at once, they can be had at an end of some piece's leeway.
    const ends = placed.flatMap(({ turn, tilt }) => [
      turn - tilt,
      turn + tilt,
      turn - tilt + 180,
      turn + tilt + 180,
    ])
    const serves = (at: number) =>
      placed.every(({ turn, tilt, oneWay }) => {
        const off = between(turn, at)
        return (oneWay ? off : Math.min(off, 180 - off)) <= tilt + ROUNDING
      })
    return placed.length === 0 || ends.some(serves) ? [] : [`${group}: not all turned alike`]
  })
}

function clash(a: Geometry, b: Geometry, clearance: number): boolean {
  if (clearance > TOLERANCE && DistanceOp.distance(a, b) < clearance - TOLERANCE) return true
  return overlapArea(eroded(a), b) > NO_AREA || overlapArea(a, eroded(b)) > NO_AREA
}

function eroded(shape: Geometry): Geometry {
  return BufferOp.bufferOp(shape, -TOLERANCE)
}

function panelOf(problem: ProblemFile, id: string): ProblemFile['panels'][number] {
  return problem.panels.find((panel) => panel.id === id)!
}

function landed(outline: Polygon, { turn, mirrored, x, y }: Turned & { x: number; y: number }): Polygon {
  const angle = (turn * Math.PI) / 180
  return outline.map(([px, py]): Point => {
    const sx = mirrored ? -px : px
    return [x + sx * Math.cos(angle) - py * Math.sin(angle), y + sx * Math.sin(angle) + py * Math.cos(angle)]
  })
}

const GRAIN: Record<string, number[]> = {
  along: [0, 180],
  either: [0, 90, 180, 270],
  bias: [45, 135, 225, 315],
}

/** Degrees between two directions, 0 to 180. */
function between(a: number, b: number): number {
  const off = (((a - b) % 360) + 360) % 360
  return Math.min(off, 360 - off)
}

const ROUNDING = 1e-6

/** True if the rules of cloth let the piece lie on the panel at that turn. */
export function servesAt(piece: Json, panel: Json, turn: number): boolean {
  if (piece.cloth !== undefined && panel.cloth !== undefined && piece.cloth !== panel.cloth) return false
  const tilt = ((piece.tilt as number | undefined) ?? 0) + ROUNDING
  const list = (piece.turns as number[] | undefined) ?? GRAIN[(piece.grain as string | undefined) ?? 'along']
  if (list && !list.some((allowed) => between(turn, allowed) <= tilt)) return false
  if (panel.surface === 'one-way' && piece.surface !== 'any' && between(turn, 0) > tilt) return false
  return stretches(piece, panel, turn, tilt)
}

/** A turn within the tilt of a quarter counts as that quarter. */
function stretches(piece: Json, panel: Json, turn: number, tilt: number): boolean {
  const need = { across: 0, along: 0, ...(piece.needs as Partial<Record<'across' | 'along', number>>) }
  const has = panel.stretch as { across: number; along: number } | undefined
  if (!has) return need.across <= 0 && need.along <= 0
  if (between(turn, 0) <= tilt || between(turn, 180) <= tilt)
    return has.across >= need.across && has.along >= need.along
  if (between(turn, 90) <= tilt || between(turn, 270) <= tilt)
    return has.along >= need.across && has.across >= need.along
  return Math.min(has.across, has.along) >= Math.max(need.across, need.along)
}
