import { beforeEach, describe, expect, it } from 'vitest'
import { addSize, patternFaults } from '../../../src/core/patterns/index.ts'
import { readUnfinishedPattern } from '../../../src/readers/model/pattern.ts'
import {
  addVersion,
  allowBias,
  beginPiece,
  change,
  changePiece,
  changeVersion,
  copyPattern,
  dropIfEmpty,
  dropPiece,
  dropSize,
  dropVersion,
  isSameInEverySize,
  newPattern,
  removeOwn,
  reshapePiece,
  shapePiece,
} from '../../../src/ui/state/edit-pattern.ts'
import {
  allPatterns,
  anyPatternById,
  everyPattern,
  faultsOf,
  isOwn,
  ownPatterns,
  patternById,
} from '../../../src/ui/state/patterns-state.ts'
import { withAllowance } from '../../../src/ui/state/piece-shapes.ts'
import { settings } from '../../../src/ui/state/settings-state.ts'
import { undoOffer } from '../../../src/ui/state/undo.ts'

const now = (id: string) => anyPatternById(id) ?? expect.fail('the pattern is gone')
const pieceOf = (id: string, k = 0) => now(id).pieces[k] ?? expect.fail('the piece is gone')

/** A pattern of two rectangles in sizes S and L. */
function twoPieces(): string {
  const id = newPattern()
  change(id, (pattern) => ({ ...pattern, name: 'Bag', sizes: ['S'] }))
  for (const [name, width] of [
    ['Side', 240],
    ['Flap', 200],
  ] as const) {
    const piece = beginPiece(now(id), 'box')
    changePiece(id, piece, { name })
    shapePiece(id, piece, null, { form: 'box', width, height: 180, allowance: 0 })
  }
  change(id, (pattern) => addSize(pattern, 'L', 'S', { across: 40, along: 20 }))
  return id
}

beforeEach(() => {
  ownPatterns.value = []
  undoOffer.value = null
})

describe('a pattern typed in', () => {
  it('is kept while unfinished, is not offered for a check, and is once it is whole', () => {
    const id = newPattern()
    expect(readUnfinishedPattern(now(id)).ok).toBe(true)
    expect(patternById(id)).toBeNull()
    expect(allPatterns().some((each) => each.id === id)).toBe(false)
    const piece = beginPiece(now(id), 'box')
    expect(readUnfinishedPattern(now(id)).ok).toBe(true)
    change(id, (pattern) => ({ ...pattern, name: 'Bag' }))
    changePiece(id, piece, { name: 'Side' })
    expect(faultsOf(now(id)).map(({ field }) => field)).toEqual([
      'pieces[0].shapes["one size"].width',
      'pieces[0].shapes["one size"].height',
    ])
    shapePiece(id, piece, null, { form: 'box', width: 240, height: 180, allowance: 0 })
    expect(patternById(id)).toBe(now(id))
    expect(allPatterns().some((each) => each.id === id)).toBe(true)
  })

  it('stands first in the list, as used last', () => {
    const first = newPattern()
    const second = newPattern()
    expect(settings.value.recentPatterns.slice(0, 2)).toEqual([second, first])
    expect(
      everyPattern()
        .map(({ id }) => id)
        .slice(0, 2),
    ).toEqual([second, first])
  })

  it('leaves nothing behind when it was begun and never filled', () => {
    const id = newPattern()
    dropIfEmpty(id)
    expect(ownPatterns.value).toEqual([])
    const filled = twoPieces()
    dropIfEmpty(filled)
    expect(isOwn(now(filled))).toBe(true)
  })

  it('changes one size, or all of them', () => {
    const id = twoPieces()
    expect(pieceOf(id).shapes).toMatchObject({ S: { width: 240 }, L: { width: 280 } })
    expect(isSameInEverySize(pieceOf(id))).toBe(false)
    shapePiece(id, pieceOf(id).id, 'L', { form: 'box', width: 300, height: 200, allowance: 0 })
    expect(pieceOf(id).shapes).toMatchObject({ S: { width: 240 }, L: { width: 300 } })
    reshapePiece(id, pieceOf(id).id, (shape) => withAllowance(shape, 12))
    expect(pieceOf(id).shapes).toMatchObject({
      S: { width: 240, allowance: 12 },
      L: { width: 300, allowance: 12 },
    })
    shapePiece(id, pieceOf(id).id, null, { form: 'circle', diameter: 90, allowance: 0 })
    expect(isSameInEverySize(pieceOf(id))).toBe(true)
  })

  it('says of a piece that it may be cut on the bias too, or nothing of it', () => {
    const id = twoPieces()
    const before = pieceOf(id)
    allowBias(id, before.id, true)
    expect(pieceOf(id)).toEqual({ ...before, biasToo: true })
    expect(pieceOf(id, 1)).not.toHaveProperty('biasToo')
    expect(readUnfinishedPattern(JSON.parse(JSON.stringify(now(id))))).toEqual({ ok: true, value: now(id) })
    allowBias(id, before.id, false)
    expect(pieceOf(id)).toEqual(before)
    expect(pieceOf(id)).not.toHaveProperty('biasToo')
  })

  it('is copied under an id of its own; the first stays as it is', () => {
    const id = twoPieces()
    const copy = copyPattern(now(id), 'Bag, mine')
    changePiece(copy, pieceOf(copy).id, { name: 'Other' })
    expect(copy).not.toBe(id)
    expect(pieceOf(id).name).toBe('Side')
    expect(patternFaults(now(copy))).toEqual([])
  })
})

describe('what is removed can be brought back', () => {
  const undo = () => undoOffer.value?.undo()

  it('a pattern', () => {
    const id = twoPieces()
    const before = now(id)
    removeOwn(before, 'Removed.')
    expect(anyPatternById(id)).toBeNull()
    undo()
    expect(now(id)).toEqual(before)
  })

  it('a piece, at its place and in its versions, with what was changed since left alone', () => {
    const id = twoPieces()
    const version = addVersion(now(id))
    changeVersion(id, version, { name: 'Without flap', pieces: [pieceOf(id).id] })
    const before = now(id)
    dropPiece(before, pieceOf(id), 'Removed Side.')
    expect(now(id).pieces.map(({ name }) => name)).toEqual(['Flap'])
    expect(now(id).versions.map(({ pieces }) => pieces.length)).toEqual([1, 0])
    changePiece(id, pieceOf(id).id, { copies: 3 })
    undo()
    expect(now(id)).toEqual({ ...before, pieces: [before.pieces[0], { ...before.pieces[1], copies: 3 }] })
  })

  it('a size, with its shapes', () => {
    const id = twoPieces()
    const before = now(id)
    dropSize(before, 'S', 'Removed size S.')
    expect(now(id).sizes).toEqual(['L'])
    expect(patternFaults(now(id))).toEqual([])
    undo()
    expect(now(id)).toEqual(before)
  })

  it('a version', () => {
    const id = twoPieces()
    addVersion(now(id))
    const before = now(id)
    dropVersion(before, before.versions[0] ?? expect.fail(), 'Removed.')
    expect(now(id).versions).toHaveLength(1)
    undo()
    expect(now(id)).toEqual(before)
  })
})
