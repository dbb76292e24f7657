import { describe, expect, it } from 'vitest'
import type { Grain } from '../../../../src/core/base/terms.ts'
import { leastStretch } from '../../../../src/core/planning/shopping-brief/least-stretch.ts'
import { aPiece } from '../../../support/pattern-builder.ts'

const needing = (across: number, along: number, grain: Grain = 'along', optional = false) =>
  aPiece({ needs: { across, along }, grain, optional })

describe('the least stretch of the cloth', () => {
  it('is the most that any piece needs each way, where all follow the grain', () => {
    expect(leastStretch([needing(30, 0), needing(10, 25)])).toEqual({ across: 30, along: 25 })
    expect(leastStretch([needing(0, 0)])).toEqual({ across: 0, along: 0 })
  })

  it('is less where a piece may be turned a quarter: its need across is then met along', () => {
    expect(leastStretch([needing(0, 40), needing(40, 0, 'either')])).toEqual({ across: 0, along: 40 })
  })

  it('asks for it across rather than along where either would do', () => {
    expect(leastStretch([needing(0, 40, 'either')])).toEqual({ across: 40, along: 0 })
  })

  it('is as much both ways for a piece on the bias', () => {
    expect(leastStretch([needing(20, 10, 'bias')])).toEqual({ across: 20, along: 20 })
  })

  it('takes no account of pieces that can be left out', () => {
    expect(leastStretch([needing(10, 0), needing(80, 80, 'along', true)])).toEqual({ across: 10, along: 0 })
  })
})
