import { beforeEach, describe, expect, it } from 'vitest'
import { kindOf } from '../../../src/core/garments/index.ts'
import { checkAgain, draftOf } from '../../../src/ui/state/check-again.ts'
import { EMPTY_DRAFT, garmentOf } from '../../../src/ui/state/check-draft.ts'
import { draft, leftDraft } from '../../../src/ui/state/check-state.ts'
import { draftGate } from '../../../src/ui/state/draft-gate.ts'
import { ownPatterns } from '../../../src/ui/state/patterns-state.ts'
import { aPattern } from '../../support/pattern-builder.ts'
import { testGarment } from '../../support/storage.ts'

const MEASURED = testGarment({
  measures: {
    chest: 540,
    'hem-width': 540,
    'body-length': 700,
    'shoulder-width': 460,
    'armhole-depth': 240,
    'sleeve-length': 220,
    'neck-depth': 90,
  },
  traits: Object.fromEntries(kindOf('t-shirt').traits.map(({ id, usual }) => [id, usual])),
  flaws: [{ id: 'f', panel: 'front', kind: 'hole', shape: { form: 'round', centre: [10, 20], radius: 5 } }],
  note: 'A note.',
})

beforeEach(() => {
  draft.value = EMPTY_DRAFT
  leftDraft.value = null
  ownPatterns.value = [aPattern()]
})

describe('checking a kept garment again', () => {
  it('asks of the very garment that is kept', () => {
    const made = draftOf(MEASURED, EMPTY_DRAFT)
    expect(garmentOf(made, kindOf('t-shirt'), MEASURED.cloth.stretch)).toMatchObject({
      kind: MEASURED.kind,
      measures: MEASURED.measures,
      traits: MEASURED.traits,
      cloth: MEASURED.cloth,
      flaws: MEASURED.flaws,
    })
    expect(made.stretch).toEqual(MEASURED.cloth.stretch)
    expect(made.garment).toBe(MEASURED.id)
  })

  it('keeps what to make, and goes to the verdict; without a pattern it first asks for one', () => {
    expect(checkAgain(MEASURED)).toBe('/')
    draft.value = { ...EMPTY_DRAFT, pattern: 'tote', version: 'plain', size: 'M' }
    expect(checkAgain(MEASURED)).toBe('/check/verdict')
    expect(draft.value).toMatchObject({ pattern: 'tote', version: 'plain', size: 'M', kind: 't-shirt' })
  })

  it('puts a check that is under way aside', () => {
    draft.value = { ...EMPTY_DRAFT, kind: 'dress', step: 'cloth' }
    checkAgain(MEASURED)
    expect(leftDraft.value).toMatchObject({ kind: 'dress', step: 'cloth' })
  })

  it('is still of that garment after the draft was stored and read back', () => {
    const read = draftGate(JSON.parse(JSON.stringify(draftOf(MEASURED, EMPTY_DRAFT))))
    expect(read).toMatchObject({ ok: true, value: { garment: MEASURED.id } })
  })
})
