import { describe, expect, it } from 'vitest'
import { kindOf, LABEL_SIZES, startingMeasures } from '../../../../src/core/garments/index.ts'
import { MEASURED_KINDS, TELLING_MEASURES } from '../../../../src/core/garments/telling.ts'
import { byWidth } from '../../../../src/core/planning/shopping-brief/rungs.ts'
import { isPossible, usualMeasures } from '../../../../src/core/planning/shopping-brief/usual-garment.ts'

describe('a garment of usual proportions', () => {
  it('has at the width of a label size no measure larger than that size starts with, and most alike', () => {
    for (const kind of MEASURED_KINDS.filter((id) => id !== 'cloth'))
      for (const size of LABEL_SIZES) {
        const start = startingMeasures(kindOf(kind), size)
        const usual = usualMeasures(kind, start[TELLING_MEASURES[kind].width] as number)
        for (const [id, value] of Object.entries(usual))
          expect(value).toBeLessThanOrEqual(start[id] as number)
        const alike = Object.entries(usual).filter(([id, value]) => value === start[id]).length
        // Adult waists begin below the largest child's, so the children's count as less.
        expect(alike).toBeGreaterThanOrEqual(Object.keys(usual).length - 1)
      }
  })

  it('lies half-way between two sizes in every measure where it does in width', () => {
    const [m, l] = (['M', 'L'] as const).map((size) => startingMeasures(kindOf('t-shirt'), size))
    const half = usualMeasures('t-shirt', (m!.chest! + l!.chest!) / 2)
    for (const id of Object.keys(half)) expect(half[id]).toBeCloseTo((m![id]! + l![id]!) / 2, 9)
  })

  it('shrinks alike below the smallest size, and above the largest only grows longer', () => {
    const small = startingMeasures(kindOf('t-shirt'), '104')
    const smaller = usualMeasures('t-shirt', small.chest! / 1.25)
    for (const id of Object.keys(smaller)) expect(smaller[id]).toBeCloseTo(small[id]! / 1.25, 9)
    const large = startingMeasures(kindOf('t-shirt'), 'XXL')
    const larger = usualMeasures('t-shirt', large.chest! * 1.2)
    expect(larger['body-length']).toBeCloseTo(large['body-length']! * 1.2, 9)
    expect(larger['shoulder-width']).toBe(large['shoulder-width'])
  })

  it.each(MEASURED_KINDS)(
    'of every width a tape can show is a possible %s, no smaller than a narrower one',
    (kind) => {
      const rungs = byWidth({ kind, units: 'cm' })
      expect(rungs.length).toBeGreaterThan(50)
      for (const [k, { measures }] of rungs.entries()) {
        expect(isPossible(kind, measures)).toBe(true)
        const before = rungs[k - 1]?.measures ?? {}
        for (const [id, value] of Object.entries(before))
          expect(measures[id]).toBeGreaterThanOrEqual(value - 1e-9)
      }
    },
  )
})
