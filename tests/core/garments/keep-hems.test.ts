import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Garment } from '../../../src/core/garments/garment.ts'
import { HEM_DEPTH, SEAM_LOSS } from '../../../src/core/garments/losses.ts'
import { panelsKeepingHems, panelsOf } from '../../../src/core/garments/panels-of.ts'
import { emptyGarment } from '../../../src/core/garments/starting.ts'
import { type Point, polygonBox } from '../../../src/core/geometry/index.ts'
import { distanceToSegment, MEASURED_KINDS, oddGarment } from '../../support/garments.ts'
import { toJsts, uncoveredArea } from '../../support/planar.ts'

describe('a garment opened with its hems kept', () => {
  it('has a T-shirt front down to the fold of its hem, and loses its side seams', () => {
    const garment: Garment = { ...emptyGarment('t-shirt', 'tee'), opening: 'cut' }
    const front = panelsKeepingHems(garment).find(({ id }) => id === 'front')
    const cut = panelsOf(garment).find(({ id }) => id === 'front')
    const width = garment.measures['hem-width'] as number
    expect(front?.hemDepth).toBe(HEM_DEPTH)
    expect(front?.hems).toHaveLength(1)
    const k = front?.hems[0] as number
    const [from, to] = [front?.outline[k], front?.outline[k + 1]] as [Point, Point]
    expect(from[1]).toBeCloseTo(0, 6)
    expect(to[1]).toBeCloseTo(0, 6)
    expect(to[0] - from[0]).toBeCloseTo(width - 2 * SEAM_LOSS, 6)
    expect(polygonBox(cut?.outline ?? []).minY).toBeCloseTo(HEM_DEPTH, 6)
  })

  it('has no hem at an elastic waist', () => {
    const leggings = emptyGarment('leggings', 'leggings')
    const [leg] = panelsKeepingHems({ ...leggings, traits: { ...leggings.traits, 'elastic-waist': true } })
    expect(leg?.hems).toHaveLength(1)
    expect(leg?.hemDepth).toBe(HEM_DEPTH)
  })

  it.each(MEASURED_KINDS)('%s: covers what cutting leaves, and has its hems where they were sewn', (kind) => {
    fc.assert(
      fc.property(oddGarment(kind, 'cut'), (garment) => {
        const sewn = panelsKeepingHems({ ...garment, opening: 'unpicked' })
        const kept = panelsKeepingHems(garment)
        for (const cut of panelsOf(garment)) {
          const whole = kept.find(({ id }) => id === cut.id)
          // Cutting along a hem may part a panel elsewhere, but never takes less.
          const covered = toJsts(whole?.outline ?? [])
          expect(uncoveredArea(toJsts(cut.outline), covered)).toBeLessThan(1)
        }
        for (const { id, outline, hems } of kept) {
          const as = sewn.find((panel) => panel.id === id)
          const folds = (as?.hems ?? []).map((k) => ends(as?.outline ?? [], k))
          for (const k of hems)
            for (const end of ends(outline, k))
              expect(Math.min(...folds.map(([a, b]) => distanceToSegment(end, a, b)))).toBeLessThan(0.01)
        }
      }),
      { numRuns: 30, seed: 3 },
    )
  })
})

function ends(outline: readonly Point[], k: number): readonly [Point, Point] {
  return [outline[k] as Point, outline[(k + 1) % outline.length] as Point]
}
