import { shapeOutlines } from '../../garments/flaws.ts'
import type { MarkedFlaw } from '../../garments/garment.ts'
import { ringsArea, ringsUnion } from '../../geometry/clipper.ts'
import type { CheckQuestion } from '../check.ts'
import type { Remedy, RemedyMaker } from './remedy.ts'

/** More than these, the largest, would take longer to solve than to look at. */
const MOST_FLAWS = 6

/** Built-in flaws that are sewn on top of whole cloth, by their trait. Other pockets are cut into it. */
const SEWN_ON = ['chest-pocket']

/** Uses one flaw after all, or takes one patch pocket off; largest area first, as it is the likeliest to be in the way. */
export const mendFlaw: RemedyMaker = {
  kinds: ['mend-flaw', 'take-off'],
  propose(question) {
    const { garment } = question
    const sized = garment.flaws.map((flaw) => ({ flaw, area: areaOf(flaw) }))
    const largest = sized.sort((a, b) => b.area - a.area).slice(0, MOST_FLAWS)
    return [
      ...SEWN_ON.filter((trait) => garment.traits[trait]).map((trait) => without(trait, question)),
      ...largest.map(({ flaw, area }) => mended(flaw, area, question)),
    ]
  },
}

function areaOf({ shape }: MarkedFlaw): number {
  return ringsArea(ringsUnion(shapeOutlines(shape)))
}

function without(trait: string, question: CheckQuestion): Remedy {
  const { garment } = question
  const traits = { ...garment.traits, [trait]: false }
  return { steps: [{ kind: 'take-off', trait }], question: { ...question, garment: { ...garment, traits } } }
}

function mended(flaw: MarkedFlaw, area: number, question: CheckQuestion): Remedy {
  const { garment } = question
  const flaws = garment.flaws.filter(({ id }) => id !== flaw.id)
  return {
    steps: [{ kind: 'mend-flaw', flaw: flaw.id, panel: flaw.panel, flawKind: flaw.kind, area }],
    question: { ...question, garment: { ...garment, flaws } },
  }
}
