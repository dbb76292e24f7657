import { describe, expect, it } from 'vitest'
import type { CheckAnswer, CheckQuestion } from '../../../src/core/planning/check.ts'
import type { Lay } from '../../../src/core/planning/lay.ts'
import { keepLay, lastLay } from '../../../src/ui/state/last-lays.ts'
import { testGarment, testPattern } from '../../support/storage.ts'

/** Every test has a pattern of its own, since what is kept outlives it. */
function asking(pattern: string, more: Partial<CheckQuestion> = {}): CheckQuestion {
  return {
    pattern: { ...testPattern(), id: pattern },
    version: 'plain',
    size: 'M',
    garment: testGarment(),
    roles: null,
    clearance: 0,
    ...more,
  }
}

function laid(verdict: Lay['verdict'], x: number): CheckAnswer {
  const placed = { piece: 'body', copy: 1, panel: 'front', turn: 0, mirrored: false, x, y: 0 }
  const placements = verdict === 'cannot' ? [] : [placed]
  return { lay: { verdict, placements } } as unknown as CheckAnswer
}

const startsAt = (question: CheckQuestion) => lastLay(question)?.[0]?.x

describe('the lay that a search begins with', () => {
  it('is the last one of the same pattern, version, size and kind, whatever the measures and flaws', () => {
    const question = asking('like')
    expect(lastLay(question)).toBeUndefined()
    keepLay(question, laid('fits', 1))
    const { garment } = question
    const other = { ...garment, measures: { ...garment.measures, chest: 999 }, flaws: [] }
    expect(startsAt({ ...question, garment: other })).toBe(1)
    expect(startsAt(asking('like', { size: 'S' }))).toBeUndefined()
    expect(startsAt(asking('like', { version: 'lined' }))).toBeUndefined()
    expect(startsAt(asking('unlike'))).toBeUndefined()
    expect(startsAt({ ...question, garment: { ...garment, kind: 'skirt-simple' } as never })).toBeUndefined()
    keepLay(question, laid('fits', 2))
    expect(startsAt(question)).toBe(2)
  })

  it('outlives a figure that is only half typed', () => {
    const question = asking('typed')
    keepLay(question, laid('not-found', 1))
    expect(startsAt(question)).toBe(1)
    keepLay(question, laid('fits', 2))
    keepLay(question, laid('cannot', 3))
    keepLay(question, laid('not-found', 4))
    expect(startsAt(question)).toBe(2)
  })
})
