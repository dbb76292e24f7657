import type { Mm } from '../base/units.ts'
import {
  ringsArea,
  ringsDifference,
  ringsIntersection,
  ringsOffset,
  ringsUnion,
} from '../geometry/clipper.ts'
import { polygonArea, polygonCounterClockwise } from '../geometry/index.ts'
import type { Polygon, Rings } from '../geometry/types.ts'
import type { Offcut } from './cut.ts'
import { connectedParts, type Part } from './parts.ts'

/** What is cut, and what must stay whole. All in the panel's coordinates, either winding. */
export interface Cutting {
  readonly outline: Polygon
  readonly flaws: readonly Polygon[]
  /** Everything that leaves with the pieces: outlines, and turned-up hems behind them. */
  readonly pieces: readonly Polygon[]
  /** Places of others on this panel. */
  readonly reserved: readonly Polygon[]
  /** Strips narrower than this are not kept, except beside reserved places. */
  readonly sliver: Mm
}

export interface Remainder {
  readonly offcuts: readonly Pick<Offcut, 'outline' | 'flaws'>[]
  /** What is left and not kept, mm². */
  readonly sliverArea: number
}

/**
 * What is left of a panel. Offcuts never reach beyond the true remainder; holes become flaws of theirs, and the panel's
 * flaws go with the offcuts that they touch. A part that holds reserved places is kept as it is, slivers and all.
 */
export function offcutsOf({ outline, flaws, pieces, reserved, sliver }: Cutting): Remainder {
  const panel = [polygonCounterClockwise(outline)]
  const left = ringsDifference(panel, ringsUnion(pieces.map(polygonCounterClockwise)))
  const offcuts = connectedParts(left).flatMap((part) => {
    const held = reserved.filter((place) => shares(ringsOf(part), place))
    return held.length > 0
      ? kept(part, held)
      : partsOver(opened(ringsOf(part), sliver), (sliver * sliver) / 2)
  })
  return {
    offcuts: offcuts.map((part) => ({ outline: part.outer, flaws: flawsOf(part, flaws) })),
    sliverArea: Math.max(
      0,
      ringsArea(left) - offcuts.reduce((sum, part) => sum + ringsArea(ringsOf(part)), 0),
    ),
  }
}

function ringsOf({ outer, holes }: Part): Rings {
  return [outer, ...holes]
}

/** Two grid steps: less than this is rounding. */
const LEAST_AREA = 0.01

function shares(rings: Rings, place: Polygon): boolean {
  return ringsArea(ringsIntersection(rings, [polygonCounterClockwise(place)])) > LEAST_AREA
}

/** Hairs left by cutting curves beside one another, much thinner than scissors can follow, that may pinch an outline. */
const HAIR: Mm = 0.1

/** The part that holds these places, without hairs elsewhere. */
function kept(part: Part, places: readonly Polygon[]): readonly Part[] {
  const rings = ringsOf(part)
  const whole = ringsIntersection(rings, ringsUnion(places.map(polygonCounterClockwise)))
  return partsOver(ringsUnion([...opened(rings, HAIR), ...whole]), HAIR)
}

/** Beyond rounding, so that the outline is that of the remainder wherever the remainder is wide. */
const OVERLAY: Mm = 0.05

/**
 * Opening by a disc of this diameter (Serra 1982), with corners kept sharp: every disc of it that finds room in the
 * set stays, and nothing is added.
 */
function opened(rings: Rings, width: Mm): Rings {
  const core = ringsOffset(rings, -width / 2, 'round')
  if (core.length === 0) return []
  return ringsIntersection(rings, ringsOffset(core, width / 2 + OVERLAY, 'mitre'))
}

/** Without crumbs that rounding leaves. `least`: mm². */
function partsOver(rings: Rings, least: number): readonly Part[] {
  return connectedParts(rings).filter(({ outer }) => polygonArea(outer) > least)
}

function flawsOf({ outer, holes }: Part, flaws: readonly Polygon[]): readonly Polygon[] {
  return [...holes.map(polygonCounterClockwise), ...flaws.filter((flaw) => shares([outer], flaw))].filter(
    (flaw) => polygonArea(flaw) !== 0,
  )
}
