import { describe, expect, it } from 'vitest'
import { kindOf } from '../../../src/core/garments/index.ts'
import {
  garmentOf,
  goesByUsual,
  isUnderWay,
  measuresOf,
  nextGarment,
  rolesOf,
  stretchAsked,
  stretchOf,
} from '../../../src/ui/state/check-draft.ts'
import { CLOTH, testDraft, testPattern } from '../../support/check-draft.ts'

describe('measures of a draft', () => {
  it('are none while one is missing and no label stands in for it', () => {
    expect(measuresOf(testDraft({ measures: { 'cloth-width': 1000 } }), CLOTH)).toBeNull()
  })

  it('take what is missing from the label, and say so', () => {
    const tShirt = kindOf('t-shirt')
    const draft = testDraft({ kind: 't-shirt', labelSize: 'L', measures: { chest: 540 } })
    const usual = tShirt.measures.find(({ id }) => id === 'body-length')?.start.L
    expect(measuresOf(draft, tShirt)).toMatchObject({ chest: 540, 'body-length': usual })
    expect(goesByUsual(draft, tShirt)).toBe(true)
    expect(goesByUsual(testDraft(), CLOTH)).toBe(false)
  })

  it('are none while a text is no length', () => {
    expect(measuresOf(testDraft({ unread: { 'cloth-width': '1o0' } }), CLOTH)).toBeNull()
  })

  it('are none when they contradict each other, but may be odd', () => {
    const tShirt = kindOf('t-shirt')
    const draft = (measures: Record<string, number>) =>
      testDraft({ kind: 't-shirt', labelSize: 'M', measures })
    expect(measuresOf(draft({ 'neck-depth': 900 }), tShirt)).toBeNull()
    expect(measuresOf(draft({ chest: 1200 }), tShirt)).toMatchObject({ chest: 1200 })
  })

  it('do not ask for the sleeves of a dress without any', () => {
    const dress = kindOf('dress')
    const told = Object.fromEntries(
      dress.measures.filter(({ when }) => when === undefined).map(({ id, start }) => [id, start.M]),
    )
    const draft = testDraft({ kind: 'dress', measures: told })
    expect(measuresOf(draft, dress)).not.toBeNull()
    expect(measuresOf({ ...draft, traits: { sleeves: true } }, dress)).toBeNull()
  })
})

describe('the stretch asked for', () => {
  it('is what the pieces of this version need most, of the roles cut here', () => {
    const pattern = testPattern({ needs: { across: 40, along: 0 } })
    expect(stretchAsked(pattern, 'plain', [])).toEqual({ across: 40, along: 0, both: false })
    expect(stretchAsked(pattern, 'lined', ['main'])).toEqual({ across: 0, along: 0, both: false })
  })

  it('is both ways where a piece that needs stretch may lie crosswise', () => {
    const pattern = testPattern({ needs: { across: 40, along: 0 }, grain: 'either' })
    expect(stretchAsked(pattern, 'plain', []).both).toBe(true)
  })

  it('is told once every figure that decides something is typed', () => {
    const oneWay = { across: 40, along: 0, both: false }
    const bothWays = { across: 40, along: 0, both: true }
    const draft = testDraft({ stretch: { across: 45, along: null } })
    expect(stretchOf(draft, oneWay)).toEqual({ across: 45, along: 0 })
    expect(stretchOf(draft, bothWays)).toBeNull()
    expect(stretchOf(testDraft(), oneWay)).toBeNull()
  })
})

describe('the garment of a draft', () => {
  it('is none for a drawn shape that crosses itself', () => {
    const kind = kindOf('free-outline')
    const bow = testDraft({
      kind: 'free-outline',
      outline: [
        [0, 0],
        [100, 100],
        [100, 0],
        [0, 100],
      ],
    })
    const square = { ...bow, outline: [[0, 0] as const, [100, 0] as const, [100, 100] as const] }
    expect(garmentOf(bow, kind, null)).toBeNull()
    expect(garmentOf(square, kind, null)?.outline).toEqual(square.outline)
  })
})

describe('the next garment', () => {
  it('is for the same pattern, version and size, and has nothing of the last one', () => {
    const next = nextGarment(testDraft({ step: 'cloth' }))
    expect(next).toMatchObject({ pattern: 'bag', version: 'plain', size: 'M', kind: null, measures: {} })
    expect(isUnderWay(next)).toBe(false)
  })
})

it('the roles of a version come in the order of its pieces, each once', () => {
  expect(rolesOf(testPattern(), 'lined')).toEqual(['main', 'lining'])
  expect(rolesOf(testPattern(), 'plain')).toEqual(['main'])
})
