import { describe, expect, it } from 'vitest'
import type { Lay } from '../../../src/core/planning/lay.ts'
import { DEFAULT_SETTINGS } from '../../../src/storage/stores/settings.ts'
import { type LiveVerdict, signOf } from '../../../src/ui/state/verdict.ts'
import { stripWords, verdictWords } from '../../../src/ui/words/verdict-words.ts'
import { testPattern } from '../../support/check-draft.ts'

const INCHES = { ...DEFAULT_SETTINGS, units: 'in' } as const

function answered(
  lay: Partial<Lay>,
  rests: Partial<Extract<LiveVerdict, { state: 'answered' }>> = {},
): LiveVerdict {
  const whole: Lay = {
    verdict: 'fits',
    placements: [],
    reason: null,
    leftOut: [],
    spare: null,
    elapsedMs: 1,
    ...lay,
  }
  return {
    state: 'answered',
    sign: signOf(whole, { kind: 'cloth', traits: {} }, DEFAULT_SETTINGS.tapeDoubt),
    roomAsked: DEFAULT_SETTINGS.tapeDoubt,
    answer: {
      problem: { name: '', clearance: 0, seconds: 1, panels: [], pieces: [] },
      lay: whole,
      heads: 'up',
    },
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
    expect(sentence(answered({ spare: 12 }))).toBe('Fits, with 12 mm to spare all round | ')
    expect(verdictWords(answered({ spare: 12.7 }), INCHES, null).headline).toContain('1/2 in')
  })

  it('says that the tape decides when less is to spare than it may be off', () => {
    expect(sentence(answered({ spare: 3 }))).toMatch(
      /^Fits only if your tape is right: 3 mm .*8 mm to spare would make it sure/,
    )
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
