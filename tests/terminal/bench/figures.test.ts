import { describe, expect, it } from 'vitest'
import { answerFigure, quantile } from '../../../src/terminal/bench/figures.ts'

describe('figures', () => {
  it('are the middle and the slow end, whatever the order', () => {
    const numbers = Array.from({ length: 100 }, (_, i) => 100 - i)
    expect(quantile(numbers, 0.5)).toBe(51)
    expect(quantile(numbers, 0.95)).toBe(96)
    expect(quantile([], 0.5)).toBe(0)
  })

  it('count verdicts, and the share of proofs among those that are no lay', () => {
    const answers = (['fits', 'cannot', 'cannot', 'cannot', 'not-found'] as const).map((verdict) => ({
      verdict,
      ms: 1,
    }))
    expect(answerFigure(answers)).toMatchObject({
      verdicts: { fits: 1, cannot: 3, 'not-found': 1 },
      proved: 75,
    })
    expect(answerFigure(answers.slice(0, 1)).proved).toBeNull()
  })
})
