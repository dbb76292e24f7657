import type { Mm } from '../base/units.ts'
import type { Garment } from '../garments/garment.ts'
import { kindOf } from '../garments/kinds.ts'
import { ringsOffset } from '../geometry/clipper.ts'
import { polygonArea, polygonCounterClockwise } from '../geometry/polygon.ts'
import type { Polygon } from '../geometry/types.ts'

/** Measures stay at least this far above nothing, and above the measures that must be less, mm. */
const LEAST_STEP: Mm = 1

/** Ids of the measures that count for this garment, made as it is. */
export function measuresAsked({ kind, traits }: Garment): readonly string[] {
  return kindOf(kind)
    .measures.filter(({ when }) => when === undefined || traits[when] === true)
    .map(({ id }) => id)
}

/**
 * The garment if the tape had shown too much by `doubt`: these measures less, or all of them. No measure falls to what
 * would make the garment impossible beside the others. An outline drawn by hand is drawn in by `doubt` all round.
 */
export function withMeasuresReduced(garment: Garment, doubt: Mm, only?: readonly string[]): Garment {
  return withMeasuresOff(garment, -doubt, only)
}

/** The garment if the tape had shown too little by `doubt`; an outline is drawn out. */
export function withMeasuresRaised(garment: Garment, doubt: Mm, only?: readonly string[]): Garment {
  return withMeasuresOff(garment, doubt, only)
}

function withMeasuresOff(garment: Garment, by: Mm, only = measuresAsked(garment)): Garment {
  if (garment.kind === 'free-outline') {
    return { ...garment, outline: garment.outline && drawnOut(garment.outline, by) }
  }
  const moved = { ...garment.measures }
  for (const id of only) if (moved[id] !== undefined) moved[id] = Math.max(LEAST_STEP, moved[id] + by)
  return { ...garment, measures: possible(garment, moved, only) }
}

/** Of a pair of which one must be the less, the one that was moved gives way. */
function possible(garment: Garment, moved: Record<string, Mm>, only: readonly string[]): Record<string, Mm> {
  const measures = { ...moved }
  for (const [less, more] of kindOf(garment.kind).less) {
    const [low, high] = [measures[less], measures[more]]
    if (low === undefined || high === undefined || low < high) continue
    if (only.includes(more)) measures[more] = low + LEAST_STEP
    else measures[less] = Math.max(LEAST_STEP, high - LEAST_STEP)
  }
  return measures
}

/** The largest part where drawing in parts it; null where nothing is left. */
function drawnOut(outline: Polygon, by: Mm): Polygon | null {
  const rings = ringsOffset([polygonCounterClockwise(outline)], by, 'mitre')
  return rings.reduce<Polygon | null>(
    (best, ring) => (best === null || polygonArea(ring) > polygonArea(best) ? ring : best),
    null,
  )
}
