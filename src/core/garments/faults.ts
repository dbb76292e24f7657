import type { Fault } from '../base/result.ts'
import type { Mm } from '../base/units.ts'
import { polygonArea } from '../geometry/polygon.ts'
import { polygonIsSimple } from '../geometry/simple.ts'
import type { Polygon } from '../geometry/types.ts'
import type { GarmentKind, Measures, Traits } from './kind.ts'

/** Something odd about a measure. `message` is for logs and the terminal; ui/words writes its own from the code. */
export interface MeasureFault extends Fault {
  readonly measure: string
  /** `below` and `above` the plausible range only ask "really?"; the others make the garment impossible. */
  readonly code: 'missing' | 'not-positive' | 'below' | 'above' | 'not-less'
  /** The figure it should have kept to. */
  readonly limit: Mm
  /** The other measure that `not-less` speaks of. */
  readonly other: string | null
}

/** A question to the person who measured; anything else cannot be. */
export function isQuestion(fault: MeasureFault): boolean {
  return fault.code === 'below' || fault.code === 'above'
}

/** What is missing, impossible or unlikely in these measures, worst first a measure; empty if all is well. */
export function measureFaults(
  kind: GarmentKind,
  measures: Measures,
  traits: Traits = {},
): readonly MeasureFault[] {
  const asked = kind.measures.filter((spec) => spec.when === undefined || traits[spec.when] === true)
  const single = asked.flatMap(({ id, least, most }) => {
    const value = measures[id]
    if (value === undefined) return [fault(id, 'missing', least, 'is missing')]
    if (!(value > 0 && Number.isFinite(value))) return [fault(id, 'not-positive', 0, 'must be more than 0')]
    if (value < least)
      return [fault(id, 'below', least, `is less than ${least} mm, which is rare; measure again`)]
    if (value > most)
      return [fault(id, 'above', most, `is more than ${most} mm, which is rare; measure again`)]
    return []
  })
  return [...single, ...contradictions(kind, measures)]
}

/** Ids of the measures that are rare enough to ask about: what is made of them is to be questioned too. */
export function questionedMeasures(kind: GarmentKind, measures: Measures, traits: Traits): readonly string[] {
  return measureFaults(kind, measures, traits)
    .filter(isQuestion)
    .map(({ measure }) => measure)
}

function contradictions(kind: GarmentKind, measures: Measures): readonly MeasureFault[] {
  return kind.less.flatMap(([less, more]) => {
    const [a, b] = [measures[less], measures[more]]
    if (a === undefined || b === undefined || a < b) return []
    return [fault(less, 'not-less', b, `must be less than ${more}, which is ${b} mm`, more)]
  })
}

function fault(
  measure: string,
  code: MeasureFault['code'],
  limit: Mm,
  message: string,
  other: string | null = null,
): MeasureFault {
  return { field: `measures.${measure}`, measure, code, limit, message, other }
}

/** Why an outline drawn by hand bounds no cloth; empty if it does. */
export function outlineFaults(outline: Polygon): readonly Fault[] {
  const refuse = (message: string): readonly Fault[] => [{ field: 'outline', message }]
  if (outline.length < 3) return refuse('needs at least 3 corners')
  if (!outline.flat().every(Number.isFinite)) return refuse('has a corner that is not a number')
  if (!polygonIsSimple(outline)) return refuse('crosses or touches itself; move a corner')
  if (polygonArea(outline) === 0) return refuse('encloses nothing')
  return []
}
