import type { Point } from '../../geometry/types.ts'
import { measure } from '../body-sizes.ts'
import { whole } from '../drafting/draft.ts'
import { acrossTape, downTape } from '../drafting/lines.ts'
import { flaredHalf, gatheredHalf } from '../drafting/skirt-block.ts'
import { outlineOf, traced } from '../drafting/trace.ts'
import type { GarmentKind } from '../kind.ts'
import { WAISTBAND_DEPTH } from '../losses.ts'
import { hemWidth, read, waistWidth } from './measures.ts'

/** A hem is drawn no fuller than this, for the sake of the drawing. */
const FULLEST_DRAWN = 1.2

export const flaredSkirt: GarmentKind = {
  id: 'flared-skirt',
  measures: [
    waistWidth(20),
    hemWidth((body) => body.hip * 0.75, 3000),
    measure('skirt-length', 150, 1200, (body) => body.innerLeg * 0.8),
  ],
  traits: [
    { id: 'waistband', usual: true },
    { id: 'gathered', usual: false },
  ],
  less: [],

  figure(measures, traits) {
    const waist = read(measures, 'waist-width')
    const length = read(measures, 'skirt-length')
    const hem = Math.min(read(measures, 'hem-width'), waist + FULLEST_DRAWN * length)
    const half = flaredHalf({ waist, hem, length })
    const shape = outlineOf(traced(whole('front', half)))
    const corner = shape.reduce((best, point) => (point[0] > best[0] ? point : best))
    const top = Math.max(...shape.map(([, y]) => y))
    const waistEnd = shape.reduce((best, p) => (p[1] === top && p[0] > best[0] ? p : best), [0, top] as Point)
    const bandLine: readonly Point[] = [
      [-waistEnd[0], top - WAISTBAND_DEPTH],
      [0, length - WAISTBAND_DEPTH],
      [waistEnd[0], top - WAISTBAND_DEPTH],
    ]
    return {
      shapes: [shape],
      seams: traits.waistband ? [bandLine] : [],
      tapes: [
        acrossTape('waist-width', 2 * waistEnd[0], top),
        acrossTape('hem-width', 2 * corner[0], corner[1]),
        downTape('skirt-length', [0, length], length),
      ],
    }
  },

  drafts(measures, traits) {
    const band = traits.waistband ? WAISTBAND_DEPTH : 0
    const figures = {
      waist: read(measures, 'waist-width'),
      hem: read(measures, 'hem-width'),
      length: read(measures, 'skirt-length') - band,
    }
    const half = traits.gathered ? gatheredHalf(figures) : flaredHalf(figures)
    return [whole('front', half), whole('back', half)]
  },
}
