import type { Random } from '../../core/base/random.ts'
import {
  emptyGarment,
  type Garment,
  isQuestion,
  type KindId,
  kindOf,
  LABEL_SIZES,
  type LabelSize,
  type Measures,
  measureFaults,
  type Traits,
} from '../../core/garments/index.ts'

/** Measures lie within this share of what a label size starts with. */
const OFF = 0.2

/** A garment somebody could wear: every measure within a fifth of what some label size starts with, traits by chance. */
export function plausibleGarment(id: KindId, random: Random): Garment {
  const kind = kindOf(id)
  for (;;) {
    const labelSize = LABEL_SIZES[Math.floor(random() * LABEL_SIZES.length)] as LabelSize
    const measures: Measures = Object.fromEntries(
      kind.measures.map((spec) => [
        spec.id,
        Math.round(spec.start[labelSize] * (1 - OFF + 2 * OFF * random())),
      ]),
    )
    const traits: Traits = Object.fromEntries(kind.traits.map((trait) => [trait.id, random() < 0.5]))
    const opening = random() < 0.5 ? 'cut' : 'unpicked'
    if (measureFaults(kind, measures, traits).every(isQuestion))
      return { ...emptyGarment(id, 'any'), labelSize, measures, traits, opening }
  }
}
