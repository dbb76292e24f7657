import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { polygonBox } from '../../../src/core/geometry/polygon.ts'
import {
  addPiece,
  addSize,
  emptyPattern,
  removePiece,
  removeSize,
  renameSize,
  withShape,
} from '../../../src/core/patterns/new-pattern.ts'
import type { PieceShape } from '../../../src/core/patterns/pattern.ts'
import { patternFaults } from '../../../src/core/patterns/pattern-faults.ts'
import { seamLine } from '../../../src/core/patterns/seam-line.ts'
import { steppedShape } from '../../../src/core/patterns/size-step.ts'
import { aPiece, BOX } from '../../support/pattern-builder.ts'

const { shapes: _, ...BODY } = aPiece()

describe('typing in a pattern', () => {
  it('ends without faults once it has a name and a piece', () => {
    const pattern = { ...addPiece(emptyPattern('bag'), BODY, BOX), name: 'Bag' }
    expect(patternFaults(pattern)).toEqual([])
    expect(pattern.pieces[0]?.shapes).toEqual({ 'one size': BOX })
  })

  it('adds a size by copying the last one, grown by a step', () => {
    const one = addPiece(emptyPattern('bag', 'S'), BODY, BOX)
    const two = addSize(one, 'M', 'S', { across: 20, along: 10 })
    expect(two.sizes).toEqual(['S', 'M'])
    expect(two.pieces[0]?.shapes).toEqual({ S: BOX, M: { ...BOX, width: 220, height: 310 } })
    expect(addSize(two, 'L').pieces[0]?.shapes.L).toEqual(two.pieces[0]?.shapes.M)
    expect(one.sizes).toEqual(['S'])
  })

  it('gives a piece another shape in one size only', () => {
    const pattern = addSize(addPiece(emptyPattern('bag', 'S'), BODY, BOX), 'M')
    const disc: PieceShape = { form: 'circle', diameter: 100, allowance: 5 }
    expect(withShape(pattern, 'body', 'M', disc).pieces[0]?.shapes).toEqual({ S: BOX, M: disc })
  })

  it('takes pieces and sizes away again', () => {
    const pattern = addSize(addPiece(emptyPattern('bag', 'S'), BODY, BOX), 'M')
    expect(removePiece(pattern, 'body')).toMatchObject({ pieces: [], versions: [{ pieces: [] }] })
    expect(removeSize(pattern, 'M')).toEqual(addPiece(emptyPattern('bag', 'S'), BODY, BOX))
  })

  it('throws on a piece or size that is there already, and on a size that is not', () => {
    const pattern = addPiece(emptyPattern('bag', 'S'), BODY, BOX)
    expect(() => addPiece(pattern, BODY, BOX)).toThrow('body')
    expect(() => addSize(pattern, 'S')).toThrow('S')
    expect(() => addSize(pattern, 'L', 'M')).toThrow('M')
  })
})

describe('steppedShape', () => {
  const shapes: readonly PieceShape[] = [
    BOX,
    { form: 'trapezoid', top: 100, bottom: 160, height: 80, allowance: 5 },
    { form: 'triangle', width: 100, height: 80, allowance: 5 },
    { form: 'half-moon', width: 100, height: 80, allowance: 5 },
    { form: 'strip', edge: 100, ratio: 1, height: 80, folded: false, endAllowance: 5, sideAllowance: 5 },
    {
      form: 'outline',
      onFold: true,
      points: [
        { at: [20, 0], allowance: 5 },
        {
          at: [90, 10],
          curve: [
            [60, 40],
            [70, 80],
          ],
          allowance: 5,
        },
        { at: [20, 120], allowance: 0 },
      ],
    },
  ]

  it('adds the step to the finished width and height of every form', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...shapes),
        fc.integer({ min: -20, max: 60 }),
        fc.integer({ min: -20, max: 60 }),
        (shape, across, along) => {
          const before = polygonBox(seamLine(shape))
          const after = polygonBox(seamLine(steppedShape(shape, { across, along })))
          expect(after.maxX - after.minX).toBeCloseTo(before.maxX - before.minX + across, 0)
          expect(after.maxY - after.minY).toBeCloseTo(before.maxY - before.minY + along, 0)
        },
      ),
    )
  })

  it('grows a circle by the step across', () => {
    const grown = steppedShape({ form: 'circle', diameter: 100, allowance: 5 }, { across: 10, along: 3 })
    expect(grown).toEqual({ form: 'circle', diameter: 110, allowance: 5 })
  })
})

describe('a size by another name', () => {
  it('keeps its place and its shapes', () => {
    const two = addSize(addPiece(emptyPattern('bag', 'S'), BODY, BOX), 'M', 'S', { across: 20, along: 10 })
    const named = renameSize(two, 'S', 'small')
    expect(named.sizes).toEqual(['small', 'M'])
    expect(named.pieces[0]?.shapes).toEqual({ small: BOX, M: two.pieces[0]?.shapes.M })
    expect(patternFaults({ ...named, name: 'Bag' })).toEqual([])
  })

  it('must be new', () => {
    expect(() => renameSize(addSize(emptyPattern('bag', 'S'), 'M'), 'S', 'M')).toThrow('there already')
  })
})
