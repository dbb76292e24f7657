import { describe, expect, it } from 'vitest'
import type { ClothMatch } from '../../../src/core/planning/cloth-match.ts'
import type { Lay } from '../../../src/core/planning/lay.ts'
import type { StretchStanding } from '../../../src/core/planning/stretch-doubt.ts'
import { DEFAULT_SETTINGS } from '../../../src/storage/stores/settings.ts'
import { type LiveVerdict, signOf } from '../../../src/ui/state/verdict.ts'
import { spareFigure, spareWords, stripWords, verdictWords } from '../../../src/ui/words/verdict-words.ts'
import { testPattern } from '../../support/check-draft.ts'

const INCHES = { ...DEFAULT_SETTINGS, units: 'in' } as const

function answered(
  lay: Partial<Lay>,
  rests: Partial<Extract<LiveVerdict, { state: 'answered' }>> = {},
): Extract<LiveVerdict, { state: 'answered' }> {
  const whole: Lay = {
    verdict: 'fits',
    placements: [],
    reason: null,
    leftOut: [],
    spare: null,
    spareIs: (lay.verdict ?? 'fits') === 'fits' ? 'found' : null,
    elapsedMs: 1,
    ...lay,
  }
  return {
    state: 'answered',
    sign: signOf({ lay: whole }, { kind: 'cloth', traits: {} }, DEFAULT_SETTINGS.tapeDoubt),
    roomAsked: DEFAULT_SETTINGS.tapeDoubt,
    answer: {
      problem: { name: '', clearance: 0, seconds: 1, panels: [], pieces: [] },
      lay: whole,
      heads: 'up',
    },
    looking: false,
    odd: [],
    byUsual: false,
    ifStretch: null,
    ...rests,
  }
}

const sentence = (verdict: LiveVerdict, settings = DEFAULT_SETTINGS) => {
  const { headline, detail } = verdictWords(verdict, settings, testPattern())
  return `${headline} | ${detail ?? ''}`
}

