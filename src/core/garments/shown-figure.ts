import { polygonBox } from '../geometry/polygon.ts'
import { polygonIsSimple } from '../geometry/simple.ts'
import type { Point } from '../geometry/types.ts'
import { measureFaults } from './faults.ts'
import type { Figure, GarmentKind, LabelSize, Measures, Traits } from './kind.ts'
import { startingMeasures } from './starting.ts'

/**
 * The measures to draw a garment by while they are typed. A figure that is implausible, as half a number or one too many digits
 * is, keeps the value it was drawn with last, and so do figures that contradict each other; if the drawing would still be wild,
 * all of it stays as it was.
 *
 * @param now A figure for every measure of the kind, in mm.
 * @param last What was drawn last, for this kind; {}: nothing yet.
 * @param labelSize Where to start if nothing plausible was drawn yet.
 */
export function measuresShown(
  kind: GarmentKind,
  now: Measures,
  traits: Traits,
  last: Measures,
  labelSize: LabelSize | null = null,
): Measures {
  const before = { ...startingMeasures(kind, labelSize), ...last }
  const faulty = new Set(measureFaults(kind, now, traits).flatMap(({ measure, other }) => [measure, other]))
  const held = Object.fromEntries(
    Object.entries(now).map(([id, value]) => [id, faulty.has(id) ? (before[id] ?? value) : value]),
  )
  const tries = [held, before, startingMeasures(kind, labelSize)]
  return tries.find((measures) => isShowable(kind, measures, traits)) ?? startingMeasures(kind, null)
}

function isShowable(kind: GarmentKind, measures: Measures, traits: Traits): boolean {
  return measureFaults(kind, measures, traits).length === 0 && figureIsSound(kind.figure(measures, traits))
}

/** A drawing leaves this margin round its shapes, as a share of their larger side; seams and tapes must lie within. */
export const STAGE_MARGIN = 0.06

/** Whether a drawing shows something: every figure finite, no shape crossing itself, all lines on its stage. */
export function figureIsSound({ shapes, seams, tapes }: Figure): boolean {
  if (shapes.length === 0 || !shapes.flat(2).every(Number.isFinite)) return false
  if (!shapes.every(polygonIsSimple)) return false
  const { minX, maxX, minY, maxY } = polygonBox(shapes.flat())
  const margin = STAGE_MARGIN * Math.max(maxX - minX, maxY - minY)
  const isOn = ([x, y]: Point) =>
    x >= minX - margin && x <= maxX + margin && y >= minY - margin && y <= maxY + margin
  return [...seams.flat(), ...tapes.flatMap(({ from, to }) => [from, to])].every(isOn)
}
