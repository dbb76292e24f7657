import type { Point } from '../../geometry/types.ts'
import { measure } from '../body-sizes.ts'
import { type DraftEdge, hem, raw, selvedge } from '../drafting/draft.ts'
import type { GarmentKind } from '../kind.ts'
import { NARROW_HEM_DEPTH } from '../losses.ts'
import { read } from './measures.ts'

/** A scarf, a sheet, a remnant: one rectangle, its length along the grain. Labels say nothing of it; a common dress width starts. */
export const cloth: GarmentKind = {
  id: 'cloth',
  measures: [measure('cloth-width', 50, 3200, () => 1400), measure('cloth-length', 50, 20_000, () => 1000)],
  traits: [
    { id: 'selvedges', usual: true },
    { id: 'hemmed', usual: false },
  ],
  less: [],

  figure(measures) {
    const [width, length] = [read(measures, 'cloth-width'), read(measures, 'cloth-length')]
    return {
      shapes: [corners(width, length)],
      seams: [],
      tapes: [
        { measure: 'cloth-width', from: [0, length / 2], to: [width, length / 2] },
        { measure: 'cloth-length', from: [width / 2, 0], to: [width / 2, length] },
      ],
    }
  },

  drafts(measures, traits) {
    const [, right, far, left] = corners(read(measures, 'cloth-width'), read(measures, 'cloth-length'))
    const end = traits.hemmed ? narrowHem : raw
    const side = traits.selvedges ? selvedge : end
    const edges = [end(right as Point), side(far as Point), end(left as Point), side([0, 0])]
    return [{ id: 'cloth', start: [0, 0], edges, flaws: [] }]
  },
}

const narrowHem = (to: Point): DraftEdge => hem(to, NARROW_HEM_DEPTH)

function corners(width: number, length: number): readonly Point[] {
  return [
    [0, 0],
    [width, 0],
    [width, length],
    [0, length],
  ]
}
