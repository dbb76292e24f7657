import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { draftsOf } from '../../../src/core/garments/drafts-of.ts'
import { isQuestion, measureFaults } from '../../../src/core/garments/faults.ts'
import type { Garment } from '../../../src/core/garments/garment.ts'
import { KIND_IDS, LABEL_SIZES } from '../../../src/core/garments/kind.ts'
import { kindOf } from '../../../src/core/garments/kinds.ts'
import { lossWhenCut } from '../../../src/core/garments/losses.ts'
import { sewn } from '../../../src/core/garments/opening/sewn.ts'
import { panelsOf } from '../../../src/core/garments/panels-of.ts'
import { emptyGarment, startingMeasures } from '../../../src/core/garments/starting.ts'
import { pointInPolygon, polygonArea, polygonBox } from '../../../src/core/geometry/polygon.ts'
import { polygonIsSimple } from '../../../src/core/geometry/simple.ts'
import type { Point, Polygon } from '../../../src/core/geometry/types.ts'
import { distanceToSegment, MEASURED_KINDS, oddGarment, plausibleGarment } from '../../support/garments.ts'

const RUNS = { numRuns: 40 }

function totalArea(garment: Garment): number {
  return panelsOf(garment).reduce((sum, panel) => sum + polygonArea(panel.outline), 0)
}

function cornersAndMiddles(outline: Polygon): readonly Point[] {
  return outline.flatMap((a, k) => {
    const b = outline[(k + 1) % outline.length] as Point
    return [a, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as Point]
  })
}

describe.each(KIND_IDS)('%s', (id) => {
  const kind = kindOf(id)

  it('says what it is and asks at most seven measures', () => {
    expect(kind.id).toBe(id)
    for (const asked of [...kind.traits.map((trait) => trait.id), undefined]) {
      const specs = kind.measures.filter((spec) => spec.when === undefined || spec.when === asked)
      expect(specs.length).toBeLessThanOrEqual(7)
    }
    expect(new Set(kind.measures.map((spec) => spec.id)).size).toBe(kind.measures.length)
    const traits = kind.traits.map((trait) => trait.id)
    for (const spec of kind.measures) if (spec.when) expect(traits).toContain(spec.when)
  })

  it('starts every label size with measures nobody would question', () => {
    for (const size of LABEL_SIZES) {
      const traits = Object.fromEntries(kind.traits.map((trait) => [trait.id, true]))
      expect(measureFaults(kind, startingMeasures(kind, size), traits)).toEqual([])
    }
  })

  it('draws one tape for every measure it asks, as long as the measure says', () => {
    const garment = emptyGarment(id, 'any')
    for (const holds of [true, false]) {
      const traits = Object.fromEntries(kind.traits.map((trait) => [trait.id, holds]))
      const asked = kind.measures.filter((spec) => spec.when === undefined || holds)
      const { shapes, tapes } = kind.figure(garment.measures, traits)
      expect(shapes.length).toBeGreaterThan(0)
      expect(tapes.map((tape) => tape.measure).sort()).toEqual(asked.map((spec) => spec.id).sort())
      // Two figures are read along a curve or a slant in the drawing, so only the straight ones can be held to length.
      for (const { measure, from, to } of tapes.filter(({ measure }) => !bent(id, measure))) {
        expect(Math.hypot(to[0] - from[0], to[1] - from[1])).toBeCloseTo(
          garment.measures[measure] as number,
          6,
        )
      }
    }
  })
})

/** The flared skirt's waist and hem are drawn as chords of their curves; an inseam is drawn a little slanted. */
function bent(id: string, measure: string): boolean {
  return measure === 'inseam' || (id === 'flared-skirt' && measure !== 'skirt-length')
}

describe('starting measures', () => {
  it('do not shrink from one letter size, or one child size, to the next', () => {
    for (const id of KIND_IDS) {
      for (const spec of kindOf(id).measures) {
        for (const sizes of [LABEL_SIZES.slice(0, 5), LABEL_SIZES.slice(5)]) {
          const values = sizes.map((size) => spec.start[size])
          expect(values).toEqual([...values].sort((a, b) => a - b))
        }
      }
    }
  })
})

