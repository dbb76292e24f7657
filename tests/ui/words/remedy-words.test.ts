import { describe, expect, it } from 'vitest'
import type { CheckQuestion } from '../../../src/core/planning/check.ts'
import type { RemedyKind, RemedyStep } from '../../../src/core/planning/remedies/remedy.ts'
import { DEFAULT_SETTINGS } from '../../../src/storage/stores/settings.ts'
import { bindingWords } from '../../../src/ui/words/measure-again-words.ts'
import { remediesStatus } from '../../../src/ui/words/remedies-status.ts'
import { remedySentence } from '../../../src/ui/words/remedy-words.ts'
import { testPattern } from '../../support/check-draft.ts'

const INCHES = { ...DEFAULT_SETTINGS, units: 'in' } as const

const said = (steps: readonly RemedyStep[], settings = DEFAULT_SETTINGS) => {
  const { what, cost } = remedySentence({ steps, question: {} as CheckQuestion }, testPattern(), settings)
  return `${what} | ${cost}`
}

const BOTH = ['side', 'lining']

/** A step of every kind, and what must be said of it: pieces by name, figures in cm or mm. */
const STEPS: Readonly<Record<RemedyKind, readonly [Omit<RemedyStep, 'kind'>, RegExp]>> = {
  tilt: [{ pieces: BOTH, from: 2, to: 5 }, /“Side” and “Lining” .*5° off the grain instead of 2°/],
  'quarter-turn': [{ pieces: ['side'] }, /Lay “Side” crosswise/],
  'narrower-seams': [{ pieces: BOTH, from: 12, to: 6 }, /seams 6 mm wide instead of 12 mm/],
  'narrower-hem': [{ pieces: ['side'], from: 40, to: 12 }, /hems up 12 mm instead of 4 cm/],
  'own-hem': [{ pieces: ['side'], saved: 25 }, /“Side” on a finished hem.* 2.5 cm deep/],
  unpick: [{ gained: 40_000 }, /Unpick the seams.*sides of 20 cm/],
  'mend-flaw': [
    { flaw: 'f-1', panel: 'front', flawKind: 'stain', area: 1600 },
    /Stain, Front, the size of a square with sides of 4 cm.*may show/,
  ],
  'take-off': [{ trait: 'chest-pocket' }, /Take the chest pocket off.*darker/],
  'against-pile': [{ pieces: ['side'] }, /“Side” against the pile.*lighter or darker/],
  join: [
    { piece: 'side', way: 'across', at: 155, seam: 320, allowance: 10, copies: 2, parts: ['a', 'b'] },
    /“Side” of two parts.*15.5 cm from its lower end.*2 more seams of 32 cm each, sewn 10 mm wide/,
  ],
  'other-garment': [
    { pieces: ['lining'], role: 'lining', copies: 1, area: 90_000 },
    /another garment: Lining.*1 piece, .*sides of 30 cm/,
  ],
  'other-version': [{ version: 'plain', saved: 90_000 }, /version “Plain”.*less cloth, by .*30 cm/],
  'bias-cut': [
    { pieces: ['lining'], needs: 33.3 },
    /Cut “Lining” on the bias \| Only if a strip cut on the bias gives 34 %.*between two marks/,
  ],
  'larger-size': [
    { pieces: ['side'], size: 'L', up: 1, body: 'M', needs: { across: 33.3, along: 0 } },
    /Make size L, for a body of size M.*stretching 34 % passes the same body/,
  ],
  'smaller-size': [{ size: 'S', down: 1 }, /Make size S \| One size smaller/],
}

describe('remedies in words', () => {
  it.each(Object.entries(STEPS))('%s says what changes and what it costs', (kind, [rest, wanted]) => {
    const step = { kind, ...rest } as RemedyStep
    expect(said([step])).toMatch(wanted)
    expect(said([step])).toMatch(/^[A-Z].*[^.] \| [A-Z\d].*\.$/)
    expect(said([step], INCHES)).not.toMatch(/\d (mm|cm)\b/)
  })

  it('write lengths in inches for those who think so', () => {
    expect(said([{ kind: 'narrower-seams', pieces: BOTH, from: 12.7, to: 6.35 }], INCHES)).toContain(
      '1/4 in wide instead of 1/2 in',
    )
  })

  it('say when a hem of the garment serves only a piece whose lower edge is to be a hem', () => {
    const step = { kind: 'own-hem', pieces: BOTH, saved: 25, lowerEdge: ['lining'] } as const
    expect(said([step])).toMatch(
      /“Side” and “Lining” on a finished hem.*Only if the lower edge of “Lining” is/,
    )
  })

  it('count pieces instead of listing many', () => {
    const pieces = ['side', 'lining', 'side', 'lining']
    expect(said([{ kind: 'quarter-turn', pieces }])).toContain('Lay 4 pieces crosswise')
  })

  it('say a stretch that is less, where no cloth is saved', () => {
    expect(said([{ kind: 'other-version', version: 'plain', saved: -10 }])).toMatch(
      /asks less of its stretch/,
    )
  })

  it('say two changes as one, with both costs', () => {
    const words = said([
      { kind: 'unpick', gained: 40_000 },
      { kind: 'smaller-size', size: 'S', down: 2 },
    ])
    expect(words).toMatch(/^Unpick .*, and make size S \| An evening.* 2 sizes smaller/)
  })

  it('leave out a change that the lay found did not need', () => {
    const idle = { kind: 'quarter-turn', pieces: [] } as const
    expect(said([idle, { kind: 'smaller-size', size: 'S', down: 1 }])).toMatch(/^Make size S \|/)
    expect(said([idle])).toMatch(/as it is \| .*nothing needs to change/)
  })
})

describe('how the search for remedies stands', () => {
  it('claims nothing before it is solved, and counts what was tried in vain', () => {
    expect(remediesStatus('running', 0, 3)).toMatch(/^Looking/)
    expect(remediesStatus('running', 2, 3)).toBe('2 ways to save it so far, still looking…')
    expect(remediesStatus('ended', 1, 3)).toBe('One way to save it')
    expect(remediesStatus('ended', 0, 7)).toBe('None of the 7 things tried saves it.')
    expect(remediesStatus('ended', 0, 1)).toBe('The one thing tried does not save it.')
    expect(remediesStatus('ended', 0, 0)).toMatch(/nothing left to change/)
    expect(remediesStatus('stopped', 0, 4)).toMatch(/^Stopped\..* 4 tried/)
    expect(remediesStatus('stopped', 0, 0)).toMatch(/before anything was tried/)
    expect(remediesStatus('failed', 0, 0)).toMatch(/could not be done/)
  })
})

describe('what hangs on a measure', () => {
  const outcome = { measure: 'chest', by: -8, verdict: 'cannot', spare: null, binds: true } as const

  it('is said as it was solved: cannot, not found, little left, or saved', () => {
    expect(bindingWords(outcome, DEFAULT_SETTINGS)).toBe('With 8 mm less it cannot be cut.')
    expect(bindingWords({ ...outcome, verdict: null }, DEFAULT_SETTINGS)).toContain('cannot be cut')
    expect(bindingWords({ ...outcome, verdict: 'not-found' }, DEFAULT_SETTINGS)).toMatch(/no way was found/)
    expect(bindingWords({ ...outcome, verdict: 'fits', spare: 0 }, DEFAULT_SETTINGS)).toMatch(
      /little is left/,
    )
    expect(bindingWords({ ...outcome, by: 8, verdict: 'fits' }, INCHES)).toBe('With 3/8 in more it fits.')
  })
})
