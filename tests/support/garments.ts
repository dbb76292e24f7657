import fc from 'fast-check'
import { seededRandom } from '../../src/core/base/random.ts'
import { isQuestion, measureFaults } from '../../src/core/garments/faults.ts'
import type { Garment } from '../../src/core/garments/garment.ts'
import { KIND_IDS, type KindId, type Measures, type Opening } from '../../src/core/garments/kind.ts'
import { kindOf } from '../../src/core/garments/kinds.ts'
import { emptyGarment } from '../../src/core/garments/starting.ts'
import type { Point } from '../../src/core/geometry/types.ts'
import { plausibleGarment as drawnGarment } from '../../src/terminal/bench/plausible-garment.ts'

/** Kinds that are measured; a free outline has no measures. */
export const MEASURED_KINDS = KIND_IDS.filter((id) => id !== 'free-outline')

/** Any garment of a kind: every measure anywhere in its plausible range, however odd they are together. */
export function oddGarment(id: KindId, opening?: Opening): fc.Arbitrary<Garment> {
  const measures = kindOf(id).measures.map((spec) => [
    spec.id,
    fc.integer({ min: spec.least, max: spec.most }),
  ])
  return garmentOf(id, fc.record(Object.fromEntries(measures)), opening)
}

/** A garment somebody could wear, as the benchmark makes them too. */
export function plausibleGarment(id: KindId, opening?: Opening): fc.Arbitrary<Garment> {
  return fc.integer().map((seed) => {
    const garment = drawnGarment(id, seededRandom(seed))
    return opening ? { ...garment, opening } : garment
  })
}

function garmentOf(id: KindId, measures: fc.Arbitrary<Measures>, opening?: Opening): fc.Arbitrary<Garment> {
  const kind = kindOf(id)
  const traits = Object.fromEntries(kind.traits.map((trait) => [trait.id, fc.boolean()]))
  return fc
    .record({
      measures,
      traits: fc.record(traits),
      opening: opening ? fc.constant(opening) : fc.constantFrom<Opening>('cut', 'unpicked'),
    })
    .filter((made) => measureFaults(kind, made.measures, made.traits).every(isQuestion))
    .map((made) => ({ ...emptyGarment(id, 'any'), ...made }))
}

/** Distance from a point to a segment, written out anew so that it shares nothing with the source. */
export function distanceToSegment(p: Point, a: Point, b: Point): number {
  const [vx, vy, wx, wy] = [b[0] - a[0], b[1] - a[1], p[0] - a[0], p[1] - a[1]]
  const along = vx * wx + vy * wy
  if (along <= 0) return Math.hypot(wx, wy)
  const square = vx * vx + vy * vy
  if (along >= square) return Math.hypot(p[0] - b[0], p[1] - b[1])
  return Math.abs(vx * wy - vy * wx) / Math.sqrt(square)
}
