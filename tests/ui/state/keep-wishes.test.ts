import { describe, expect, it } from 'vitest'
import type { OutlineShape } from '../../../src/core/patterns/pattern.ts'
import { queryOf } from '../../../src/ui/state/check-query.ts'
import { hemPieces, newPrint, piecesHere, wishesOf } from '../../../src/ui/state/keep-wishes.ts'
import { CLOTH, testDraft, testPattern } from '../../support/check-draft.ts'

/** No gap, and the gauge at its word. */
const EXACT = { clearance: 0, stretchDoubt: 0 }

const hemmed: OutlineShape = {
  form: 'outline',
  onFold: false,
  points: [
    { at: [0, 0], allowance: 20, use: 'hem' },
    { at: [100, 0], allowance: 10 },
    { at: [100, 100], allowance: 10 },
    { at: [0, 100], allowance: 10 },
  ],
}

describe('what the check asks to be kept', () => {
  it('is nothing until she says so', () => {
    expect(wishesOf(testDraft())).toEqual({})
  })

  it('is a frame of usual size round a point, and the hems ticked; both are part of the question', () => {
    const draft = testDraft({ ownHem: ['side'], print: newPrint('cloth', [200, 300], 'side') })
    const wishes = {
      ownHem: ['side'],
      motif: {
        panel: 'cloth',
        outline: [
          [140, 240],
          [260, 240],
          [260, 360],
          [140, 360],
        ],
        piece: 'side',
        place: 'anywhere',
        anyWayUp: false,
        within: 20,
      },
    }
    expect(wishesOf(draft)).toEqual(wishes)
    expect(queryOf(draft, testPattern(), CLOTH, EXACT)).toMatchObject({ ask: true, question: wishes })
  })

  it('is nothing of a frame without area', () => {
    const print = newPrint('cloth', [0, 0], 'side')
    const flat = { ...print, frame: { ...print.frame, to: print.frame.from } }
    expect(wishesOf(testDraft({ print: flat }))).toEqual({})
  })
})

describe('pieces that can keep something', () => {
  it('come from this garment', () => {
    const ids = (otherRoles: readonly string[]) =>
      piecesHere(testPattern(), testDraft({ version: 'lined', otherRoles })).map(({ id }) => id)
    expect(ids([])).toEqual(['side', 'lining'])
    expect(ids(['lining'])).toEqual(['side'])
  })

  it('have a straight hem in this size, for a hem', () => {
    const shapes = { S: { form: 'circle', diameter: 80, allowance: 5 } as const, M: hemmed }
    const pattern = testPattern({ shapes })
    expect(hemPieces(pattern, testDraft()).map(({ id }) => id)).toEqual(['side'])
    expect(hemPieces(pattern, testDraft({ size: 'S' }))).toEqual([])
    // Of a plain shape the lower edge may be a hem; she says so by choosing it.
    expect(hemPieces(testPattern(), testDraft({ size: 'S' })).map(({ id }) => id)).toEqual(['side'])
  })
})
