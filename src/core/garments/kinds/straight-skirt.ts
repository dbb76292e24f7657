import { measure } from '../body-sizes.ts'
import { boxFlaw, otherSide, type PanelDraft, type Path, rightHalf, seam, whole } from '../drafting/draft.ts'
import { acrossTape, downTape } from '../drafting/lines.ts'
import { straightHalf } from '../drafting/skirt-block.ts'
import { outlineOf, traced } from '../drafting/trace.ts'
import type { BuiltInFlaw, GarmentKind, Measures, Traits } from '../kind.ts'
import { WAISTBAND_DEPTH, ZIP_WIDTH } from '../losses.ts'
import { hemWidth, hipWidth, read, waistWidth } from './measures.ts'

/** The hip lies this far below the waist on adults, and at most at this share of the skirt. Common practice. */
const HIP_DEPTH = 200
const MOST_HIP_SHARE = 0.4

/** A dart: width at the waist and length. Common practice 20 to 30 and 90 to 130 mm. */
const DART = { width: 25, length: 120 } as const

/** A skirt zip. Common practice. */
const ZIP_LENGTH = 180

export const straightSkirt: GarmentKind = {
  id: 'straight-skirt',
  measures: [
    waistWidth(20),
    hipWidth(40),
    hemWidth((body) => body.hip / 2 + 10),
    measure('skirt-length', 150, 1200, (body) => body.innerLeg * 0.72),
  ],
  traits: [
    { id: 'waistband', usual: true },
    { id: 'back-seam', usual: true },
    { id: 'zip', usual: true },
    { id: 'darts', usual: true },
  ],
  less: [],

  figure(measures, traits) {
    const worn = halfOf(measures, 0)
    const length = read(measures, 'skirt-length')
    const waist = read(measures, 'waist-width')
    const hipLevel = length - hipDepth(length)
    const band = length - WAISTBAND_DEPTH
    return {
      shapes: [outlineOf(traced(whole('front', worn)))],
      seams: [
        ...(traits.waistband ? [[[-waist / 2, band] as const, [waist / 2, band] as const]] : []),
        ...(traits.darts ? darts(measures, 0).map(({ outline }) => outline) : []),
      ],
      tapes: [
        acrossTape('waist-width', waist, length),
        acrossTape('hip-width', read(measures, 'hip-width'), hipLevel),
        acrossTape('hem-width', read(measures, 'hem-width'), 0),
        downTape('skirt-length', [0, length], length),
      ],
    }
  },

  drafts(measures, traits) {
    const band = traits.waistband ? WAISTBAND_DEPTH : 0
    const half = halfOf(measures, band)
    const flaws = traits.darts ? darts(measures, band) : []
    return [whole('front', half, flaws), ...backs(half, flaws, measures, band, traits)]
  },
}

/** With a centre back seam two panels and the zip between them; without, the zip sits in the left side seam. */
function backs(
  half: Path,
  flaws: readonly BuiltInFlaw[],
  measures: Measures,
  band: number,
  traits: Traits,
): readonly PanelDraft[] {
  const top = read(measures, 'skirt-length') - band
  const zipAt = (left: number) =>
    traits.zip ? [boxFlaw('zip', left, top - Math.min(ZIP_LENGTH, top), left + ZIP_WIDTH, top)] : []
  if (traits['back-seam']) {
    const right = rightHalf('back-right', half, seam, [...flaws.slice(0, 1), ...zipAt(0)])
    return [otherSide('back-left', right), right]
  }
  return [whole('back', half, [...flaws, ...zipAt(-read(measures, 'hip-width') / 2)])]
}

/** Right and left dart, half-way between centre and side. */
function darts(measures: Measures, band: number): readonly BuiltInFlaw[] {
  const top = read(measures, 'skirt-length') - band
  const x = read(measures, 'waist-width') / 4
  const depth = Math.min(DART.length, top / 2)
  const dart = (at: number): BuiltInFlaw => ({
    kind: 'dart',
    outline: [
      [at, top - depth],
      [at + DART.width / 2, top],
      [at - DART.width / 2, top],
    ],
  })
  return [dart(x), dart(-x)]
}

function hipDepth(length: number): number {
  return Math.min(HIP_DEPTH, length * MOST_HIP_SHARE)
}

function halfOf(measures: Measures, band: number): Path {
  const length = read(measures, 'skirt-length')
  return straightHalf({
    waist: read(measures, 'waist-width'),
    hip: read(measures, 'hip-width'),
    hem: read(measures, 'hem-width'),
    length: length - band,
    hipDepth: Math.max(1, hipDepth(length) - band),
  })
}
