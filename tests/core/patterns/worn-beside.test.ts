import { describe, expect, it } from 'vitest'
import { withWornBeside, wornBeside } from '../../../src/core/patterns/worn-beside.ts'
import { aPattern, aPiece } from '../../support/pattern-builder.ts'

const pattern = aPattern({ pieces: ['a', 'b', 'c', 'd'].map((id) => aPiece({ id })) })

/** Who is worn beside whom, as `a: bc`. */
const read = (of: typeof pattern) =>
  of.pieces.map(
    (piece) =>
      `${piece.id}: ${wornBeside(of, piece)
        .map(({ id }) => id)
        .join('')}`,
  )

describe('pieces worn side by side', () => {
  it('are none at first', () => {
    expect(read(pattern)).toEqual(['a: ', 'b: ', 'c: ', 'd: '])
  })

  it('are joined by any of them, and left by any', () => {
    const two = withWornBeside(pattern, 'b', 'a')
    expect(read(two)).toEqual(['a: b', 'b: a', 'c: ', 'd: '])
    const three = withWornBeside(two, 'c', 'b')
    expect(read(three)).toEqual(['a: bc', 'b: ac', 'c: ab', 'd: '])
    expect(read(withWornBeside(three, 'b', null))).toEqual(['a: c', 'b: ', 'c: a', 'd: '])
    // The others stay together when the one goes after which they are called.
    expect(read(withWornBeside(three, 'a', null))).toEqual(['a: ', 'b: c', 'c: b', 'd: '])
    expect(read(withWornBeside(three, 'a', 'd'))).toEqual(['a: d', 'b: c', 'c: b', 'd: a'])
  })

  it('stay so when the same is said again', () => {
    const two = withWornBeside(pattern, 'b', 'a')
    expect(read(withWornBeside(two, 'a', 'b'))).toEqual(read(two))
    expect(read(withWornBeside(two, 'b', 'a'))).toEqual(read(two))
  })

  it('leave nothing behind when parted', () => {
    expect(withWornBeside(withWornBeside(pattern, 'b', 'a'), 'b', null)).toEqual(pattern)
    expect(withWornBeside(withWornBeside(pattern, 'b', 'a'), 'a', null)).toEqual(pattern)
  })
})
