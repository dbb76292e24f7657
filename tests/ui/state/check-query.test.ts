import { describe, expect, it } from 'vitest'
import { queryOf } from '../../../src/ui/state/check-query.ts'
import { CLOTH, testDraft, testPattern } from '../../support/check-draft.ts'

/** No gap, and the gauge at its word. */
const EXACT = { clearance: 0, stretchDoubt: 0 }

describe('what can be asked', () => {
  it('nothing without a pattern, a size it has, a garment and its measures, in this order', () => {
    const pattern = testPattern()
    expect(queryOf(testDraft(), null, CLOTH, EXACT)).toEqual({ ask: false, missing: 'pattern' })
    expect(queryOf(testDraft({ size: 'XL' }), pattern, CLOTH, EXACT)).toEqual({
      ask: false,
      missing: 'pattern',
    })
    expect(queryOf(testDraft(), pattern, null, EXACT)).toEqual({ ask: false, missing: 'measures' })
    expect(queryOf(testDraft({ measures: {} }), pattern, CLOTH, EXACT)).toEqual({
      ask: false,
      missing: 'measures',
    })
  })

  it('a question as told, when stretch does not matter', () => {
    expect(queryOf(testDraft(), testPattern(), CLOTH, { ...EXACT, clearance: 3 })).toMatchObject({
      ask: true,
      question: { version: 'plain', size: 'M', roles: null, clearance: 3, garment: { kind: 'cloth' } },
      ifStretch: null,
      atBest: null,
    })
  })

  it('a question on condition, while needed stretch has not been told: as needed, and at best', () => {
    const pattern = testPattern({ needs: { across: 40, along: 10 } })
    const query = queryOf(testDraft(), pattern, CLOTH, EXACT)
    if (!query.ask || !query.atBest) throw new Error('nothing to ask')
    expect(query.ifStretch).toEqual({ across: 40, along: 10 })
    expect(query.question.garment.cloth.stretch).toEqual({ across: 40, along: 10 })
    const best = query.atBest.garment.cloth.stretch
    expect(Math.min(best?.across ?? 0, best?.along ?? 0)).toBeGreaterThan(400)
    const told = queryOf(testDraft({ stretch: { across: 50, along: 20 } }), pattern, CLOTH, EXACT)
    expect(told).toMatchObject({ ifStretch: null, atBest: null })
  })

  it('doubts the stretch that was measured, and none that is taken for granted', () => {
    const pattern = testPattern({ needs: { across: 40, along: 0 } })
    const doubting = { ...EXACT, stretchDoubt: 5 }
    const told = queryOf(testDraft({ stretch: { across: 39, along: 0 } }), pattern, CLOTH, doubting)
    expect(told).toMatchObject({ question: { stretchDoubt: 5 } })
    const granted = queryOf(testDraft(), pattern, CLOTH, doubting)
    expect(granted.ask && granted.question.stretchDoubt).toBeUndefined()
  })

  it('only the roles that shall come from this garment; all of them if none is left', () => {
    const draft = testDraft({ version: 'lined', otherRoles: ['lining'] })
    expect(queryOf(draft, testPattern(), CLOTH, EXACT)).toMatchObject({ question: { roles: ['main'] } })
    const none = { ...draft, otherRoles: ['lining', 'main'] }
    expect(queryOf(none, testPattern(), CLOTH, EXACT)).toMatchObject({ question: { roles: null } })
  })
})
