import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { measureFaults } from '../../../src/core/garments/faults.ts'
import { KIND_IDS, LABEL_SIZES, type Measures } from '../../../src/core/garments/kind.ts'
import { kindOf } from '../../../src/core/garments/kinds.ts'
import { measuresShown } from '../../../src/core/garments/shown-figure.ts'
import { startingMeasures, usualTraits } from '../../../src/core/garments/starting.ts'
import { polygonBox } from '../../../src/core/geometry/polygon.ts'
import { polygonIsSimple } from '../../../src/core/geometry/simple.ts'
import type { Point } from '../../../src/core/geometry/types.ts'
import { MEASURED_KINDS } from '../../support/garments.ts'

const tee = kindOf('t-shirt')
const usual = usualTraits(tee)
const start = startingMeasures(tee, 'M')

/** Any figure that can be typed: none, a slip by a factor of ten either way, or anything. */
const typed = (usually: number) =>
  fc.oneof(
    fc.constant(undefined),
    fc.constantFrom(usually / 10, usually * 10, usually),
    fc.double({ min: 0.1, max: 99_999, noNaN: true }),
    fc.integer({ min: Math.round(usually / 2), max: usually * 2 }),
  )

describe('the drawing beside the measures', () => {
  it('follows plausible figures', () => {
    const now = { ...start, chest: 600, 'body-length': 700 }
    expect(measuresShown(tee, now, usual, start)).toEqual(now)
  })

  it('stays as it was where a figure is implausible, and goes on with the others', () => {
    const last = { ...start, chest: 600 }
    expect(measuresShown(tee, { ...last, chest: 60, 'sleeve-length': 250 }, usual, last)).toEqual({
      ...last,
      'sleeve-length': 250,
    })
    expect(measuresShown(tee, { ...last, chest: 6000 }, usual, last)).toEqual(last)
  })

  it('stays as it was where figures contradict each other', () => {
    const last: Measures = { ...start, 'armhole-depth': 230 }
    expect(measuresShown(tee, { ...last, 'body-length': 220 }, usual, last)['body-length']).toBe(
      last['body-length'],
    )
  })

  it.each(MEASURED_KINDS)('starts plausible for every label: %s', (id) => {
    const kind = kindOf(id)
    for (const size of [null, ...LABEL_SIZES]) {
      const measures = startingMeasures(kind, size)
      expect(measureFaults(kind, measures, usualTraits(kind)), `${size}`).toEqual([])
      expect(measuresShown(kind, measures, usualTraits(kind), {}), `${size}`).toEqual(measures)
    }
  })

  it.each(MEASURED_KINDS)(
    'is finite, simple and inside its stage, whatever is typed one after another: %s',
    (id) => {
      const kind = kindOf(id)
      const from = startingMeasures(kind, 'M')
      const figures = fc.record(
        Object.fromEntries(kind.measures.map((spec) => [spec.id, typed(spec.start.M)])),
      )
      const traits = fc.record(Object.fromEntries(kind.traits.map((trait) => [trait.id, fc.boolean()])))
      fc.assert(
        fc.property(fc.array(figures, { minLength: 1, maxLength: 4 }), traits, (entries, made) => {
          let last: Measures = from
          for (const entry of entries) {
            const told = Object.entries(entry).filter(([, value]) => value !== undefined)
            last = measuresShown(kind, { ...from, ...Object.fromEntries(told) } as Measures, made, last)
            expectSound(kind.figure(last, made))
          }
        }),
        { numRuns: 300 },
      )
    },
  )
})

/** Written anew: shares nothing with the source but the reference predicates. */
function expectSound({ shapes, seams, tapes }: ReturnType<ReturnType<typeof kindOf>['figure']>): void {
  expect(shapes.length).toBeGreaterThan(0)
  for (const shape of shapes) {
    expect(shape.flat().every(Number.isFinite)).toBe(true)
    expect(polygonIsSimple(shape)).toBe(true)
  }
  const { minX, maxX, minY, maxY } = polygonBox(shapes.flat())
  expect(Math.max(maxX - minX, maxY - minY)).toBeLessThan(20_000)
  // The stage is the shapes with a margin of 6 % of the larger side.
  const margin = 0.06 * Math.max(maxX - minX, maxY - minY)
  const onStage = ([x, y]: Point) =>
    x >= minX - margin && x <= maxX + margin && y >= minY - margin && y <= maxY + margin
  for (const point of [...seams.flat(), ...tapes.flatMap(({ from, to }) => [from, to])])
    expect(onStage(point), `${point}`).toBe(true)
}

it('every kind but a drawn outline is measured', () => {
  expect([...MEASURED_KINDS, 'free-outline'].sort()).toEqual([...KIND_IDS].sort())
})
