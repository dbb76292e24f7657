import { describe, expect, it } from 'vitest'
import { KIND_IDS, kindOf } from '../../../src/core/garments/index.ts'
import { emptyGarment } from '../../../src/core/garments/starting.ts'
import { clothWords, garmentMatches, measuresInShort, wordsOf } from '../../../src/ui/words/garment-words.ts'
import { testGarment } from '../../support/storage.ts'

const CM = { units: 'cm', inchFraction: 8 } as const

describe('a garment in a line', () => {
  it.each(KIND_IDS.filter((id) => kindOf(id).measures.length > 0))('gives two measures of a %s', (id) => {
    expect(measuresInShort(emptyGarment(id, 'any'), CM)).toMatch(/^\d+(\.\d)?\s×\s\d+(\.\d)?\scm$/)
  })

  it('gives the whole size of a drawn shape, and nothing of one not measured', () => {
    const outline = [
      [0, 0],
      [620, 0],
      [410, 740],
    ] as const
    expect(measuresInShort(testGarment({ kind: 'free-outline', outline }), CM)).toBe(
      '62\u00a0×\u00a074\u00a0cm',
    )
    expect(measuresInShort(testGarment({ measures: { chest: 520 } }), CM)).toBe('')
  })

  it('tells the cloth, and that it is not washed', () => {
    expect(clothWords(testGarment({ washed: false }))).toBe(
      'blue, cotton, knit, stretches 40 % across, 20 % along, not washed',
    )
  })
})

describe('searching the stash', () => {
  const garment = testGarment({ name: 'Jérsey tee', note: 'From the flea market', place: 'Box 3' })

  it.each(['', '  ', 'jersey', 'JER', 'blue cot', 't-shirt', 'tee blue', 'flea', 'box 3'])(
    '“%s” finds it',
    (typed) => {
      expect(garmentMatches(garment, wordsOf(typed))).toBe(true)
    },
  )

  it.each(['ersey', 'jersey red', 'dress'])('“%s” does not', (typed) => {
    expect(garmentMatches(garment, wordsOf(typed))).toBe(false)
  })
})
