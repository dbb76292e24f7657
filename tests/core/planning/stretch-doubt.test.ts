import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Stretch } from '../../../src/core/base/terms.ts'
import type { PatternPiece } from '../../../src/core/patterns/pattern.ts'
import type { CheckQuestion } from '../../../src/core/planning/check.ts'
import { layProblemFor } from '../../../src/core/planning/check-problem.ts'
import { clothRefutation } from '../../../src/core/planning/cloth-refutation.ts'
import { standing } from '../../../src/core/planning/doubt.ts'
import { STRETCH_DOUBT } from '../../../src/core/planning/stretch-doubt.ts'
import { answered, asking, boxPiece, patternOf, remnant, SHEET } from '../../support/check-questions.ts'
import { within as withinSeconds } from '../../support/lay-problems.ts'

/** Spare is not what is asked here. */
const within = (seconds: number) => ({ ...withinSeconds(seconds), spareAsked: 0 })

const NEEDS_50: Partial<PatternPiece> = { needs: { across: 50, along: 0 } }

/** A piece with all the room there could be, so that only stretch decides. */
function question(stretch: Stretch | null, more: Partial<PatternPiece> = NEEDS_50): CheckQuestion {
  const pattern = patternOf([boxPiece('front', 20, 20, more)])
  return asking(pattern, remnant(SHEET, { stretch }), { stretchDoubt: STRETCH_DOUBT })
}

function stretching(across: number, more?: Partial<PatternPiece>) {
  return answered(question({ across, along: 0 }, more), within(5))
}

describe('stretch measured by hand', () => {
  // By hand, to ±5 points (common practice): sure from 55 on, possible from 45 on.
  it.each([
    [60, 'fits', 'sure'],
    [55, 'fits', 'sure'],
    [54, 'fits', 'barely'],
    [50, 'fits', 'barely'],
    [49, 'fits', 'just-under'],
    [45, 'fits', 'just-under'],
    [44, 'cannot', undefined],
  ])('%d measured for 50 needed: %s, %s', (across, verdict, stands) => {
    const { lay, stretch } = stretching(across)
    expect([lay.verdict, stretch?.standing]).toEqual([verdict, stands])
  })

  it('is sure of a verdict only where the gauge may be off without harm', () => {
    const garment = remnant(SHEET)
    expect(standing(stretching(55), garment, 0)).toBe('fits-with-room')
    expect(standing(stretching(52), garment, 0)).toBe('fits-if-gauge-right')
    expect(standing(stretching(49), garment, 0)).toBe('fits-if-gauge-right')
    expect(standing(stretching(44), garment, 0)).toBe('cannot')
  })

  it('says what was needed and what was measured', () => {
    const { stretch } = stretching(49)
    expect(stretch).toMatchObject({ piece: 'front', needs: { across: 50 }, has: { across: 49 } })
  })

  it('tells the true figures of a proof, not the eased ones', () => {
    const { lay, problem } = stretching(44)
    expect(lay.reason?.figures).toMatchObject({ needsAcross: 50, mostAcross: 44, doubt: 5 })
    expect(problem.pieces[0]?.needs.across).toBe(50)
  })

  it('hands on a problem that its lay answers, word for word', () => {
    for (const across of [49, 52, 60]) {
      const { problem } = stretching(across)
      expect(clothRefutation(problem), `${across}`).toBeNull()
      expect(problem.pieces[0]?.needs.across).toBe(across < 50 ? 45 : 50)
    }
  })

  it('takes the gauge at its word where no doubt is told', () => {
    const { stretchDoubt: _, ...exact } = question({ across: 49, along: 0 })
    expect(answered(exact, within(5)).lay).toMatchObject({ verdict: 'cannot', reason: { kind: 'stretch' } })
  })

  it('never makes stretch of cloth that gives nothing', () => {
    const few = { needs: { across: 4, along: 0 } }
    expect(stretching(0, few).lay.verdict).toBe('cannot')
    expect(stretching(1, few).stretch?.standing).toBe('just-under')
  })

  it('prefers a lay that is sure to one that hangs on the gauge', () => {
    // Crosswise it would go too, if 47 were 50.
    const { lay, stretch } = answered(
      question({ across: 60, along: 47 }, { ...NEEDS_50, grain: 'either' }),
      within(5),
    )
    expect(stretch?.standing).toBe('sure')
    expect(lay.placements.every(({ turn }) => turn % 180 === 0)).toBe(true)
  })

  it('goes on to what hangs on the gauge where nothing sure is found', () => {
    // 200 × 90 on 100 × 300: only crosswise, where it gives 47.
    const wide = boxPiece('front', 200, 90, { ...NEEDS_50, grain: 'either' })
    const tall = SHEET.map(([x, y]) => [y, x] as const)
    const garment = remnant(tall, { stretch: { across: 60, along: 47 } })
    const asked = asking(patternOf([wide]), garment, { stretchDoubt: 5 })
    const { lay, stretch } = answered(asked, within(5))
    expect([lay.verdict, stretch?.standing]).toEqual(['fits', 'just-under'])
  })
})

describe('stretch that was not measured', () => {
  it('is no proof of anything: it fits on condition', () => {
    const { lay, stretch } = answered(question(null), within(5))
    expect([lay.verdict, stretch?.standing]).toEqual(['fits', 'unmeasured'])
  })

  it('leaves a proof of size standing', () => {
    const large = patternOf([boxPiece('front', 2000, 2000, NEEDS_50)])
    const { lay } = answered(asking(large, remnant(SHEET), { stretchDoubt: 5 }), within(5))
    expect(lay.verdict).toBe('cannot')
    expect(lay.reason?.kind).not.toBe('stretch')
  })

  it('matters nothing to pieces that need none', () => {
    expect(answered(question(null, {}), within(5)).stretch).toBeUndefined()
  })
})

describe('any need, measure and doubt', () => {
  it('cannot exactly where even the doubt does not help; sure exactly where it does no harm', () => {
    const figure = fc.integer({ min: 1, max: 120 })
    fc.assert(
      fc.property(figure, figure, fc.integer({ min: 0, max: 20 }), (need, has, doubt) => {
        const asked = {
          ...question({ across: has, along: 0 }, { needs: { across: need, along: 0 } }),
          stretchDoubt: doubt,
        }
        const { lay, stretch } = answered(asked, within(5))
        expect(lay.verdict === 'cannot').toBe(has < need - doubt)
        expect(stretch?.standing === 'sure').toBe(has >= need + doubt)
        expect(layProblemFor(asked).ok).toBe(true)
      }),
      { numRuns: 200 },
    )
  })
})
