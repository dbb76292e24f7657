import { describe, expect, it } from 'vitest'
import { cutOutline } from '../../../src/core/patterns/cut-outline.ts'
import { type PieceShape, shapeFaults } from '../../../src/core/patterns/index.ts'
import { boxOf } from '../../../src/ui/drawing/paths.ts'
import {
  allowanceOf,
  blankShape,
  cutSize,
  drawable,
  figuresOfShape,
  reshaped,
  standIn,
  TYPED_FORMS,
  withAllowance,
} from '../../../src/ui/state/piece-shapes.ts'

const DRAWN: PieceShape = {
  form: 'outline',
  onFold: false,
  points: [
    { at: [0, 0], allowance: 6 },
    { at: [200, 0], allowance: 20 },
    { at: [180, 300], allowance: 6 },
    { at: [20, 300], allowance: 6 },
  ],
}

describe.each(TYPED_FORMS)('a %s typed in', (form) => {
  it('begins without figures, cannot be drawn, and has a stand-in that can', () => {
    const blank = blankShape(form)
    expect(figuresOfShape(blank).every(({ value }) => value === 0)).toBe(true)
    expect(drawable(blank)).toBeNull()
    expect(shapeFaults(standIn(blank))).toEqual([])
  })

  it('can be drawn once every figure is typed, and then stands for itself', () => {
    const count = figuresOfShape(blankShape(form)).length
    let shape = blankShape(form)
    for (let k = 0; k < count; k++) shape = figuresOfShape(shape)[k]?.with(100 + 10 * k) ?? shape
    expect(figuresOfShape(shape).map(({ value }) => value)).toEqual(
      Array.from({ length: count }, (_, k) => 100 + 10 * k),
    )
    expect(drawable(shape)).not.toBeNull()
    expect(standIn(shape)).toEqual(shape)
  })

  it('has a stand-in while only some figures are typed', () => {
    for (const { with: typed } of figuresOfShape(blankShape(form)))
      expect(shapeFaults(standIn(typed(120)))).toEqual([])
  })

  it('takes width, height and allowance over from another form', () => {
    const made = reshaped({ form: 'box', width: 240, height: 180, allowance: 12 }, form)
    expect(made.form).toBe(form)
    expect(allowanceOf(made)).toBe(12)
    const box = boxOf([drawable(made) ?? []])
    expect(box.maxX - box.minX).toBeCloseTo(240, 6)
    expect(box.maxY - box.minY).toBeCloseTo(form === 'circle' ? 240 : 180, 6)
  })
})

describe('an outline drawn point by point', () => {
  it('is made wider and taller as a whole, and never to nothing', () => {
    const [width, height] = figuresOfShape(DRAWN)
    const box = boxOf([drawable(width?.with(250) ?? DRAWN) ?? []])
    expect([box.maxX - box.minX, box.maxY - box.minY]).toEqual([250, 300])
    expect(height?.value).toBe(300)
    expect(height?.with(0)).toEqual(DRAWN)
  })

  it('has no one allowance while its edges differ', () => {
    expect(allowanceOf(DRAWN)).toBeNull()
    expect(allowanceOf(withAllowance(DRAWN, 10))).toBe(10)
  })
})

describe('the cut size that is shown', () => {
  it.each<PieceShape>([
    { form: 'box', width: 240, height: 180, allowance: 12 },
    { form: 'circle', diameter: 90, allowance: 6 },
    {
      form: 'strip',
      edge: 400,
      ratio: 1.5,
      height: 50,
      folded: true,
      endAllowance: 10,
      sideAllowance: 6,
    },
  ])('is the size of the outline that is cut: $form', (shape) => {
    const { minX, minY, maxX, maxY } = boxOf([cutOutline(shape)])
    const size = cutSize(shape) ?? expect.fail('no size')
    expect(size.width).toBeCloseTo(maxX - minX, 6)
    expect(size.height).toBeCloseTo(maxY - minY, 6)
  })
})