describe.each(MEASURED_KINDS)('panels of any plausible %s', { timeout: 30_000 }, (id) => {
  it('are simple, counter-clockwise and finite, with one kind of edge each, however odd the measures', () => {
    fc.assert(
      fc.property(fc.oneof(plausibleGarment(id), oddGarment(id)), (garment) => {
        const panels = panelsOf(garment)
        expect(new Set(panels.map((panel) => panel.id)).size).toBe(panels.length)
        for (const panel of panels) {
          expect(panel.outline.flat().every(Number.isFinite)).toBe(true)
          expect(polygonIsSimple(panel.outline)).toBe(true)
          expect(polygonArea(panel.outline)).toBeGreaterThan(0)
          expect(panel.edges).toHaveLength(panel.outline.length)
        }
      }),
      RUNS,
    )
  })

  it('all come of their drafts, which start at the origin', () => {
    fc.assert(
      fc.property(plausibleGarment(id), (garment) => {
        const drafts = draftsOf(garment)
        expect(drafts.length).toBeGreaterThan(0)
        expect(panelsOf(garment).map((panel) => panel.id)).toEqual(drafts.map((draft) => draft.id))
        for (const draft of drafts) {
          const outline = sewn(draft).edges.map((edge) => edge.from)
          expect(polygonBox(outline)).toMatchObject({ minX: 0, minY: 0 })
        }
      }),
      RUNS,
    )
  })

  it('keep clear of every seam and hem by what is lost there when cut', () => {
    fc.assert(
      fc.property(fc.oneof(plausibleGarment(id, 'cut'), oddGarment(id, 'cut')), (garment) => {
        const drafts = new Map(draftsOf(garment).map((draft) => [draft.id, sewn(draft).edges]))
        for (const panel of panelsOf(garment)) {
          const edges = drafts.get(panel.id) ?? []
          const cloth = edges.map((edge) => edge.from)
          const lost = edges.map((edge) => lossWhenCut(edge.was, edge.depth))
          for (const point of cornersAndMiddles(panel.outline)) {
            const distances = edges.map((edge) => distanceToSegment(point, edge.from, edge.to))
            const spare = distances.map((distance, k) => distance - lost[k]!)
            if (Math.min(...spare) < -0.01)
              throw new Error(`${panel.id} keeps cloth that is lost at ${point}`)
            const inside = Math.min(...distances) < 0.01 || pointInPolygon(point, cloth) === 1
            if (!inside) throw new Error(`${panel.id} has no cloth at ${point}`)
          }
        }
      }),
      RUNS,
    )
  })

  it('give the cloth as sewn and its hems when unpicked, and less when cut', () => {
    fc.assert(
      fc.property(plausibleGarment(id, 'unpicked'), (garment) => {
        let cloth = 0
        let hems = 0
        let lost = 0
        for (const { edges } of draftsOf(garment).map(sewn)) {
          cloth += polygonArea(edges.map((edge) => edge.from))
          for (const { from, to, was, depth } of edges) {
            const length = Math.hypot(to[0] - from[0], to[1] - from[1])
            hems += depth * length
            lost += lossWhenCut(was, depth) * length
          }
        }
        const unpicked = totalArea(garment)
        expect(unpicked).toBeGreaterThan(cloth - 1)
        // A let-down hem that runs round a curve is a little longer than its fold.
        expect(unpicked).toBeLessThan(cloth + hems * 1.2 + 1)
        const cut = totalArea({ ...garment, opening: 'cut' })
        expect(cut).toBeLessThan(cloth + 1)
        expect(cut).toBeGreaterThan(cloth - 1.1 * lost - 1)
      }),
      RUNS,
    )
  })

  it('do not lose area when a width grows', () => {
    const widths = kindOf(id).measures.filter((spec) =>
      /^(chest|hem|waist|hip|thigh|leg|cuff|cloth)/.test(spec.id),
    )
    fc.assert(
      fc.property(
        plausibleGarment(id),
        fc.constantFrom(...widths),
        fc.integer({ min: 10, max: 60 }),
        (garment, { id: width }, more) => {
          const measures = { ...garment.measures, [width]: (garment.measures[width] as number) + more }
          fc.pre(measureFaults(kindOf(id), measures, garment.traits).every(isQuestion))
          // A curve traced with another number of chords may differ by its flatness along its length.
          expect(totalArea({ ...garment, measures })).toBeGreaterThan(totalArea(garment) - 400)
        },
      ),
      RUNS,
    )
  })
})
