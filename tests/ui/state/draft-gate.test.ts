import { describe, expect, it } from 'vitest'
import { EMPTY_DRAFT } from '../../../src/ui/state/check-draft.ts'
import { draftGate } from '../../../src/ui/state/draft-gate.ts'
import { newFlaw } from '../../../src/ui/state/flaws.ts'
import { newPrint } from '../../../src/ui/state/keep-wishes.ts'
import { testDraft } from '../../support/check-draft.ts'

describe('a draft read back', () => {
  it('is the one that was written', () => {
    const draft = testDraft({
      labelSize: 'L',
      unread: { chest: '5x' },
      stretch: { across: 40, along: null },
      traits: { 'side-seams': false },
      otherRoles: ['lining'],
      flaws: (['round', 'box', 'line'] as const).map((form) => newFlaw(form, 'front', 'stain', form, [1, 2])),
      ownHem: ['side'],
      print: { ...newPrint('front', [100, 200], 'side'), place: 'upper' },
      step: 'flaws',
    })
    expect(draftGate(JSON.parse(JSON.stringify(draft)))).toEqual({ ok: true, value: draft })
  })

  it('loses only the fields that make no sense', () => {
    const odd = { ...testDraft(), kind: 'cape', stretch: { across: -3, along: 20 }, later: 1 }
    expect(draftGate(odd)).toEqual({
      ok: true,
      value: { ...testDraft(), kind: null, stretch: { across: null, along: 20 } },
    })
  })

  it('has a print as worn where it was framed before that could be told', () => {
    const { anyWayUp: _, ...before } = newPrint('front', [100, 200], 'side')
    const draft = draftGate({ ...testDraft(), print: before })
    expect(draft.ok && draft.value.print).toEqual({ ...before, anyWayUp: false })
  })

  it('starts anew from what is no draft at all', () => {
    expect(draftGate('nothing')).toEqual({ ok: true, value: EMPTY_DRAFT })
  })
})
