import { describe, expect, it } from 'vitest'
import { queryOf } from '../../../src/ui/state/check-query.ts'
import { CLOTH, testDraft, testPattern } from '../../support/check-draft.ts'

describe('what can be asked', () => {
  it('nothing without a pattern, a size it has, a garment and its measures, in this order', () => {
    const pattern = testPattern()
    expect(queryOf(testDraft(), null, CLOTH, 0)).toEqual({ ask: false, missing: 'pattern' })
    expect(queryOf(testDraft({ size: 'XL' }), pattern, CLOTH, 0)).toEqual({ ask: false, missing: 'pattern' })
    expect(queryOf(testDraft(), pattern, null, 0)).toEqual({ ask: false, missing: 'measures' })
    expect(queryOf(testDraft({ measures: {} }), pattern, CLOTH, 0)).toEqual({
      ask: false,
      missing: 'measures',
    })
  })

  it('a question as told, when stretch does not matter', () => {
    expect(queryOf(testDraft(), testPattern(), CLOTH, 3)).toMatchObject({
      ask: true,
      question: { version: 'plain', size: 'M', roles: null, clearance: 3, garment: { kind: 'cloth' } },
      ifStretch: null,
      atBest: null,
    })
  })

  it('a question on condition, while needed stretch has not been told: as needed, and at best', () => {
    const pattern = testPattern({ needs: { across: 40, along: 10 } })
    const query = queryOf(testDraft(), pattern, CLOTH, 0)
    if (!query.ask || !query.atBest) throw new Error('nothing to ask')
    expect(query.ifStretch).toEqual({ across: 40, along: 10 })
    expect(query.question.garment.cloth.stretch).toEqual({ across: 40, along: 10 })
    const best = query.atBest.garment.cloth.stretch
    expect(Math.min(best?.across ?? 0, best?.along ?? 0)).toBeGreaterThan(400)
    const told = queryOf(testDraft({ stretch: { across: 50, along: 20 } }), pattern, CLOTH, 0)
    expect(told).toMatchObject({ ifStretch: null, atBest: null })
  })

  it('only the roles that shall come from this garment; all of them if none is left', () => {
    const draft = testDraft({ version: 'lined', otherRoles: ['lining'] })
    expect(queryOf(draft, testPattern(), CLOTH, 0)).toMatchObject({ question: { roles: ['main'] } })
    const none = { ...draft, otherRoles: ['lining', 'main'] }
    expect(queryOf(none, testPattern(), CLOTH, 0)).toMatchObject({ question: { roles: null } })
  })
})