describe('the verdict in words', () => {
  it('says what is to spare in her units', () => {
    expect(sentence(answered({ spare: 12 }))).toBe('Fits, with 12\u00a0mm to spare all round | ')
    expect(verdictWords(answered({ spare: 12.7 }), INCHES, null).headline).toContain('1/2\u00a0in')
  })

  it('says of what was found so far that it is so much at least', () => {
    const verdict = answered({ spare: 23, spareIs: 'at-least' })
    expect(sentence(verdict)).toBe('Fits, with at least 2.3\u00a0cm to spare all round | ')
    expect(stripWords(verdict, DEFAULT_SETTINGS).detail).toBe('at least 2.3 cm to spare')
    expect(spareFigure(verdict.answer.lay, DEFAULT_SETTINGS)).toBe('at least 2.3\u00a0cm')
  })

  it.each([null, 0.4])('never writes what was not found in time as 0: %s', (spare) => {
    for (const looking of [true, false]) {
      const verdict = answered({ spare, spareIs: 'at-least' }, { looking })
      const said = [sentence(verdict), stripWords(verdict, DEFAULT_SETTINGS).detail]
      expect(said.join()).not.toMatch(/\b0 mm|tape is right|[Mm]easure again/)
      expect(sentence(verdict)).toMatch(looking ? /^Fits \| Working out/ : /^Fits \| .*8 mm to spare would/)
      expect(spareWords(verdict.answer.lay, DEFAULT_SETTINGS)).toBeNull()
    }
  })

  it('says that more is looked for, and that the search was stopped before it was enough', () => {
    const lay = { spare: 3, spareIs: 'at-least' } as const
    expect(sentence(answered(lay, { looking: true }))).toMatch(/at least 3\u00a0mm .*\| Working out whether/)
    expect(sentence(answered(lay))).toMatch(/at least 3\u00a0mm .*\| The search for more was stopped/)
    expect(sentence(answered({ spare: 19 }, { looking: true }))).toBe(
      'Fits, with 19\u00a0mm to spare all round | ',
    )
    expect(sentence(answered({ ...lay, spare: 9 }))).toMatch(/at least 9\u00a0mm .*\| $/)
  })

  it('says that the tape decides when less is to spare than it may be off', () => {
    expect(sentence(answered({ spare: 3 }))).toMatch(
      /^Fits only if your tape is right: 3\u00a0mm .*8 mm to spare would make it sure/,
    )
  })

  describe('where the stretch decides', () => {
    const hanging = (standing: StretchStanding, has: number | null, spare = 20): LiveVerdict => {
      const plain = answered({ spare })
      if (plain.state !== 'answered') throw new Error('not answered')
      const stretch = {
        standing,
        piece: 'side',
        needs: { across: 50, along: 0 },
        has: has === null ? null : { across: has, along: 10 },
      }
      const answer = { ...plain.answer, stretch }
      return { ...plain, answer, sign: signOf(answer, { kind: 'cloth', traits: {} }, 8) }
    }

    it('says so, with what was needed and what was measured', () => {
      expect(sentence(hanging('just-under', 49))).toMatch(
        /^Just enough stretch, if your gauge is right \| “Side” needs 50 % across; you measured 49 % across/,
      )
      expect(sentence(hanging('barely', 52))).toMatch(/^Fits if your gauge is right \| .*52 % across/)
      expect(sentence(hanging('unmeasured', null))).toMatch(
        /^Fits if it stretches 50 % across \| .*never measured/,
      )
      expect(stripWords(hanging('just-under', 49), DEFAULT_SETTINGS).detail).toBe(
        'Needs 50 % across, measured 49 % across',
      )
    })

    it('tells of the tape beside it, where that is in doubt too', () => {
      expect(sentence(hanging('just-under', 49))).not.toContain('tape')
      expect(sentence(hanging('just-under', 49, 3))).toContain('only if your tape is right')
    })

    it('says nothing of it where it is sure', () => {
      expect(sentence(hanging('sure', 60))).toBe('Fits, with 2\u00a0cm to spare all round | ')
    })
  })

  describe('how the cloth is made', () => {
    const told = (match: ClothMatch, lay: Partial<Lay> = { spare: 20 }): LiveVerdict => {
      const plain = answered(lay)
      if (plain.state !== 'answered') throw new Error('not answered')
      const answer = { ...plain.answer, match }
      return { ...plain, answer, sign: signOf(answer, { kind: 'cloth', traits: {} }, 8) }
    }
    const knit: ClothMatch = {
      as: 'other',
      meant: ['woven', 'stretch-woven'],
      makes: ['knit'],
      assumed: false,
    }

    it('is told in the headline where the pattern is for another', () => {
      expect(sentence(told(knit))).toMatch(
        /^Fits, but the pattern is for wovens or stretch wovens \| .*this cloth is a knit.* yours to say/,
      )
      expect(stripWords(told(knit), DEFAULT_SETTINGS).detail).toBe('Not the cloth it is for')
    })

    it('is told as assumed where nobody said it', () => {
      expect(sentence(told({ ...knit, assumed: true }))).toMatch(/usually knits/)
      const meant: ClothMatch = { as: 'meant', meant: ['knit'], makes: ['knit'], assumed: true }
      expect(sentence(told(meant))).toMatch(/^Fits, with 2\u00a0cm .*Taken for a knit, as .* usually are/)
      expect(sentence(told({ ...meant, assumed: false }))).not.toContain('knit')
    })

    it('is told as not said, without doubt for it', () => {
      const words = sentence(told({ as: 'not-said', meant: ['woven'], makes: [], assumed: false }))
      expect(words).toMatch(/^Fits, with 2\u00a0cm .*for wovens; how this cloth is made was not said/)
    })

    it('is told beside a no as well, and beside what the tape decides', () => {
      const reason = { kind: 'area', text: '', pieces: ['side'], figures: { needed: 2, available: 1 } }
      expect(sentence(told(knit, { verdict: 'cannot', reason }))).toMatch(/^Cannot .*this cloth is a knit/)
      expect(sentence(told(knit, { spare: 1 }))).toMatch(/only if your tape is right/)
    })
  })

  it('asks to measure again what is rare, whatever the answer', () => {
    const odd = ['chest', 'hem-width']
    expect(sentence(answered({ spare: 20 }, { odd, sign: 'doubt' }))).toMatch(
      /^Fits, if the figures are right \| Chest and Hem are rare .* Measure them again/,
    )
    const reason = { kind: 'area', text: '', pieces: ['side'], figures: { needed: 2, available: 1 } }
    const no = answered({ verdict: 'cannot', reason }, { odd: ['chest'], sign: 'cannot-if' })
    expect(sentence(no)).toMatch(/^Cannot be cut from this, if the figures are right \| Chest is rare/)
    expect(stripWords(no, DEFAULT_SETTINGS)).toEqual({
      headline: 'Cannot, as measured',
      detail: 'Measure again: Chest',
    })
  })

  it('tells why not, with the names of the pieces and her units', () => {
    const reason = { kind: 'piece', text: '', pieces: ['side'], figures: { longest: 508, room: 400 } }
    const verdict = answered({ verdict: 'cannot', reason })
    expect(sentence(verdict)).toMatch(/“Side” is 50.8 cm long.*40 cm/)
    expect(verdictWords(verdict, INCHES, testPattern()).detail).toContain('20 in')
    expect(stripWords(verdict, DEFAULT_SETTINGS).detail).toBe('One piece fits nowhere')
  })

  it('never takes a fruitless search for a proof', () => {
    const words = sentence(answered({ verdict: 'not-found', leftOut: ['side#1'] }))
    expect(words).toContain('not a proof')
    expect(words).not.toMatch(/cannot/i)
  })

  it('says what it rests on: usual figures, stretch taken for granted', () => {
    const verdict = answered({ spare: 20 }, { byUsual: true, ifStretch: { across: 30, along: 0 } })
    expect(sentence(verdict)).toMatch(/If it stretches 30 % across\..*not yet measured/)
    expect(stripWords(verdict, DEFAULT_SETTINGS).detail).toContain('30 %')
  })

  it('has a sentence for every state without an answer', () => {
    const states: readonly LiveVerdict[] = [
      { state: 'waiting', missing: 'pattern' },
      { state: 'waiting', missing: 'measures' },
      { state: 'waiting', missing: 'stretch' },
      { state: 'running', placed: 0, of: 0 },
      { state: 'running', placed: 2, of: 5 },
      { state: 'running', placed: 5, of: 5 },
      { state: 'stopped' },
      { state: 'failed', what: null },
      { state: 'failed', what: 'because' },
    ]
    const said = states.map((state) => sentence(state))
    expect(new Set(said).size).toBe(states.length)
    expect(said.every((each) => each.length > 5)).toBe(true)
  })
})
