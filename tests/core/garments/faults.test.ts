import { describe, expect, it } from 'vitest'
import { isQuestion, measureFaults, outlineFaults } from '../../../src/core/garments/faults.ts'
import { kindOf } from '../../../src/core/garments/kinds.ts'
import { startingMeasures } from '../../../src/core/garments/starting.ts'

const tee = kindOf('t-shirt')
const usual = startingMeasures(tee, 'M')

describe('faults of measures', () => {
  it('has none to find with usual measures', () => {
    expect(measureFaults(tee, usual)).toEqual([])
  })

  it('asks about a figure outside the plausible range', () => {
    const [fault, ...more] = measureFaults(tee, { ...usual, chest: 52 })
    expect(more).toEqual([])
    expect(fault).toMatchObject({ field: 'measures.chest', code: 'below', limit: 220 })
    expect(isQuestion(fault!)).toBe(true)
    expect(measureFaults(tee, { ...usual, chest: 5200 })[0]).toMatchObject({ code: 'above', limit: 850 })
  })

  it.each([0, -5, Number.NaN, Number.POSITIVE_INFINITY])('refuses %d', (chest) => {
    const [fault] = measureFaults(tee, { ...usual, chest })
    expect(fault).toMatchObject({ measure: 'chest', code: 'not-positive' })
    expect(isQuestion(fault!)).toBe(false)
  })

  it('refuses figures that contradict one another, naming both', () => {
    const [fault] = measureFaults(tee, { ...usual, 'armhole-depth': 400, 'body-length': 400 })
    expect(fault).toMatchObject({
      measure: 'armhole-depth',
      code: 'not-less',
      other: 'body-length',
      limit: 400,
    })
    expect(fault?.message).toContain('400 mm')
  })

  it('names a measure that is missing', () => {
    const { chest: _, ...rest } = usual
    expect(measureFaults(tee, rest)).toMatchObject([{ measure: 'chest', code: 'missing' }])
  })

  it('minds a measure of a trait only while the trait holds', () => {
    const dress = kindOf('dress')
    const measures = { ...startingMeasures(dress, 'M'), 'sleeve-length': 0 }
    expect(measureFaults(dress, measures, { sleeves: false })).toEqual([])
    expect(measureFaults(dress, measures, { sleeves: true })).toMatchObject([{ measure: 'sleeve-length' }])
  })
})

describe('faults of a drawn outline', () => {
  it.each([
    [
      [
        [0, 0],
        [9, 0],
      ],
      /at least 3/,
    ],
    [
      [
        [0, 0],
        [90, 90],
        [90, 0],
        [0, 90],
      ],
      /crosses/,
    ],
    [
      [
        [0, 0],
        [90, 0],
        [Number.NaN, 9],
      ],
      /not a number/,
    ],
    [
      [
        [0, 0],
        [90, 0],
        [45, 0],
      ],
      /crosses or touches/,
    ],
  ] as const)('says what is wrong with %j', (outline, message) => {
    expect(outlineFaults(outline)[0]).toMatchObject({
      field: 'outline',
      message: expect.stringMatching(message),
    })
  })

  it('finds none in an outline wound either way', () => {
    expect(
      outlineFaults([
        [0, 0],
        [90, 0],
        [45, 60],
      ]),
    ).toEqual([])
    expect(
      outlineFaults([
        [45, 60],
        [90, 0],
        [0, 0],
      ]),
    ).toEqual([])
  })
})
