import { type CopySide, turnsOn, waysOn } from '../cloth/index.ts'
import type { CopyRef, Item, PackingProblem, Placement, Region } from '../packing/problem.ts'
import type { LayPlacement } from './lay.ts'
import type { LayPanel, LayPiece, LayProblem, ShownMotif } from './lay-problem.ts'
import { hasMotif, motifOf } from './motifs.ts'
import { seatsOf } from './seats.ts'

/** A lay problem as a packing problem, and what is needed to bring an answer back. */
export interface Translation {
  readonly packing: PackingProblem
  /** The panel behind each region. Panels that serve no piece are no regions. */
  readonly panels: readonly LayPanel[]
  /** The piece behind each item, and which copy of the piece the item's first copy is, from 1. */
  readonly sources: readonly Source[]
}

export interface Source {
  readonly piece: LayPiece
  readonly firstCopy: number
}

/**
 * The problem without cloth: the rules of grain, stretch, pile, faces and cloth roles become the orientations
 * that each item may take in each region. A piece cut in pairs becomes two items, one for each side.
 */
export function translateProblem(problem: LayProblem): Translation {
  const panels = problem.panels.filter((panel) => problem.pieces.some((piece) => serves(panel, piece)))
  const parts = problem.pieces.flatMap((piece) => sidesOf(piece, panels)).flatMap(withoutShown)
  return {
    panels,
    sources: parts.map(({ piece, firstCopy }) => ({ piece, firstCopy })),
    packing: {
      clearance: problem.clearance,
      regions: panels.map(regionOf),
      items: parts.map((part) => itemOf(part, panels)),
    },
  }
}

function regionOf(panel: LayPanel): Region {
  const { id, outline, flaws, surface } = panel
  return {
    id,
    outline,
    forbidden: flaws,
    ...seatsOf(panel),
    ...(surface === 'one-way' ? { headed: true } : {}),
  }
}

function serves(panel: LayPanel, piece: LayPiece): boolean {
  return typeof turnsOn(piece, panel) !== 'string'
}

interface Part extends Source {
  readonly side: CopySide
  readonly copies: number
  /** What every copy of this part shows. */
  readonly shows?: ShownMotif
}

/** The copy that shows a motif is a part by itself. */
function withoutShown(part: Part): readonly Part[] {
  const { piece, firstCopy, copies } = part
  if (!piece.shows || firstCopy > 1) return [part]
  const shown = { ...part, copies: 1, shows: piece.shows }
  return copies > 1 ? [shown, { ...part, firstCopy: 2, copies: copies - 1 }] : [shown]
}

/** The copies of a piece by the side that must come up. Where every panel takes both sides, pairs need no halves. */
function sidesOf(piece: LayPiece, panels: readonly LayPanel[]): Part[] {
  const all = { piece, firstCopy: 1, copies: piece.count }
  if (piece.mirror === 'free') return [{ ...all, side: 'free' }]
  const twoFaced = panels.every((panel) => panel.faces === 2 || !serves(panel, piece))
  if (piece.mirror === 'none' || twoFaced) return [{ ...all, side: 'as-drawn' }]
  const copies = piece.count / 2
  return [
    { piece, firstCopy: 1, copies, side: 'as-drawn' },
    { piece, firstCopy: 1 + copies, copies, side: 'turned-over' },
  ]
}

function itemOf({ piece, side, copies, shows }: Part, panels: readonly LayPanel[]): Item {
  const motif = shows && motifOf(shows.motif, panels)
  return {
    id: side === 'turned-over' ? `${piece.id} (turned over)` : piece.id,
    copies,
    outline: piece.outline,
    optional: piece.optional,
    ways: panels.map((panel) =>
      shows && !hasMotif(panel, shows.motif) ? [] : waysOn(piece, panel, side, motif?.up),
    ),
    ...(piece.turnAlike === undefined ? {} : { alike: { group: piece.turnAlike, within: piece.tilt } }),
    ...(piece.sit?.must ? { sits: piece.sit.edge } : {}),
    ...(shows && motif ? { shows: { spot: motif.outline, at: shows.at, within: shows.within } } : {}),
  }
}

/** A placed copy in the terms of the trade. */
export function translatePlacement({ panels, sources }: Translation, placement: Placement): LayPlacement {
  const { piece, firstCopy } = sources[placement.item] as Source
  const turn = placement.turn % 360
  return {
    piece: piece.id,
    copy: firstCopy + placement.copy,
    panel: (panels[placement.region] as LayPanel).id,
    turn: turn < 0 ? turn + 360 : turn,
    mirrored: placement.mirrored,
    x: placement.x,
    y: placement.y,
  }
}

/** The name of a copy as lays write it: `sleeve#2`. */
export function translateCopy({ sources }: Translation, { item, copy }: CopyRef): string {
  const { piece, firstCopy } = sources[item] as Source
  return `${piece.id}#${firstCopy + copy}`
}
